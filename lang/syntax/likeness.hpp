#pragma once
#include "lang/syntax/document.hpp"

namespace leat::syntax {

// Whether two designs say the same in the same order: every field of every node but where it stands
// in its text. Comments are not looked at.
bool are_alike(Document const&, Document const&);

}  // namespace leat::syntax
