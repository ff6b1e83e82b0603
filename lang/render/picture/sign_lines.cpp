#include <fmt/format.h>

#include <array>
#include <map>
#include <set>

#include "lang/render/fill_words.hpp"
#include "lang/render/picture/sheet.hpp"
#include "lang/render/picture/symbols.hpp"

namespace leat::render {

namespace {

struct Occurring {
  std::map<model::FillId, model::Cell> switched;  // with a cell that is
  std::set<model::MaterialId> materials;
  std::set<std::string> waters;  // ids of signs
  std::set<int> strengths;
  bool has_flow = false, has_still = false, has_near = false, has_far = false;
};

void note_water(Occurring& found, water::WetCell const& wet, Plane const& plane) {
  if (water::is_flow(wet.state))
    found.strengths.insert(wet.strength);
  else
    found.waters.insert(water_symbol(wet, plane));
  auto const current = current_symbol(wet, plane);
  if (current.ends_with("-still"))
    found.has_still = true;
  else if (current.ends_with("-near"))
    found.has_near = true;
  else if (current.ends_with("-far"))
    found.has_far = true;
  else if (!current.empty())
    found.has_flow = true;
}

Occurring occurring(Sheet const& sheet) {
  Occurring found;
  auto const& scene = sheet.scene;
  auto const& design = scene.subject.design;
  for (auto const cut : sheet.cuts) {
    Plane const plane(design.grid, cut);
    for (int down = 0; down < plane.height(); ++down) {
      for (int across = 0; across < plane.width(); ++across) {
        auto const c = design.grid.cell(plane.place(across, down));
        found.materials.insert(scene.arrangement->material_of(c));
        if (design.fills[design.fill_of[c]].is_switched())
          found.switched.emplace(design.fill_of[c], c);
      }
    }
    for (auto const& wet : scene.wet) {
      if (plane.spot(design.grid.place(wet.cell))) note_water(found, wet, plane);
    }
  }
  return found;
}

void add_waters(Occurring const& found, std::vector<SignLine>& lines) {
  if (!found.strengths.empty()) {
    auto const weakest = *found.strengths.begin(), strongest = *found.strengths.rbegin();
    SignLine line{{fmt::format("w-{}", strongest)}, {}};
    line.words = weakest == strongest
                     ? fmt::format("a flow of strength {}", weakest)
                     : fmt::format("a flow of strength {} to {}", weakest, strongest);
    lines.push_back(line);
  }
  constexpr std::array<std::pair<std::string_view, std::string_view>, 4> kinds{
      {{"w-placed", "a placed source"},
       {"w-formed", "a formed source"},
       {"w-falling", "falling water, seen from above"},
       {"w-pouring", "falling water"}}};
  for (auto const& [id, words] : kinds) {
    if (found.waters.contains(std::string(id)))
      lines.push_back({{std::string(id)}, std::string(words)});
  }
  if (found.has_flow) lines.push_back({{"w-1", "f-e"}, "the current, here to the east"});
  if (found.has_near) lines.push_back({{"w-1", "f-near"}, "the current, towards you"});
  if (found.has_far) lines.push_back({{"w-1", "f-far"}, "the current, away from you"});
  if (found.has_still) lines.push_back({{"w-1", "f-still"}, "still water"});
}

}  // namespace

std::vector<SignLine> sign_lines(Sheet const& sheet) {
  auto const found = occurring(sheet);
  auto const& [design, map, source, is_alone] = sheet.scene.subject;
  std::vector<SignLine> lines;
  for (auto m : found.materials) {
    auto const symbol = material_symbol(m);
    if (symbol.empty() && m != model::material::open) continue;
    auto line = SignLine{{"dry"}, map.materials[m].name};
    if (!symbol.empty()) line.symbols.push_back(symbol);
    lines.push_back(line);
  }
  add_waters(found, lines);
  for (auto const& [id, cell] : found.switched) {
    auto const now = sheet.scene.arrangement->material_of(cell);
    bool const is_on = now == design.fills[id].powered;
    SignLine line{{"dry"}, {}};
    if (auto const symbol = material_symbol(now); !symbol.empty()) line.symbols.push_back(symbol);
    line.symbols.push_back(is_on ? "k-on" : "k-off");
    line.words = fill_words(sheet.scene.subject, id);
    lines.push_back(line);
  }
  lines.push_back({{"dry", "inlet"}, "an inlet"});
  lines.push_back({{"dry", "outlet"}, "an outlet"});
  return lines;
}

}  // namespace leat::render
