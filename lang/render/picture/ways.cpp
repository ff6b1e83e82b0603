#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "lang/render/markup.hpp"
#include "lang/render/picture/overlays.hpp"
#include "lang/render/picture/palette.hpp"
#include "lang/render/picture/symbols.hpp"

namespace leat::render {

namespace {

constexpr std::array<std::string_view, trail_inks> dashes{"none", "9 5", "2 6", "14 5 2 5", "5 4"};

struct Point {
  int x = 0, y = 0;
  bool operator==(Point const&) const = default;
};

// How one inlet's ways are drawn.
struct Lane {
  std::size_t number = 0;
  Point shift;  // from the middle of a cell

  std::size_t ink() const { return number % trail_inks + 1; }
  std::string_view dash() const { return dashes[number % trail_inks]; }
};

// Lanes lie beside each other, those of all inlets around the middle of the cell.
Lane lane_of(PictureScene const& scene, std::size_t number) {
  constexpr int apart = 6, most = 12;
  auto const count = static_cast<int>(scene.ways.size());
  auto const shift =
      std::clamp((2 * static_cast<int>(number) - count + 1) * apart / 2, -most, most);
  auto const footprint = scene.subject.design.profiles[scene.ways[number].profile].footprint;
  auto const wide = (footprint - 1) * cell_size / 2;
  return {number, {shift + wide, shift + wide}};
}

Point middle(Plane::Spot spot, Lane const& lane) {
  return {spot.across * cell_size + cell_size / 2 + lane.shift.x,
          spot.down * cell_size + cell_size / 2 + lane.shift.y};
}

struct Leg {
  Plane::Spot from, to;
};

// The legs of the ways that lie in the cut, sure and unsure, each once.
class Legs {
 public:
  Legs(Plane const& plane, InletWays const& ways) {
    for (auto const& way : ways.ways) {
      for (std::size_t i = 1; i < way.stops.size(); ++i)
        add(plane, way.stops[i - 1].at, way.stops[i]);
    }
  }
  std::vector<Leg> sure, unsure;
  std::vector<std::pair<Plane::Spot, int>> leaving;  // out of the cut: up or down

 private:
  void add(Plane const& plane, model::Place from, Way::Stop const& stop) {
    if (from == stop.at || !known_.insert({from, stop.at}).second) return;
    auto const begin = plane.spot(from), end = plane.spot(stop.at);
    if (begin && end) (stop.is_sure ? sure : unsure).push_back({*begin, *end});
    if (begin && !end) leaving.emplace_back(*begin, stop.at.z - from.z);
  }
  std::set<std::pair<model::Place, model::Place>> known_;
};

int sign(int n) { return n > 0 ? 1 : n < 0 ? -1 : 0; }

// Legs one after the other are one line, and those in one direction one stretch of it.
std::string path_of(std::vector<Leg> const& legs, Lane const& lane) {
  std::string path;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    bool const goes_on = i > 0 && legs[i - 1].to == legs[i].from;
    if (!goes_on) {
      auto const begin = middle(legs[i].from, lane);
      path += fmt::format("M{} {}", begin.x, begin.y);
    }
    auto const direction = [&](Leg const& leg) {
      return std::pair{leg.to.across - leg.from.across, leg.to.down - leg.from.down};
    };
    bool const is_straight = i + 1 < legs.size() && legs[i + 1].from == legs[i].to &&
                             direction(legs[i + 1]) == direction(legs[i]);
    if (is_straight) continue;
    auto const end = middle(legs[i].to, lane);
    path += fmt::format("L{} {}", end.x, end.y);
  }
  return path;
}

// A head on every third leg says where it goes.
std::string heads(std::vector<Leg> const& legs, Lane const& lane) {
  std::string path;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    bool const is_last = i + 1 == legs.size() || !(legs[i + 1].from == legs[i].to);
    if (i % 3 != 1 && !is_last) continue;
    auto const a = middle(legs[i].from, lane), b = middle(legs[i].to, lane);
    auto const x = sign(b.x - a.x), y = sign(b.y - a.y);
    Point const tip{(a.x + b.x) / 2 + 4 * x, (a.y + b.y) / 2 + 4 * y};
    path += fmt::format("M{} {}L{} {}L{} {}", tip.x - 6 * x - 5 * y, tip.y - 6 * y + 5 * x, tip.x,
                        tip.y, tip.x - 6 * x + 5 * y, tip.y - 6 * y - 5 * x);
  }
  return path;
}

