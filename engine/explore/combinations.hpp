#pragma once
#include <functional>
#include <limits>
#include <vector>

#include "engine/explore/histories.hpp"
#include "engine/logic/row_set.hpp"

namespace leat::explore {

using logic::Row;
using logic::RowSet;

// Every combination of inputs and memory that the machine can be in, a row each, gathered by the
// waters it can come with: rows with the same waters have the same routes. Such a set of waters is
// a situation; situations are numbered in the order of their first row.
struct Combinations {
  static constexpr std::uint32_t never = std::numeric_limits<std::uint32_t>::max();

  std::vector<model::SignalId> variables;  // what a row's bits stand for, the first one highest
  RowSet reachable{0};
  std::vector<Row> row_of_state;                // by States' number
  std::vector<std::uint32_t> situation_of_row;  // 2^variables entries; `never` where not reachable
  std::vector<std::vector<std::uint32_t>> situations;  // indices into Histories::waters, ascending

  Row row_of(std::vector<bool> const& signals) const;
  // The rows of the situations for which `chosen` holds.
  RowSet rows_where(std::function<bool(std::uint32_t situation)> const& chosen) const;
  // The rows that can come with one of these waters, which are ascending.
  RowSet rows_with(std::vector<std::uint32_t> const& waters) const;
};

// `variables` are enough to tell the settled states apart (logic::settled_circuit). Cost: one look
// at each node of the histories and at each row.
Combinations combine(logic::Machine const&, States const&, Histories const&,
                     std::vector<model::SignalId> variables);

}  // namespace leat::explore
