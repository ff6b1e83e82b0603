#include <fmt/format.h>

#include "lang/render/paragraph.hpp"

#include "lang/render/columns.hpp"

namespace leat::render {

namespace {

constexpr std::size_t indent = 4, word_columns = 12, text_columns = 80;

}  // namespace

std::string heading_line(std::string_view severity, std::string_view name,
                         std::string_view headline, Look look) {
  auto const before = columns_of(severity) + columns_of(name) + 4;
  auto const room = before + 40 < 96 ? 96 - before : 56;
  return painted(look, role_of(severity), severity) + "  " + painted(look, Role::named, name) +
         "  " + painted(look, Role::strong, wrapped(headline, room, indent)) + "\n";
}

std::string worded_line(std::string_view word, std::string_view text, Look look) {
  if (text.empty()) return {};
  return std::string(indent, ' ') + painted(look, Role::quiet, padded(word, word_columns)) +
         wrapped(text, text_columns, indent + word_columns) + "\n";
}

std::string see_line(std::string_view command, Look look) {
  if (command.empty()) return {};
  return fmt::format("    {}{}\n", painted(look, Role::quiet, "see         "), command);
}

Role role_of(std::string_view severity) {
  if (severity == "error" || severity == "violated" || severity == "empty" ||
      severity == "worse") return Role::error;
  if (severity == "warning" || severity == "undecided" || severity == "changed")
    return Role::warning;
  if (severity == "holds" || severity == "better" || severity == "the same") return Role::good;
  return severity == "accepted" ? Role::quiet : Role::note;
}

}  // namespace leat::render
