#pragma once
#include <string>
#include <string_view>

#include "lang/render/look.hpp"

// A report's paragraph: a heading, and under it lines with a word in front.
namespace leat::render {

// "severity  short-name  headline", the severity set in its colour.
std::string heading_line(std::string_view severity, std::string_view name,
                         std::string_view headline, Look);

// "    why     the text, set into lines under itself"; nothing where the text is empty.
std::string worded_line(std::string_view word, std::string_view text, Look);

// "    see     command", in one line so that it can be pasted; nothing where there is none.
std::string see_line(std::string_view command, Look);

Role role_of(std::string_view severity);

}  // namespace leat::render
