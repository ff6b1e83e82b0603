#include "lang/render/markdown.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "lang/render/columns.hpp"

namespace leat::render {

namespace {

// A bar inside a cell, also inside code (GitHub's dialect): with one backslash before it, which
// escaped text has already.
std::string in_cell(std::string const& text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    bool const is_escaped = i > 0 && text[i - 1] == '\\';
    if (text[i] == '|' && !is_escaped) result += '\\';
    result += text[i];
  }
  return result;
}

std::size_t longest_run(std::string const& text, char c) {
  std::size_t longest = 0, run = 0;
  for (char here : text) {
    run = here == c ? run + 1 : 0;
    longest = std::max(longest, run);
  }
  return longest;
}

}  // namespace

std::string markdown_text(std::string const& text) {
  auto const shown = showable(text);
  std::string result;
  for (std::size_t i = 0; i < shown.size(); ++i) {
    char const next = i + 1 < shown.size() ? shown[i + 1] : ' ';
    bool const is_link = (shown[i] == ']' && next == '(') || (shown[i] == ':' && next == '/');
    if (is_link || std::string_view("|\\*_`<&~").find(shown[i]) != std::string_view::npos)
      result += '\\';
    result += shown[i];
  }
  return result;
}

std::string markdown_code(std::string const& text) {
  if (text.empty()) return {};
  auto const shown = showable(text);
  std::string const fence(longest_run(shown, '`') + 1, '`');
  bool const is_open =
      shown.front() == '`' || shown.back() == '`' || (shown.front() == ' ' && shown.back() == ' ');
  return is_open ? fmt::format("{} {} {}", fence, shown, fence) : fence + shown + fence;
}

std::string markdown_table(std::vector<std::vector<std::string>> const& lines) {
  std::string result;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    result += "|";
    for (auto const& cell : lines[i]) result += fmt::format(" {} |", in_cell(cell));
    result += "\n";
    if (i > 0) continue;
    result += "|";
    for (std::size_t column = 0; column < lines[0].size(); ++column) result += " --- |";
    result += "\n";
  }
  return result;
}

}  // namespace leat::render
