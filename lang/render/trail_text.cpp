#include "lang/render/trail_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "lang/render/columns.hpp"
#include "lang/render/example.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/water_signs.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using model::Cell;

std::string_view side_word(model::Place from, model::Place to) {
  if (to.x != from.x) return to.x > from.x ? "east" : "west";
  return to.y > from.y ? "south" : "north";
}

std::string surroundings_words(Scene const& scene, Cell feet) {
  auto const found =
      std::lower_bound(scene.wet.begin(), scene.wet.end(), feet,
                       [](water::WetCell const& wet, Cell cell) { return wet.cell < cell; });
  if (found == scene.wet.end() || found->cell != feet) return "dry";
  return water_words(*found);
}

std::string steps_table(Journey const& journey, body::Trail const& trail) {
  auto const& graph = journey.part.graph;
  auto const& subject = journey.part.subject;
  auto const& grid = subject.design.grid;
  std::vector<std::vector<std::string>> lines{
      {"step", "x y z", "how it came there", "its feet in"}};
  for (std::size_t i = 0; i < trail.positions.size(); ++i) {
    auto const& at = graph.positions[trail.positions[i]];
    auto how = "enters at " + subject.map.inlets[journey.part.inlet].name;
    if (i > 0) {
      auto const from = graph.positions[trail.positions[i - 1]].feet;
      how = move_words(grid.place(from), graph.steps[trail.steps[i - 1]], grid.place(at.feet));
    }
    lines.push_back({fmt::format("{:4}", i), place_code(grid.place(at.feet)), how,
                     grid.is_inside(at.feet) ? surroundings_words(journey.scene, at.feet)
                                             : "outside the drawing"});
  }
  return aligned(lines, 4);
}

// The cells of an ending that are in the drawing, ascending.
std::vector<Cell> cells_of(Journey const& journey, body::Ending const& ending) {
  auto const& grid = journey.part.subject.design.grid;
  auto cells = ending.loop;
  for (auto i : ending.trail.positions) cells.push_back(journey.part.graph.positions[i].feet);
  std::erase_if(cells, [&](Cell c) { return !grid.is_inside(c); });
  std::sort(cells.begin(), cells.end());
  cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
  return cells;
}

// Whether nothing stands in a box of one level: in a works, solid between what is placed.
bool is_bare(Subject const& subject, int z, Window const& box) {
  auto const& design = subject.design;
  for (int y = box.y_begin; y < box.y_end; ++y) {
    for (int x = box.x_begin; x < box.x_end; ++x) {
      auto const fill = design.fill_of[design.grid.cell({x, y, z})];
      bool const is_between = subject.map.fills[fill].name == " ";
      if (!is_between || design.fills[fill].powered != model::material::rock) return false;
    }
  }
  return true;
}

// Without the rows and columns at its edges in which nothing stands.
Window trimmed(Subject const& subject, int z, Window box) {
  while (box.y_begin + 1 < box.y_end &&
         is_bare(subject, z, {box.x_begin, box.x_end, box.y_begin, box.y_begin + 1}))
    ++box.y_begin;
  while (box.y_begin + 1 < box.y_end &&
         is_bare(subject, z, {box.x_begin, box.x_end, box.y_end - 1, box.y_end}))
    --box.y_end;
  while (box.x_begin + 1 < box.x_end &&
         is_bare(subject, z, {box.x_begin, box.x_begin + 1, box.y_begin, box.y_end}))
    ++box.x_begin;
  while (box.x_begin + 1 < box.x_end &&
         is_bare(subject, z, {box.x_end - 1, box.x_end, box.y_begin, box.y_end}))
    --box.x_end;
  return box;
}

// From the top down.
std::vector<View> views_of(Subject const& subject, std::vector<Cell> const& cells) {
  auto const& grid = subject.design.grid;
  std::vector<View> views;
  for (auto c = cells.rbegin(); c != cells.rend(); ++c) {
    auto const z = grid.place(*c).z;
    if (views.empty() || views.back().z != z)
      views.push_back({z, trimmed(subject, z, around(grid, cells, z, 2, 200))});
  }
  return views;
}

