#include "engine/model/practice.hpp"

#include "engine/contract.hpp"

namespace leat::model {

namespace {
constexpr bool is_in_rule_order() {
  for (std::size_t i = 0; i < rule_table.size(); ++i) {
    if (rule_table[i].rule != static_cast<Rule>(i)) return false;
  }
  return true;
}
static_assert(is_in_rule_order(), "rule_table is indexed by Rule");
}  // namespace

void Practice::set(Rule rule, int value) {
  auto const& row = rule_table[static_cast<std::size_t>(rule)];
  require(value >= row.least && value <= row.most, "Practice::set: value out of bounds");
  values_[static_cast<std::size_t>(rule)] = value;
}

}  // namespace leat::model