std::string line(std::string const& path, Lane const& lane, bool is_sure) {
  if (path.empty()) return {};
  return fmt::format(
      "<path class=\"line s-paper\" stroke-width=\"7\" d=\"{0}\"/>"
      "<path class=\"line s-trail{1}\" stroke-width=\"3.5\" stroke-dasharray=\"{2}\" "
      "d=\"{0}\"/>\n",
      path, lane.ink(), is_sure ? lane.dash() : "1 6");
}

// Where a way leaves the cut: a triangle, up or down, or a ring where it is neither.
std::string leaving_mark(Plane const& plane, Plane::Spot spot, int rise, Lane const& lane) {
  auto const at = middle(spot, lane);
  if (rise == 0 || !plane.is_level())
    return fmt::format(
        "<circle class=\"f-paper s-trail{}\" stroke-width=\"3\" cx=\"{}\" cy=\"{}\" "
        "r=\"5\"/>",
        lane.ink(), at.x, at.y);
  return fmt::format(
      "<path class=\"f-trail{} s-paper\" stroke-width=\"1.5\" d=\"M{} {}h14l-7 {}z\"/>", lane.ink(),
      at.x - 7, rise > 0 ? at.y + 5 : at.y - 5, rise > 0 ? -12 : 12);
}

std::string end_mark(WayEnd end, Plane::Spot spot, Lane const& lane) {
  auto const at = middle(spot, lane);
  auto const place = fmt::format("transform=\"translate({} {})\"", at.x, at.y);
  switch (end) {
    case WayEnd::delivered:
      return fmt::format("<circle class=\"f-trail{} s-paper\" stroke-width=\"2\" r=\"7\" {}/>",
                         lane.ink(), place);
    case WayEnd::rests:
      return fmt::format(
          "<path class=\"f-trail{} s-paper\" stroke-width=\"2\" d=\"M-6 -6h12v12h-12z\" "
          "{}/>",
          lane.ink(), place);
    case WayEnd::circles:
      return fmt::format("<circle class=\"f-paper s-trail{}\" stroke-width=\"3\" r=\"6\" {}/>",
                         lane.ink(), place);
    case WayEnd::spilled:
      break;
  }
  return fmt::format(
      "<path class=\"line s-trail{}\" stroke-width=\"4\" d=\"M-6 -6L6 6M-6 6L6 -6\" "
      "{}/>",
      lane.ink(), place);
}

std::string marks(Plane const& plane, InletWays const& ways, Legs const& legs, Lane const& lane) {
  std::string text;
  for (auto const& [spot, rise] : legs.leaving) text += leaving_mark(plane, spot, rise, lane);
  for (auto const& way : ways.ways) {
    if (way.stops.empty()) continue;
    if (auto const spot = plane.spot(way.stops.front().at)) {
      auto const at = middle(*spot, lane);
      text += fmt::format("<circle class=\"f-trail{}\" cx=\"{}\" cy=\"{}\" r=\"4\"/>", lane.ink(),
                          at.x, at.y);
    }
    if (auto const spot = plane.spot(way.stops.back().at)) text += end_mark(way.end, *spot, lane);
  }
  return text;
}

}  // namespace

std::string ways(PictureScene const& scene, Plane const& plane) {
  std::string text;
  for (std::size_t number = 0; number < scene.ways.size(); ++number) {
    auto const& here = scene.ways[number];
    auto const lane = lane_of(scene, number);
    Legs const legs(plane, here);
    auto all = legs.sure;
    all.insert(all.end(), legs.unsure.begin(), legs.unsure.end());
    auto const inside =
        line(path_of(legs.sure, lane), lane, true) + line(path_of(legs.unsure, lane), lane, false) +
        (all.empty() ? std::string()
                     : fmt::format("<path class=\"line s-trail{}\" stroke-width=\"2.5\" "
                                   "d=\"{}\"/>\n",
                                   lane.ink(), heads(all, lane))) +
        marks(plane, here, legs, lane);
    if (inside.empty()) continue;
    auto const name = escaped(scene.subject.map.inlets[here.inlet].name);
    text += fmt::format("<g class=\"way\" data-inlet=\"{0}\"><title>ways from {0}</title>{1}</g>\n",
                        name, inside);
  }
  return text;
}

std::string way_sample(std::size_t number, int length) {
  Lane const lane{number, {}};
  return fmt::format(
      "<path class=\"line s-trail{0}\" stroke-width=\"3.5\" stroke-dasharray=\"{1}\" "
      "d=\"M0 0H{2}\"/><path class=\"line s-trail{0}\" stroke-width=\"2.5\" "
      "d=\"M{3} -5L{4} 0L{3} 5\"/>",
      lane.ink(), lane.dash(), length, length - 6, length);
}

}  // namespace leat::render
