#include <map>

#include "engine/findings/families.hpp"
#include "engine/findings/table_gap.hpp"
#include "engine/tables/route_groups.hpp"

namespace leat::findings {

namespace {

using logic::RowSet;
using model::FindingKind;

// A row of an expected table: the combinations it applies to, and the first expectation made of it.
struct TableRow {
  RowSet applies;
  std::size_t expectation = 0;
};

struct Table {
  model::InletId inlet = 0;
  std::optional<model::ProfileId> profile;
  std::vector<TableRow> rows;
};

std::map<std::uint32_t, Table> tables_of(Explored const& explored) {
  std::map<std::uint32_t, Table> tables;
  auto const& reachable = explored.combinations.reachable;
  auto const& expectations = explored.design.expectations;
  for (std::size_t i = 0; i < expectations.size(); ++i) {
    auto const& expectation = expectations[i];
    if (!expectation.table || !expectation.inlet) continue;
    auto& table = tables[*expectation.table];
    table.inlet = *expectation.inlet;
    table.profile = expectation.profile;
    // A row that names several outlets is several expectations, one after the other.
    bool const is_known = i > 0 && expectations[i - 1].table == expectation.table &&
                          expectations[i - 1].table_row == expectation.table_row;
    if (is_known) continue;
    auto const applies =
        expectation.condition ? explored.truth.of(*expectation.condition) & reachable : reachable;
    table.rows.push_back({applies, i});
  }
  return tables;
}

Finding finding_of_table(FindingKind kind, Table const& table, std::size_t expectation,
                         RowSet rows) {
  auto finding = finding_of(kind);
  finding.inlets = {table.inlet};
  if (table.profile) finding.profiles = {*table.profile};
  finding.expectation = expectation;
  finding.rows = std::move(rows);
  return finding;
}

// The rows of another body that goes the same way.
RowSet rows_alike(tables::Destination const& one, std::vector<tables::Destination> const& others) {
  RowSet rows(one.rows.inputs());
  for (auto const& other : others) {
    if (other.verdict == one.verdict && other.outlets == one.outlets) rows |= other.rows;
  }
  return rows;
}

// What is proposed for a gap has to hold: for every body that the table speaks of, and surely. So
// each way that all of them go is a finding, and where they part, one more that proposes nothing.
void add_gaps(Explored const& explored, tables::RouteTable const& routes, Table const& table,
              RowSet const& covered, std::vector<Finding>& found) {
  auto const gap = explored.combinations.reachable & ~covered;
  if (gap.is_empty()) return;
  std::vector<std::vector<tables::Destination>> ways;  // by body
  for (model::ProfileId profile = 0; profile < explored.design.profiles.size(); ++profile) {
    if (table.profile.value_or(profile) == profile)
      ways.push_back(tables::destinations(explored.combinations, routes, table.inlet, profile));
  }
  auto const add = [&](RowSet rows, std::vector<model::OutletId> outlets, Gap what) {
    if (rows.is_empty()) return;
    auto finding =
        finding_of_table(FindingKind::table_gap, table, table.rows.back().expectation, rows);
    finding.outlets = std::move(outlets);
    finding.signals = explored.combinations.variables;
    finding.measured = static_cast<int>(what);
    found.push_back(std::move(finding));
  };
  auto parting = gap;
  for (auto const& d : ways.front()) {
    auto rows = d.rows & gap;
    for (auto const& others : ways) rows &= rows_alike(d, others);
    parting &= ~rows;
    add(rows, d.outlets, d.verdict == body::Verdict::doubtful ? Gap::doubtful : Gap::same_way);
  }
  add(parting, {}, Gap::parting);
}

}  // namespace

std::vector<Finding> table_rows(Explored const& explored, tables::RouteTable const& by_situation) {
  std::vector<Finding> found;
  for (auto const& [number, table] : tables_of(explored)) {
    RowSet covered(explored.variable_count());
    for (auto const& row : table.rows) {
      auto const shared = row.applies & covered;
      bool const is_told = !row.applies.is_empty() && shared == row.applies;
      if (is_told)
        found.push_back(
            finding_of_table(FindingKind::shadowed_row, table, row.expectation, row.applies));
      else if (!shared.is_empty())
        found.push_back(
            finding_of_table(FindingKind::overlapping_rows, table, row.expectation, shared));
      covered |= row.applies;
    }
    add_gaps(explored, by_situation, table, covered, found);
  }
  return found;
}

}  // namespace leat::findings
