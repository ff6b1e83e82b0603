#include "lang/render/picture/palette.hpp"

#include <fmt/format.h>

#include "engine/contract.hpp"

namespace leat::render {

namespace {

// Colours are written out for each class: not every reader of pictures knows variables of style.
std::string ink_rules(Theme theme) {
  std::string text;
  for (auto const& ink : inks) {
    auto const colour = colour_of(ink, theme);
    text += fmt::format(".f-{0}{{fill:{1}}}.s-{0}{{stroke:{1}}}\n", ink.name, colour);
  }
  return text;
}

constexpr std::string_view shared_rules =
    ".picture{font-family:system-ui,'DejaVu Sans',sans-serif;font-size:12px}\n"
    ".line{fill:none;stroke-linecap:round;stroke-linejoin:round}\n"
    ".end{text-anchor:end}.mid{text-anchor:middle}\n"
    ".small{font-size:9px}.name{font-weight:600}.head{font-size:15px;font-weight:600}\n";

}  // namespace

std::string_view colour_of(Ink const& ink, Theme theme) {
  require(theme != Theme::automatic, "a colour is asked of one theme");
  if (theme == Theme::light) return ink.light;
  return theme == Theme::dark ? ink.dark : ink.paper;
}

std::string style_sheet(Theme theme) {
  std::string text(shared_rules);
  if (theme != Theme::automatic) return text + ink_rules(theme);
  return text + ink_rules(Theme::light) + "@media screen and (prefers-color-scheme:dark){\n" +
         ink_rules(Theme::dark) + "}\n";
}

}  // namespace leat::render
