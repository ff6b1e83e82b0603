#include "lang/cli/parts.hpp"

#include <algorithm>

namespace leat::cli {

namespace {

constexpr std::string_view blanks = " \t\r\n";

}  // namespace

std::string_view trimmed(std::string_view text) {
  auto const begin = text.find_first_not_of(blanks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(blanks) - begin + 1);
}

std::vector<std::string_view> parts_of(std::string_view text) {
  std::vector<std::string_view> parts;
  while (true) {
    auto const comma = std::min(text.find(','), text.size());
    parts.push_back(trimmed(text.substr(0, comma)));
    if (comma == text.size()) return parts;
    text.remove_prefix(comma + 1);
  }
}

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  for (text = trimmed(text); !text.empty(); text = trimmed(text)) {
    auto const end = std::min(text.find_first_of(blanks), text.size());
    words.push_back(text.substr(0, end));
    text.remove_prefix(end);
  }
  return words;
}

}  // namespace leat::cli
