#include <map>

#include "engine/findings/families.hpp"

namespace leat::findings {

std::vector<Finding> oscillations(Explored const& explored) {
  auto const& states = explored.states;
  if (states.unquiet_as_built) {
    auto finding = finding_of(FindingKind::oscillation);
    finding.signals = states.unquiet_as_built->loop;
    finding.rows = explored.combinations.reachable;
    return {finding};
  }
  std::map<std::pair<std::size_t, std::vector<model::SignalId>>, logic::RowSet> rows_of;
  for (auto const& unquiet : states.unquiet) {
    auto const row = explored.combinations.row_of_state[unquiet.state];
    auto& rows =
        rows_of.try_emplace({unquiet.event, unquiet.oscillation.loop}, explored.variable_count())
            .first->second;
    rows.insert(row);
  }
  std::vector<Finding> findings;
  for (auto const& [cause, rows] : rows_of) {
    auto finding = finding_of(FindingKind::oscillation);
    finding.event = explored.machine.variables()[cause.first];
    finding.signals = cause.second;
    finding.rows = rows;
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace leat::findings
