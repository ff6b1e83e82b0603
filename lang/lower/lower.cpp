#include "lang/lower/lower.hpp"

#include "engine/logic/truth.hpp"
#include "lang/check/meaning.hpp"
#include "lang/grammar/parse.hpp"
#include "lang/lower/cells.hpp"
#include "lang/lower/circuit_lowering.hpp"
#include "lang/lower/plant.hpp"
#include "lang/lower/words.hpp"

namespace leat::lower {

namespace {

void lower_fills(check::Meaning const& meaning, CircuitLowering& circuit, model::Design& design) {
  for (auto const& fill : meaning.fills) {
    model::Fill lowered{fill.powered, fill.unpowered, std::nullopt};
    if (fill.control) lowered.control = circuit.lower(*fill.control);
    design.fills.push_back(lowered);
  }
  auto const outside = design.outside_is_open ? model::material::open : model::material::rock;
  design.fills.push_back({outside, outside, std::nullopt});
}

std::optional<model::Cell> cell_of(model::Grid const& grid,
                                   std::optional<model::Place> const& place) {
  if (!place) return std::nullopt;
  return grid.cell(*place);
}

void lower_judging(check::Meaning const& meaning, std::size_t junction, CircuitLowering& circuit,
                   Junction& lowered) {
  auto& design = lowered.design;
  for (auto const& wanted : meaning.wanted) {
    if (wanted.junction != junction) continue;
    design.expectations.push_back({wanted.claim, wanted.inlet, wanted.profile, wanted.outlet,
                                   circuit.lower(wanted.condition), wanted.ceiling, wanted.kind,
                                   cell_of(design.grid, wanted.place), wanted.events, wanted.ticks,
                                   wanted.dealt});
    lowered.map.expectations.push_back({wanted.title, wanted.clause, wanted.span});
  }
  for (auto const& accepted : meaning.accepted) {
    if (accepted.junction && *accepted.junction != junction) continue;
    design.acceptances.push_back(
        {accepted.kind, cell_of(design.grid, accepted.place), circuit.lower(accepted.condition)});
    lowered.map.acceptances.push_back({accepted.reason, accepted.span});
  }
}

// The controls of the marks that other junctions draw, and what works give their places.
std::vector<model::ExpressionId> controls_elsewhere(check::Meaning const& meaning,
                                                    std::size_t junction,
                                                    CircuitLowering& circuit) {
  std::vector<model::ExpressionId> roots;
  for (auto const& plant : meaning.plants) {
    for (auto const& works : plant.unfolded) {
      for (auto const& item : works->items) {
        auto const* place = std::get_if<syntax::PlaceDeclaration>(&item);
        if (place == nullptr) continue;
        for (auto const& setting : place->signals) roots.push_back(circuit.lower(setting.value));
      }
    }
  }
  for (std::size_t mark = 0; mark < meaning.fills.size(); ++mark) {
    auto const& control = meaning.fills[mark].control;
    bool is_drawn = false;
    for (std::size_t other = 0; other < meaning.drawings.size(); ++other)
      is_drawn |= other != junction && meaning.drawings[other].marks[mark].count > 0;
    if (control && is_drawn) roots.push_back(circuit.lower(*control));
  }
  return roots;
}

Junction lower_junction(check::Meaning const& meaning, std::size_t junction) {
  Junction lowered;
  auto& design = lowered.design;
  auto const& outside = meaning.names.junctions.all[junction]->outside;
  design.outside_is_open = outside && outside->text == "open";
  design.materials = meaning.materials;
  design.profiles = meaning.profiles;
  design.practice = meaning.practice;
  CircuitLowering circuit(meaning);
  lower_fills(meaning, circuit, design);
  lower_cells(meaning, junction, design, lowered.map);
  lower_words(meaning, junction, lowered.map);
  lower_judging(meaning, junction, circuit, lowered);
  auto const roots = controls_elsewhere(meaning, junction, circuit);
  design.circuit = circuit.circuit();
  auto const is_used = logic::used_signals(design.circuit, roots);
  for (model::SignalId s = 0; s < is_used.size(); ++s) {
    if (is_used[s]) design.used_elsewhere.push_back(s);
  }
  return lowered;
}

// The same for a works; its expectations come after those of the junctions.
Junction lower_works(check::Meaning const& meaning, std::size_t works) {
  Junction lowered;
  auto& design = lowered.design;
  auto const& declaration = *meaning.plants[works].declaration;
  design.outside_is_open = declaration.outside && declaration.outside->text == "open";
  design.materials = meaning.materials;
  design.profiles = meaning.profiles;
  design.practice = meaning.practice;
  CircuitLowering circuit(meaning, &meaning.scopes[works]);
  lower_plant(meaning, works, circuit, design, lowered.map);
  lower_judging(meaning, meaning.drawings.size() + works, circuit, lowered);
  design.circuit = circuit.circuit();
  lower_works_words(meaning, works, circuit, lowered.map);
  return lowered;
}

}  // namespace

std::vector<Junction> read_designs(source::SourceText const& source, diagnostics::Sink& sink) {
  auto const document = grammar::parse(source, sink);
  auto const meaning = check::understand(document, source, sink);
  std::vector<Junction> lowered;
  if (!sink.empty()) return lowered;
  for (std::size_t junction = 0; junction < meaning.names.junctions.all.size(); ++junction)
    lowered.push_back(lower_junction(meaning, junction));
  for (std::size_t works = 0; works < meaning.plants.size(); ++works)
    lowered.push_back(lower_works(meaning, works));
  return lowered;
}

}  // namespace leat::lower
