#pragma once
#include <string>
#include <string_view>

#include "lang/render/look.hpp"

namespace leat::render {

// How the lines of one text become those of another, in the unified format of POSIX `diff -u` with
// three lines around each change; empty where both are the same bytes. It can be applied as it is,
// unless it is for a terminal: then what such a one would obey is shown instead.
std::string line_difference(std::string_view name, std::string_view old_text,
                            std::string_view new_text, Look, bool is_for_terminal);

}  // namespace leat::render
