#include "lang/render/islands_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

#include "engine/works/excerpt.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

constexpr std::size_t most_names = 6;

std::string extent_words(model::Grid const& grid) {
  return fmt::format("{} x {} x {}", std::max(grid.width() - 2, 1), std::max(grid.depth() - 2, 1),
                     std::max(grid.height() - 2, 1));
}

// What the copies of a part depend on: all on the same signals, or each on its own.
std::string support_words(Subject const& subject, works::Part const& part,
                          std::vector<works::Copy const*> const& copies) {
  auto const support = works::support(part);
  if (support.empty()) return "no signal";
  std::vector<std::string> all;
  std::set<std::string> known;
  for (auto const* copy : copies) {
    std::vector<std::string> names;
    for (auto signal : support) names.push_back(subject.map.signals[copy->signals[signal]].name);
    auto words = listed(names, "and", most_names);
    if (known.insert(words).second) all.push_back(std::move(words));
  }
  if (all.size() == 1) return all.front();
  if (support.size() == 1) return "one of " + listed(all, "and", most_names);
  return fmt::format("{} signals each, such as {}", support.size(), all.front());
}

// The least and the greatest place at which feet can be, in the drawing: a first copy is not
// turned.
std::pair<model::Place, model::Place> extent_of(works::Part const& part, works::Copy const& copy,
                                                works::Region const& region) {
  std::optional<std::pair<model::Place, model::Place>> extent;
  for (auto const& feet : region.feet) {
    for (auto c : feet) {
      auto const own = part.design.grid.place(c);
      model::Place const at{own.x + copy.corner.x, own.y + copy.corner.y, own.z + copy.corner.z};
      if (!extent) extent = {at, at};
      auto& [least, most] = *extent;
      least = {std::min(least.x, at.x), std::min(least.y, at.y), std::min(least.z, at.z)};
      most = {std::max(most.x, at.x), std::max(most.y, at.y), std::max(most.z, at.z)};
    }
  }
  return *extent;
}

// Not known where controls as built are not.
std::string of_kinds(std::vector<works::Region> const& regions, model::Design const& design,
                     works::Supports const& supports) {
  works::AsBuilt as_built(design);
  if (!as_built.is_known()) return "";
  return fmt::format(" of {}",
                     counted(works::kinds_of(regions, design, supports, as_built), "kind"));
}

std::size_t cells_in(works::Region const& region) {
  std::size_t most = 0;
  for (auto const& feet : region.feet) most = std::max(most, feet.size());
  return most;
}

}  // namespace

std::string region_place(works::Part const& part, works::Copy const& copy,
                         works::Region const& region) {
  auto const [least, most] = extent_of(part, copy, region);
  return least == most ? place_code(least)
                       : fmt::format("{} to {}", place_code(least), place_code(most));
}

std::string regions_text(Subject const& subject, works::Islands const& islands) {
  std::string text;
  for (std::uint32_t p = 0; p < islands.parts.size(); ++p) {
    auto const& part = islands.parts[p];
    auto const& copy = works::first_copy(islands, p);
    auto const design = part.drawn();
    works::Supports const supports(design);
    auto const regions = works::regions_of(design, supports);
    auto const depending =
        std::count_if(regions.begin(), regions.end(),
                      [](works::Region const& region) { return !region.signals.empty(); });
    if (depending < 2) continue;
    auto const at = standing_words(subject, part, copy);
    text += fmt::format("\n{} falls into {}{}\n\n", at.empty() ? "the island" : at,
                        counted(regions.size(), "region"), of_kinds(regions, design, supports));
    std::vector<std::vector<std::string>> lines{{"cells", "depends on", "from, to"}};
    for (auto const& region : regions) {
      std::vector<std::string> names;
      for (auto signal : region.signals)
        names.push_back(subject.map.signals[copy.signals[signal]].name);
      lines.push_back({std::to_string(cells_in(region)),
                       names.empty() ? "no signal" : listed(names, "and", most_names),
                       region_place(part, copy, region)});
    }
    text += aligned(lines, 4);
  }
  return text;
}

std::string standing_words(Subject const& subject, works::Part const& part,
                           works::Copy const& copy) {
  auto const& grid = part.design.grid;
  auto const& low = copy.corner;
  auto const across = copy.posture.is_across() ? grid.depth() : grid.width();
  auto const along = copy.posture.is_across() ? grid.width() : grid.depth();
  auto const at =
      subject.map.placed.within({low.x + 1, low.y + 1, low.z + 1},
                                {low.x + std::max(across - 2, 1), low.y + std::max(along - 2, 1),
                                 low.z + std::max(grid.height() - 2, 1)});
  std::string name;
  for (auto i : at) name += (name.empty() ? "" : "+") + subject.map.placed[i].name.name;
  return name;
}

// Its drawing has a margin of one cell.
std::string least_place(works::Copy const& copy) {
  return place_code({copy.corner.x + 1, copy.corner.y + 1, copy.corner.z + 1});
}

std::string islands_text(Subject const& subject, works::Islands const& islands) {
  auto text = fmt::format("{} {}: {} in {}\n\n", subject.map.is_works() ? "works" : "junction",
                          subject.map.junction.name, counted(islands.copies.size(), "island"),
                          counted(islands.parts.size(), "kind"));
  std::vector<std::vector<std::string>> lines{
      {"islands", "cells across", "depends on", "stands in"}};
  for (auto const& part : islands.parts) {
    std::vector<std::string> places;
    std::vector<works::Copy const*> copies;
    for (auto c : part.copies) {
      auto const& copy = islands.copies[c];
      copies.push_back(&copy);
      auto const at = standing_words(subject, part, copy);
      places.push_back(at.empty() ? least_place(copy) : at);
    }
    lines.push_back({std::to_string(copies.size()), extent_words(part.design.grid),
                     support_words(subject, part, copies), listed(places, "and", most_names)});
  }
  return text + aligned(lines, 4);
}

}  // namespace leat::render
