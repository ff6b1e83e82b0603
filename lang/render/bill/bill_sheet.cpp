#include "lang/render/bill/bill_sheet.hpp"

#include <fmt/format.h>

#include <array>
#include <map>
#include <numeric>

#include "lang/render/fill_words.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

constexpr std::array<std::string_view, 5> kinds{"block", "source", "switched", "open", "part"};

BillKind kind_of(model::Design const& design, model::FillId id) {
  auto const& fill = design.fills[id];
  if (fill.is_switched()) return BillKind::switched;
  if (fill.powered == model::material::open) return BillKind::kept_open;
  return design.materials[fill.powered].is_source ? BillKind::source : BillKind::block;
}

// Marks that are made alike are one line.
void add_fills(BillSheet& sheet) {
  auto const& design = sheet.subject.design;
  std::map<std::pair<BillKind, std::string>, BillLine> lines;
  for (model::FillId f = 0; f < design.fills.size(); ++f) {
    auto const kind = kind_of(design, f);
    auto const what = fill_words(sheet.subject, f);
    auto& line = lines[{kind, what}];
    line.kind = kind;
    line.what = what;
    line.levels.resize(sheet.needs.needed.size(), 0);
    for (std::size_t z = 0; z < line.levels.size(); ++z) {
      line.levels[z] += sheet.needs.needed[z][f];
      line.count += sheet.needs.needed[z][f];
      line.spare += sheet.needs.drawn[z][f] - sheet.needs.needed[z][f];
    }
  }
  for (auto& [key, line] : lines) {
    if (line.count + line.spare > 0) sheet.lines.push_back(std::move(line));
  }
}

// What presses a plate is drawn, and counted as a block.
void add_parts(BillSheet& sheet) {
  std::map<model::SignalKind, BillLine> parts;
  for (auto s : building::parts_of(sheet.subject.design)) {
    auto const kind = sheet.subject.design.circuit.signals[s].kind;
    if (kind == model::SignalKind::plate) continue;
    auto& line = parts[kind];
    line.kind = BillKind::part;
    line.what = word_of(kind);
    ++line.count;
    line.names.push_back(sheet.subject.map.signals[s].name);
  }
  for (auto& [kind, line] : parts) sheet.lines.push_back(std::move(line));
}

void count_placed(BillSheet& sheet) {
  std::map<std::string, std::size_t> counts;
  for (auto const& placed : sheet.subject.map.placed) ++counts[placed.design.name];
  sheet.placed.assign(counts.begin(), counts.end());
}

}  // namespace

std::size_t BillSheet::around() const {
  return std::accumulate(needs.around.begin(), needs.around.end(), std::size_t{0});
}

BillSheet bill_sheet(Subject const& subject, model::Arrangement const& as_built) {
  BillSheet sheet{
      subject, building::needs_of(subject.design), building::pools_of(as_built), {}, {}};
  add_fills(sheet);
  add_parts(sheet);
  count_placed(sheet);
  return sheet;
}

std::string_view word_of(BillKind kind) { return kinds[static_cast<std::size_t>(kind)]; }

std::vector<BuildingStep> building_steps(BillSheet const& sheet) {
  using Kind = BuildingStep::Kind;
  std::vector<BuildingStep> steps;
  auto const& around = sheet.needs.around;
  if (around.front() > 0) steps.push_back({Kind::floor, 0, 0});
  std::size_t pool = 0;
  for (int z = 0; z < sheet.subject.design.grid.height(); ++z) {
    steps.push_back({Kind::level, z, 0});
    for (; pool < sheet.pools.pools.size() && sheet.pools.pools[pool].highest == z; ++pool)
      steps.push_back({Kind::water, z, pool});
  }
  if (around.back() > 0) steps.push_back({Kind::roof, 0, 0});
  return steps;
}

}  // namespace leat::render
