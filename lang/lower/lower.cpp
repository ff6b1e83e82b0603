#include "lang/lower/lower.hpp"

#include "engine/logic/truth.hpp"
#include "lang/check/meaning.hpp"
#include "lang/lower/cells.hpp"
#include "lang/lower/circuit_lowering.hpp"
#include "lang/lower/including.hpp"
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
                                   wanted.dealt, wanted.table, wanted.table_row});
    lowered.map.expectations.push_back({wanted.title, wanted.clause, wanted.span});
  }
  for (auto const& accepted : meaning.accepted) {
    if (accepted.file != 0) continue;
    if (accepted.junction && *accepted.junction != junction) continue;
    design.acceptances.push_back(
        {accepted.kind, cell_of(design.grid, accepted.place), circuit.lower(accepted.condition)});
    lowered.map.acceptances.push_back({accepted.reason, accepted.span});
  }
}

// The controls of the marks that this junction draws; of those that others draw, and what works
// give their places.
struct Controls {
  std::vector<model::ExpressionId> own, elsewhere;
};

void add_given(check::Plant const& plant, CircuitLowering& circuit, Controls& controls) {
  for (auto const& works : plant.unfolded) {
    for (auto const& item : works->items) {
      auto const* place = std::get_if<syntax::PlaceDeclaration>(&item);
      if (place == nullptr) continue;
      for (auto const& setting : place->signals)
        controls.elsewhere.push_back(circuit.lower(setting.value));
    }
  }
}

// Of a junction, or of a works: these come after all junctions.
Controls controls_of(check::Meaning const& meaning, std::size_t number, CircuitLowering& circuit) {
  auto const& drawings = meaning.drawings;
  Controls controls;
  for (std::size_t works = 0; works < meaning.plants.size(); ++works)
    if (drawings.size() + works != number) add_given(meaning.plants[works], circuit, controls);
  for (std::size_t mark = 0; mark < meaning.fills.size(); ++mark) {
    auto const& control = meaning.fills[mark].control;
    if (!control) continue;
    bool is_own = false, is_drawn_elsewhere = false;
    for (std::size_t drawing = 0; drawing < drawings.size(); ++drawing)
      (drawing == number ? is_own : is_drawn_elsewhere) |= drawings[drawing].marks[mark].count > 0;
    auto const lowered = circuit.lower(*control);
    if (is_own) controls.own.push_back(lowered);
    if (is_drawn_elsewhere) controls.elsewhere.push_back(lowered);
  }
  return controls;
}

// Of the signals that only an included file declares, those that nothing drawn here follows: they
// are there for whoever includes that file. So are those that places have of their own: they are
// there for other places.
std::vector<bool> are_shared(check::Names const& names, source::SourceText const& source,
                             model::Circuit const& circuit,
                             std::vector<model::ExpressionId> const& drawn) {
  auto is_shared = logic::used_signals(circuit, drawn);
  is_shared.flip();
  for (model::SignalId s = 0; s < is_shared.size(); ++s) {
    bool const is_declared = s < names.signals.all.size();
    if (is_declared && source.file_of(names.signals.all[s]->span.begin) == 0) is_shared[s] = false;
  }
  return is_shared;
}

std::vector<model::SignalId> used_elsewhere(check::Meaning const& meaning,
                                            source::SourceText const& source,
                                            model::Circuit const& circuit,
                                            Controls const& controls) {
  auto const is_used = logic::used_signals(circuit, controls.elsewhere);
  auto const is_shared = are_shared(meaning.names, source, circuit, controls.own);
  std::vector<model::SignalId> used;
  for (model::SignalId s = 0; s < is_used.size(); ++s)
    if (is_used[s] || is_shared[s]) used.push_back(s);
  return used;
}

Junction lower_junction(check::Meaning const& meaning, source::SourceText const& source,
                        std::size_t junction) {
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
  auto const controls = controls_of(meaning, junction, circuit);
  design.circuit = circuit.circuit();
  design.used_elsewhere = used_elsewhere(meaning, source, design.circuit, controls);
  return lowered;
}

// The same for a works; its expectations come after those of the junctions.
Junction lower_works(check::Meaning const& meaning, source::SourceText const& source,
                     std::size_t works) {
  Junction lowered;
  auto& design = lowered.design;
  auto const& declaration = *meaning.plants[works].declaration;
  design.outside_is_open = declaration.outside && declaration.outside->text == "open";
  design.materials = meaning.materials;
  design.profiles = meaning.profiles;
  design.practice = meaning.practice;
  CircuitLowering circuit(meaning, &meaning.scopes[works]);
  lower_plant(meaning, works, circuit, design, lowered.map);
  auto const number = meaning.drawings.size() + works;
  lower_judging(meaning, number, circuit, lowered);
  auto controls = controls_of(meaning, number, circuit);
  for (auto const& fill : design.fills)
    if (fill.control) controls.own.push_back(*fill.control);
  design.circuit = circuit.circuit();
  design.used_elsewhere = used_elsewhere(meaning, source, design.circuit, controls);
  lower_works_words(meaning, works, circuit, lowered.map);
  return lowered;
}

}  // namespace

std::vector<Junction> read_designs(source::SourceText& source, FileAccess& files,
                                   diagnostics::Sink& sink) {
  auto const meaning = check::understand(read_with_included(source, files, sink), source, sink);
  std::vector<Junction> lowered;
  if (!sink.empty()) return lowered;
  for (auto const junction : meaning.names.judged().junctions)
    lowered.push_back(lower_junction(meaning, source, junction));
  for (auto const works : meaning.names.judged().works)
    lowered.push_back(lower_works(meaning, source, works));
  return lowered;
}

std::vector<Junction> read_designs(source::SourceText const& source, diagnostics::Sink& sink) {
  auto alone = source;
  NoFiles nowhere;
  return read_designs(alone, nowhere, sink);
}

}  // namespace leat::lower