std::string pictures(Journey const& journey, std::vector<Cell> const& cells, Look look) {
  auto const& grid = journey.part.subject.design.grid;
  std::string result;
  for (auto const& [z, window] : views_of(journey.part.subject, cells)) {
    result += "\n    " + painted(look, Role::quiet, level_heading(grid, z, window)) + "\n";
    result += level_picture(journey.scene, z, window, cells, {look, 4});
  }
  return result;
}

std::string rate_words(Subject const& subject, body::Throughput const& throughput) {
  if (throughput.rate == body::no_limit) return {};
  auto words = fmt::format("; at most {:.2f} a second", static_cast<double>(throughput.rate) / 1e6);
  if (throughput.narrowest.empty()) return words;
  words +=
      ", narrowest at " + place_code(subject.design.grid.place(throughput.narrowest.front().cell));
  auto const more = throughput.narrowest.size() - 1;
  return more == 0 ? words : words + fmt::format(" and {}", counted(more, "more cell"));
}

// How long it takes from the inlet, and how many can follow each other.
std::string pace_line(Journey const& journey, body::Ending const& ending) {
  auto const& [part, scene, endings, left_out] = journey;
  if (ending.kind != body::EndingKind::outlet) return {};
  auto const pace = std::find_if(part.paces.begin(), part.paces.end(),
                                 [&](Pace const& one) { return one.outlet == ending.outlet; });
  if (pace == part.paces.end() || !pace->quickest) return {};
  auto const quickest = time_words(part.subject, *pace->quickest);
  auto words =
      "in at most " + (pace->longest ? time_words(part.subject, *pace->longest) : quickest);
  if (!pace->longest) words = quickest + " at most by the shortest way, without a bound by others";
  if (pace->longest && *pace->longest != *pace->quickest)
    words += ", by the shortest way " + quickest;
  return fmt::format("    {}{}\n\n", words, rate_words(part.subject, pace->throughput));
}

std::string ending_text(Journey const& journey, body::Ending const& ending, Look look) {
  auto const& graph = journey.part.graph;
  auto const steps = ending.trail.steps.size();
  auto const heading = ending_words(journey.part.subject, ending);
  bool const is_unsure = std::any_of(ending.trail.steps.begin(), ending.trail.steps.end(),
                                     [&](std::uint32_t s) { return !graph.steps[s].is_sure; });
  auto result = fmt::format("\n{}, {}{}\n\n", painted(look, Role::strong, heading),
                            counted(steps, "step"), is_unsure ? ", not all of them sure" : "");
  result += pace_line(journey, ending);
  result += steps_table(journey, ending.trail);
  return result + pictures(journey, cells_of(journey, ending), look);
}

std::vector<View> views_drawn(Journey const& journey) {
  std::vector<View> drawn;
  for (auto const& ending : journey.endings) {
    auto const views = views_of(journey.part.subject, cells_of(journey, ending));
    drawn.insert(drawn.end(), views.begin(), views.end());
  }
  return drawn;
}

std::string heading(Journey const& journey, Look look) {
  auto const& [part, scene, endings, left_out] = journey;
  auto const setting = situation_text(part.subject, part.assignment, part.flips);
  auto const verdict = word_of(part.outcome.verdict);
  auto const goes_to = listed(names_of(part.subject.map.outlets, part.outcome.outlets), "or");
  auto result = fmt::format(
      "{}\n    from       {}\n    body       {}\n    {}       {}\n    verdict    {}{}\n",
      painted(look, Role::strong, "junction " + part.subject.map.junction.name),
      part.subject.map.inlets[part.inlet].name, part.subject.map.profiles[part.profile].name,
      part.flips.empty() ? "with" : "done", setting,
      painted(look, part.outcome.verdict == body::Verdict::certain ? Role::good : Role::warning,
              verdict),
      goes_to.empty() ? ", reaches nothing" : ", reaches " + goes_to);
  if (auto const caveat = caveat_of(part.standing); !caveat.empty())
    result += fmt::format("    but        {}\n", caveat);
  if (part.graph.starts.empty()) {
    result += "\nThe body does not fit into the inlet.\n";
  }
  return result;
}

}  // namespace

