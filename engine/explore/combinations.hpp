#pragma once
#include <functional>
#include <vector>

#include "engine/explore/setting.hpp"
#include "engine/logic/truth.hpp"
#include "engine/model/design.hpp"

namespace leat::explore {

using logic::Row;
using logic::RowSet;

// All combinations of the inputs, gathered by what they make of the cells: rows with the same
// setting have the same water and the same routes, so each setting is solved once. Settings are
// numbered in the order of their first row.
struct Combinations {
  std::vector<model::SignalId> inputs;        // what a row's bits stand for, first input highest
  std::vector<std::uint32_t> setting_of_row;  // 2^inputs entries
  std::vector<Setting> settings;

  std::size_t row_count() const { return setting_of_row.size(); }
  // The rows of the settings for which `chosen` holds.
  RowSet rows_where(std::function<bool(std::uint32_t setting)> const& chosen) const;
};

// Cost: one look at each row for each switched fill.
Combinations combine(model::Design const&, logic::Truth const&);

}  // namespace leat::explore
