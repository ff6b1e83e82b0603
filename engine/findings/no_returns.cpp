#include "engine/findings/families.hpp"

namespace leat::findings {

// The memory that differs from as built in every state without a way back; where there is none
// such, all that differs in some.
std::vector<Finding> no_returns(Explored const& explored) {
  auto const lost = explore::without_return(explored.states);
  if (lost.empty()) return {};
  auto const& codes = explored.states.codes;
  auto in_all = ~logic::Code{0}, in_some = logic::Code{0};
  auto finding = finding_of(FindingKind::no_return);
  finding.rows = logic::RowSet(explored.variable_count());
  for (auto state : lost) {
    in_all &= codes[state] ^ codes[0];
    in_some |= codes[state] ^ codes[0];
    finding.rows.insert(explored.combinations.row_of_state[state]);
  }
  auto const& variables = explored.machine.variables();
  auto const memory = ~((logic::Code{1} << explored.machine.input_count()) - 1);
  auto const told = (in_all & memory) != 0 ? in_all : in_some;
  for (auto v = explored.machine.input_count(); v < variables.size(); ++v) {
    if ((told >> v & 1u) != 0) finding.signals.push_back(variables[v]);
  }
  return {finding};
}

}  // namespace leat::findings
