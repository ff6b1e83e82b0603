#include "engine/findings/families.hpp"

namespace leat::findings {

// Assignments of the memory that come with no combination of the inputs.
std::vector<Finding> unreached_states(Explored const& explored) {
  auto const& combinations = explored.combinations;
  auto const& signals = explored.machine.circuit().signals;
  auto finding = finding_of(FindingKind::unreached_state);
  logic::Row memory_mask = 0;
  for (auto variable : combinations.variables) {
    bool const is_memory = signals[variable].is_memory();
    memory_mask = memory_mask << 1 | (is_memory ? 1u : 0u);
    if (is_memory) finding.signals.push_back(variable);
  }
  std::vector<bool> is_reached(combinations.situation_of_row.size());
  for (logic::Row row = 0; row < is_reached.size(); ++row) {
    if (combinations.reachable.contains(row)) is_reached[row & memory_mask] = true;
  }
  finding.rows = logic::RowSet(explored.variable_count());
  for (logic::Row row = 0; row < is_reached.size(); ++row) {
    if (is_reached[row & memory_mask]) continue;
    finding.rows.insert(row);
    if ((row & ~memory_mask) == 0) ++finding.measured;
  }
  if (finding.rows.is_empty()) return {};
  return {finding};
}

}  // namespace leat::findings
