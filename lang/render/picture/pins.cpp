#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "lang/render/markup.hpp"
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

// The cells of a finding with a line around them, a little inside.
std::string outline(PictureScene const& scene, Plane const& plane, Pin const& pin) {
  constexpr int inset = 4, size = cell_size;
  auto const& grid = scene.subject.design.grid;
  std::string path;
  for (auto c : pin.cells) {
    auto const spot = plane.spot(grid.place(c));
    if (!spot) continue;
    auto const is_in = [&](int across, int down) {
      if (across < 0 || down < 0 || across >= plane.width() || down >= plane.height()) return false;
      return std::binary_search(pin.cells.begin(), pin.cells.end(),
                                grid.cell(plane.place(across, down)));
    };
    auto const [across, down] = *spot;
    bool const west = is_in(across - 1, down), east = is_in(across + 1, down);
    bool const north = is_in(across, down - 1), south = is_in(across, down + 1);
    auto const x = across * size, y = down * size;
    auto const left = x + (west ? 0 : inset), right = x + size - (east ? 0 : inset);
    auto const top = y + (north ? 0 : inset), bottom = y + size - (south ? 0 : inset);
    if (!north) path += fmt::format("M{} {}H{}", left, y + inset, right);
    if (!south) path += fmt::format("M{} {}H{}", left, y + size - inset, right);
    if (!west) path += fmt::format("M{} {}V{}", x + inset, top, bottom);
    if (!east) path += fmt::format("M{} {}V{}", x + size - inset, top, bottom);
  }
  if (path.empty()) return {};
  return fmt::format(
      "<path class=\"line s-paper\" stroke-width=\"4\" d=\"{0}\"/><path class=\"line s-{1}\" "
      "stroke-width=\"2\" stroke-dasharray=\"1 4\" d=\"{0}\"/>",
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
    framed += outline(scene, plane, pin);
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
