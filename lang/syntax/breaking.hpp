#pragma once
#include <cstddef>
#include <string>
#include <string_view>

namespace leat::syntax {

// A line of the language as one or several, so that none is wider than `widest_line` where that can
// be had; `indent` is where the first one begins. Each line has its indent before it, and none ends
// in a blank.
std::string broken(std::string_view line, std::size_t indent);

}  // namespace leat::syntax
