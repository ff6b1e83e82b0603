#pragma once
#include <string>

#include "lang/syntax/document.hpp"

// A tree as text without its spans, for comparing trees: every field of every node, and nothing
// concluded.
namespace leat::tests {

std::string tree_text(syntax::Expression const&);
std::string tree_text(syntax::Declaration const&);
std::string tree_text(syntax::Document const&);

}  // namespace leat::tests
