#include "tests/support/draw.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>

namespace leat::drawn {

namespace {

using model::Fill;
using model::Operator;
namespace material = model::material;

struct Legend {
  std::map<char, model::FillId> fills;
  model::Design& design;

  void add(char glyph, Fill fill) {
    fills[glyph] = static_cast<model::FillId>(design.fills.size());
    design.fills.push_back(fill);
  }
  void add(char glyph, model::MaterialId made_of) { add(glyph, {made_of, made_of, {}}); }
};

Legend legend_for(model::Design& design) {
  auto& circuit = design.circuit;
  circuit.signals = {{model::SignalKind::lever, false, 0}, {model::SignalKind::lever, false, 0}};
  auto const first = circuit.add({Operator::signal, 0, 0});
  auto const second = circuit.add({Operator::signal, 1, 0});
  auto const grate = static_cast<model::MaterialId>(design.materials.size());
  design.materials.push_back({.water_enters = true, .carries = true, .shows_slope = true});
  Legend legend{{}, design};
  legend.add('X', material::rock);
  for (char open : {'.', 'i', 'j', 'A', 'B', 'C'}) legend.add(open, material::open);
  legend.add('w', material::water);
  legend.add('s', material::sign);
  legend.add('p', material::plate);
  legend.add('g', grate);
  legend.add('a', {material::rock, material::open, first});
  legend.add('b', {material::open, material::rock, first});
  legend.add('c', {material::rock, material::open, second});
  legend.add('d', {material::open, material::rock, second});
  legend.add('v', {material::water, material::open, first});
  return legend;
}

model::Port& port(std::vector<model::Port>& ports, std::size_t index) {
  if (ports.size() <= index) ports.resize(index + 1);
  return ports[index];
}

void place_glyph(Legend const& legend, char glyph, model::Cell c) {
  auto& design = legend.design;
  auto const fill = legend.fills.find(glyph);
  if (fill == legend.fills.end())
    throw std::invalid_argument(std::string("no such glyph: ") + glyph);
  design.fill_of[c] = fill->second;
  if (glyph == 'i' || glyph == 'j') port(design.inlets, glyph == 'j').cells.push_back(c);
  if (glyph >= 'A' && glyph <= 'C') {
    port(design.outlets, static_cast<std::size_t>(glyph - 'A')).cells.push_back(c);
  }
}

}  // namespace

model::Design draw(std::vector<Level> const& levels) {
  model::Design design;
  design.grid = model::Grid(static_cast<int>(levels[0][0].size()),
                            static_cast<int>(levels[0].size()), static_cast<int>(levels.size()));
  auto const legend = legend_for(design);
  design.fill_of.assign(design.grid.size(), legend.fills.at('X'));
  design.profiles.emplace_back();
  for (int z = 0; z < design.grid.height(); ++z) {
    auto const& level = levels[static_cast<std::size_t>(z)];
    for (int y = 0; y < design.grid.depth(); ++y) {
      auto const& row = level.at(static_cast<std::size_t>(y));
      if (static_cast<int>(row.size()) != design.grid.width())
        throw std::invalid_argument("ragged: " + row);
      for (int x = 0; x < design.grid.width(); ++x) {
        place_glyph(legend, row[static_cast<std::size_t>(x)], design.grid.cell({x, y, z}));
      }
    }
  }
  return design;
}

Solved settled(model::Design const& design, std::vector<bool> levers) {
  return solve(design, levers);
}

std::string water_row(Solved const& solved, int y, int z) {
  auto const& grid = solved.arrangement.grid();
  std::string row;
  for (int x = 0; x < grid.width(); ++x) {
    auto const c = grid.cell({x, y, z});
    auto const state = solved.field[c];
    row += !solved.arrangement[c].water_enters ? 'X'
           : state == water::source            ? 'S'
           : state == water::falling           ? 'F'
           : state == water::dry               ? '.'
                                               : static_cast<char>('0' + state);
  }
  return row;
}

std::vector<Level> water_levels(Solved const& solved) {
  std::vector<Level> levels;
  for (int z = 0; z < solved.arrangement.grid().height(); ++z) {
    levels.emplace_back();
    for (int y = 0; y < solved.arrangement.grid().depth(); ++y) {
      levels.back().push_back(water_row(solved, y, z));
    }
  }
  return levels;
}

std::vector<Level> water_of(std::vector<Level> const& drawing, std::vector<bool> levers) {
  auto const design = draw(drawing);
  return water_levels(settled(design, std::move(levers)));
}

tables::Route const& route(Judgement const& judgement, bool lever_0, bool lever_1,
                           model::InletId inlet, model::ProfileId profile) {
  auto const row = (lever_0 ? 2u : 0u) + (lever_1 ? 1u : 0u);
  return judgement.routes.at(judgement.combinations.situation_of_row[row], inlet, profile);
}

bool has(Judgement const& judgement, model::FindingKind kind) {
  return std::any_of(judgement.findings.begin(), judgement.findings.end(),
                     [&](findings::Finding const& f) { return f.kind == kind; });
}

findings::Finding const& only(Judgement const& judgement, model::FindingKind kind) {
  findings::Finding const* found = nullptr;
  for (auto const& finding : judgement.findings) {
    if (finding.kind != kind) continue;
    if (found) throw std::logic_error("more than one finding of the kind");
    found = &finding;
  }
  if (!found) throw std::logic_error("no finding of the kind");
  return *found;
}

std::vector<std::string> places(model::Design const& design, findings::Finding const& finding) {
  std::vector<std::string> texts;
  for (auto c : finding.cells) {
    auto const at = design.grid.place(c);
    texts.push_back(std::to_string(at.x) + " " + std::to_string(at.y) + " " + std::to_string(at.z));
  }
  return texts;
}

void put(model::Design& design, model::Place at, model::Fill fill) {
  design.fill_of[design.grid.cell(at)] = static_cast<model::FillId>(design.fills.size());
  design.fills.push_back(fill);
}

model::ExpressionId add(model::Design& design, model::Signal signal) {
  auto& circuit = design.circuit;
  circuit.signals.push_back(signal);
  auto const id = static_cast<model::SignalId>(circuit.signals.size() - 1);
  if (signal.kind == model::SignalKind::wire) circuit.wire_order.push_back(id);
  return circuit.add({Operator::signal, id, 0});
}

model::SignalId add_restless(model::Design& design, model::ExpressionId while_on) {
  auto& circuit = design.circuit;
  auto const id = static_cast<model::SignalId>(circuit.signals.size());
  auto const itself = circuit.add({Operator::signal, id, 0});
  auto const other = circuit.add({Operator::negation, itself, 0});
  auto const set = circuit.add({Operator::conjunction, while_on, other});
  auto const reset = circuit.add({Operator::conjunction, while_on, itself});
  add(design, {model::SignalKind::latch, false, set, reset, 0});
  return id;
}

verdicts::JudgedExpectation judged(model::Design design, model::Expectation expectation,
                                   Budget const& budget) {
  design.expectations = {std::move(expectation)};
  return judge(design, budget).expectations.at(0);
}

verdicts::Truthfulness verdict(model::Design design, model::Expectation expectation,
                               Budget const& budget) {
  return judged(std::move(design), std::move(expectation), budget).verdict;
}

model::Design remembering() { return draw({{"XXXXXXX"}, {"A..w.vX"}, {"...i..."}, {"......."}}); }

model::Design shaft(int depth, int width, int water) {
  auto const row = [&](std::string start, char cell) {
    return Level{start + std::string(static_cast<std::size_t>(width), cell)};
  };
  std::vector<Level> levels{row("XX", 'X')};
  for (int z = 1; z <= depth; ++z) levels.push_back(row("XX", z <= water ? 'w' : '.'));
  levels.push_back(row("wi", '.'));
  levels.back()[0][2] = 's';
  levels.push_back(row("..", '.'));
  return draw(levels);
}

}  // namespace leat::drawn
