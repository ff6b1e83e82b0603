#include "engine/findings/families.hpp"

namespace leat::findings {

// The signals that differ from as built in every state without a way back; where there are none
// such, those that differ in some. Memory is told before inputs, which can be put back by hand.
std::vector<Finding> no_returns(Explored const& explored) {
  auto const lost = explore::without_return(explored.states);
  if (lost.empty()) return {};
  auto const& combinations = explored.combinations;
  auto in_all = ~logic::Row{0}, in_some = logic::Row{0};
  auto finding = finding_of(FindingKind::no_return);
  finding.rows = logic::RowSet(explored.variable_count());
  for (auto state : lost) {
    auto const differs = combinations.row_of_state[state] ^ combinations.row_of_state[0];
    in_all &= differs;
    in_some |= differs;
    finding.rows.insert(combinations.row_of_state[state]);
  }
  logic::Row memory = 0;
  for (auto variable : combinations.variables)
    memory = memory << 1 | (explored.machine.circuit().signals[variable].is_memory() ? 1u : 0u);
  auto const told = (in_all & memory) != 0    ? in_all & memory
                    : (in_some & memory) != 0 ? in_some & memory
                                              : in_some;
  auto const count = combinations.variables.size();
  for (std::size_t v = 0; v < count; ++v) {
    if ((told >> (count - 1 - v) & 1u) != 0) finding.signals.push_back(combinations.variables[v]);
  }
  return {finding};
}

}  // namespace leat::findings