std::string move_words(model::Place from, body::Step const& step, model::Place to) {
  std::string const side(side_word(from, to));
  bool const is_aside = from.x != to.x || from.y != to.y;
  std::string words;
  switch (step.rule) {
    case body::MoveRule::fall:
      words = is_aside ? "falls, drifting " + side : "falls";
      break;
    case body::MoveRule::drift:
      words = "drifts on to the " + side;
      break;
    case body::MoveRule::sink:
      words = is_aside ? "sinks, drifting " + side : "sinks";
      break;
    case body::MoveRule::rise:
      words = "rises in the water";
      break;
    case body::MoveRule::push:
      words = "pushed " + side + " by the water";
      break;
    case body::MoveRule::climb:
      words = "climbs over the edge to the " + side;
      break;
  }
  return step.is_sure ? words : words + " (unsure)";
}

namespace {

// Where a works joins an outlet to an inlet, the way goes on there.
std::string onward_words(Subject const& subject, model::OutletId outlet) {
  for (auto const& join : subject.design.joins) {
    if (join.outlet == outlet) return ", joined to " + subject.map.inlets[join.inlet].name;
  }
  return {};
}

}  // namespace

std::string ending_words(Subject const& subject, body::Ending const& ending) {
  switch (ending.kind) {
    case body::EndingKind::outlet:
      return "Reaches " + subject.map.outlets[ending.outlet].name +
             onward_words(subject, ending.outlet);
    case body::EndingKind::spill:
      return "Leaves the drawing";
    case body::EndingKind::loop:
      return "Goes round for ever through " + counted(ending.loop.size(), "cell");
    case body::EndingKind::rest:
      break;
  }
  if (ending.end == body::End::dry) return "Stays: stands on dry ground";
  if (ending.end == body::End::still) return "Stays: floats in still water";
  return "Stays: is pressed against what it cannot enter";
}

std::string arrivals_text(TrailPart const& part, Look look) {
  if (part.arrivals.empty()) return {};
  auto const& map = part.subject.map;
  std::vector<std::vector<std::string>> lines{{"through the works to", "at most", "quickest", ""}};
  for (auto const& arrival : part.arrivals) {
    auto const told = [&](std::optional<works::Ticks> ticks) {
      bool const is_told = ticks && *ticks <= std::numeric_limits<int>::max();
      return is_told ? time_words(part.subject, static_cast<int>(*ticks)) : "no bound";
    };
    lines.push_back({map.outlets[arrival.outlet].name, told(arrival.longest),
                     told(arrival.quickest),
                     arrival.has_untold ? "and joins whose time is not said" : ""});
  }
  return fmt::format(
      "{}\n\n{}",
      painted(look, Role::strong,
              fmt::format("From {} on, all ways together", map.inlets[part.inlet].name)),
      aligned(lines, 4));
}

std::string journey_text(Journey const& journey, Look look) {
  auto result = heading(journey, look);
  for (auto const& ending : journey.endings) result += ending_text(journey, ending, look);
  if (journey.left_out > 0) {
    result += fmt::format("\nand {} that are not shown (--as json holds every position)\n",
                          counted(journey.left_out, "ending"));
  }
  if (!journey.endings.empty()) {
    result +=
        fmt::format("\n{}\n{}    [ ]  the way of its feet\n", painted(look, Role::quiet, "signs"),
                    legend(journey.scene, views_drawn(journey), {look, 4}));
  }
  return result;
}

}  // namespace leat::render
