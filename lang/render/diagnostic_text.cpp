#include "lang/render/diagnostic_text.hpp"

#include <fmt/format.h>

#include "lang/render/columns.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::string label_text(diagnostics::Label const& label, source::SourceText const& text, Look look) {
  auto heading = location(text, label.span.begin);
  if (label.place) {
    heading += fmt::format("   {} (at {})", place_words(*label.place), place_code(*label.place));
  }
  auto result = "    " + painted(look, Role::quiet, showable(heading)) + "\n\n";
  result += source_excerpt(text, label.span, 8, look);
  if (!label.text.empty()) {
    result += "        " + wrapped(showable(label.text), 80, 8) + "\n";
  }
  return result + "\n";
}

}  // namespace

std::string location(source::SourceText const& text, std::size_t offset) {
  auto const at = text.position(offset);
  return fmt::format("{}:{}:{}", showable(text.name(at.file)), at.line, at.column);
}

std::string diagnostic_text(diagnostics::Diagnostic const& found, source::SourceText const& text,
                            Look look) {
  auto result = fmt::format("{}  {}  {}\n", painted(look, Role::error, "error"),
                            painted(look, Role::named, found.name),
                            painted(look, Role::strong, wrapped(showable(found.headline), 88, 4)));
  result += label_text(found.primary, text, look);
  for (auto const& other : found.others) result += label_text(other, text, look);
  if (!found.remedy.empty()) {
    result += "    " + painted(look, Role::quiet, "do") + "          " +
              wrapped(showable(found.remedy), 80, 16) + "\n\n";
  }
  return result;
}

std::string diagnostic_line(diagnostics::Diagnostic const& found, source::SourceText const& text) {
  auto line = fmt::format("{}: error: {}: {}", location(text, found.primary.span.begin), found.name,
                          found.headline);
  if (!found.primary.text.empty()) line += "; " + found.primary.text;
  return showable(line) + "\n";
}

}  // namespace leat::render
