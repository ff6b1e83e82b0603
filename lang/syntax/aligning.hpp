#pragma once
#include <string>
#include <vector>

#include "lang/syntax/weaving.hpp"

namespace leat::syntax {

// Woven lines as text. In a run of lines, with no empty line and no end of a block between them,
// lines of one shape share their columns, and comments behind lines share theirs. What would
// push the others far to the right does not: a cell much wider than the narrowest one sticks out.
std::string aligned(std::vector<WovenLine> const&);

}  // namespace leat::syntax
