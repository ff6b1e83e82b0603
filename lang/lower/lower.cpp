#include "lang/lower/lower.hpp"

#include "lang/check/meaning.hpp"
#include "lang/grammar/parse.hpp"
#include "lang/lower/cells.hpp"
#include "lang/lower/circuit_lowering.hpp"
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
  design.circuit = circuit.circuit();
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
  return lowered;
}

}  // namespace leat::lower
