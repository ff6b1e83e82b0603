#include <fmt/format.h>

#include <map>

#include "lang/render/picture/markup.hpp"
#include "lang/render/picture/overlays.hpp"
#include "lang/render/picture/symbols.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

// An error is an octagon, a warning stands on a corner, a note is round.
std::string pin_shape(Pin const& pin) {
  auto const shape = pin.severity == model::Severity::error
                         ? "<path class=\"f-error s-paper\" stroke-width=\"1.5\" "
                           "d=\"M-4.5 -11h9l6.5 6.5v9l-6.5 6.5h-9l-6.5 -6.5v-9z\"/>"
                     : pin.severity == model::Severity::warning
                         ? "<path class=\"f-warning s-paper\" stroke-width=\"1.5\" "
                           "d=\"M0 -13L13 0L0 13L-13 0z\"/>"
                         : "<circle class=\"f-note s-paper\" stroke-width=\"1.5\" r=\"10\"/>";
  return fmt::format("{}<text class=\"mid small name f-number\" y=\"3\">{}</text>", shape,
                     pin.number);
}

namespace {

// The cells of a finding, framed.
std::string frames(PictureScene const& scene, Plane const& plane, Pin const& pin) {
  std::string path;
  for (auto c : pin.cells) {
    auto const spot = plane.spot(scene.subject.design.grid.place(c));
    if (!spot) continue;
    path += fmt::format("M{} {}h{}v{}h-{}z", spot->across * cell_size + 4,
                        spot->down * cell_size + 4, cell_size - 8, cell_size - 8, cell_size - 8);
  }
  if (path.empty()) return {};
  return fmt::format(
      "<path class=\"line s-paper\" stroke-width=\"5\" d=\"{0}\"/><path class=\"line "
      "s-{1}\" stroke-width=\"2.5\" stroke-dasharray=\"4 5\" d=\"{0}\"/>",
      path, word_of(pin.severity));
}

std::optional<Plane::Spot> first_spot(PictureScene const& scene, Plane const& plane,
                                      Pin const& pin) {
  for (auto c : pin.cells) {
    if (auto const spot = plane.spot(scene.subject.design.grid.place(c))) return spot;
  }
  return std::nullopt;
}

}  // namespace

std::string pins(PictureScene const& scene, Plane const& plane) {
  std::string framed, pinned;
  std::map<std::pair<int, int>, int> at_spot;
  for (auto const& pin : scene.pins) {
    auto const spot = first_spot(scene, plane, pin);
    if (!spot) continue;
    framed += frames(scene, plane, pin);
    auto const nth = at_spot[{spot->across, spot->down}]++;
    pinned += fmt::format(
        "<g class=\"pin\" data-finding=\"{}\" transform=\"translate({} "
        "{})\"><title>{}</title>{}</g>\n",
        pin.number, spot->across * cell_size + 4 + 15 * nth, spot->down * cell_size + 4,
        escaped(fmt::format("{}: {}", word_of(pin.severity), pin.headline)), pin_shape(pin));
  }
  return framed + pinned;
}

}  // namespace leat::render
