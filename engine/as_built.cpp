#include "engine/as_built.hpp"

#include <algorithm>

#include "engine/judge.hpp"
#include "engine/logic/settled_circuit.hpp"
#include "engine/logic/symbolic_machine.hpp"

namespace leat {

namespace {

void settle_in_machine(model::Circuit const& circuit, std::vector<bool>& values) {
  logic::Machine const machine(circuit);
  auto const settled = machine.as_built();
  if (!settled.is_quiet) return;
  auto const& variables = machine.variables();
  for (std::size_t v = 0; v < variables.size(); ++v)
    values[variables[v]] = (settled.code >> v & 1u) != 0;
}

// All values are constants, so the diagram needs no node of its own.
void settle_in_diagrams(model::Circuit const& circuit, std::vector<bool>& values) {
  constexpr std::size_t most_nodes = std::size_t{1} << 16, most_rounds = 4096;
  logic::Diagram diagram(most_nodes);
  logic::SymbolicMachine machine(circuit, diagram);
  auto const settled = machine.as_built(most_rounds);
  auto const restless = diagram.either(settled.oscillating, settled.unknown);
  if (restless != logic::Diagram::never) return;
  auto const& variables = machine.variables();
  for (std::size_t v = 0; v < variables.size(); ++v)
    values[variables[v]] = settled.after[v] == logic::Diagram::always;
}

}  // namespace

std::vector<bool> as_built(model::Design const& design) {
  std::vector<bool> values;
  for (auto const& signal : design.circuit.signals) values.push_back(signal.starts_on);
  auto const circuit = circuit_to_run(design);
  auto const& signals = circuit.signals;
  if (std::none_of(signals.begin(), signals.end(), [](auto const& s) { return s.is_memory(); }))
    return values;
  bool const fits = logic::variables_of(circuit).size() <= logic::Machine::most_variables;
  fits ? settle_in_machine(circuit, values) : settle_in_diagrams(circuit, values);
  return values;
}

}  // namespace leat
