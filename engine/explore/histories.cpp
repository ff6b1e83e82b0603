#include "engine/explore/histories.hpp"

#include <algorithm>
#include <map>
#include <string_view>
#include <unordered_map>

#include "engine/water/settle.hpp"

namespace leat::explore {

namespace {

using model::Arrangement;

std::string_view bytes_of(water::Field const& field) {
  return {reinterpret_cast<char const*>(field.data()), field.size()};
}

// Gives every state the number of its setting, and each setting once.
void number_settings(model::Design const& design, logic::Machine const& machine,
                     States const& states, Histories& found) {
  auto const is_drawn = fills_drawn(design);
  std::map<Setting, std::uint32_t> numbers;
  for (auto code : states.codes) {
    auto const setting = setting_in(design, is_drawn, machine.values(code));
    auto const next = static_cast<std::uint32_t>(found.settings.size());
    auto const [entry, is_new] = numbers.try_emplace(setting, next);
    if (is_new) found.settings.push_back(setting);
    found.setting_of_state.push_back(entry->second);
  }
}

class Trace {
 public:
  Trace(model::Design const& design, logic::Machine const& machine, States const& states,
        HistoryBudget const& budget, std::function<void(std::size_t)> const& progress)
      : design_(design), states_(states), budget_(budget), progress_(progress) {
    number_settings(design, machine, states, found_);
  }

  Histories run() {
    found_.is_complete = found_.settings.size() * design_.grid.size() <= budget_.most_cells / 2;
    if (!found_.is_complete) return std::move(found_);
    for (auto const& setting : found_.settings) arrangements_.emplace_back(design_, setting);
    auto const& first = arrangements_[found_.setting_of_state[0]];
    visit(0, water_number(found_.setting_of_state[0], water::settle_fresh(first)), Histories::none,
          0);
    for (std::uint32_t node = 0; node < found_.nodes.size() && found_.is_complete; ++node)
      leave(node);
    if (found_.is_complete) mark_fresh();
    return std::move(found_);
  }

 private:
  // From a node by every event.
  void leave(std::uint32_t node) {
    auto const [state, water, parent, event_before] = found_.nodes[node];
    for (std::size_t event = 0; event < states_.events; ++event) {
      auto const next_state = states_.after(state, event);
      if (next_state == States::none) continue;
      auto const setting = found_.setting_of_state[next_state];
      auto next_water = water;
      if (setting != found_.waters[water].setting) next_water = change(water, setting);
      if (!found_.is_complete) return;
      visit(next_state, next_water, node, event);
    }
  }

  std::uint32_t change(std::uint32_t from, std::uint32_t setting) {
    auto const key = (std::uint64_t{from} << 32) | setting;
    if (auto const known = change_of_.find(key); known != change_of_.end()) return known->second;
    found_.is_complete = found_.changes < budget_.most_changes &&
                         found_.waters.size() * design_.grid.size() <= budget_.most_cells / 2;
    if (!found_.is_complete) return from;
    auto const& before = arrangements_[found_.waters[from].setting];
    auto settled = water::settle_switched(before, found_.waters[from].field, arrangements_[setting],
                                          found_.waters[from].is_settled);
    auto const to = water_number(setting, std::move(settled));
    ++found_.changes;
    change_of_.emplace(key, to);
    if (progress_) progress_(found_.changes);
    return to;
  }

  std::uint32_t water_number(std::uint32_t setting, water::Settled settled) {
    auto const hash = std::hash<std::string_view>{}(bytes_of(settled.field));
    auto const [begin, end] = by_hash_.equal_range(hash);
    for (auto known = begin; known != end; ++known) {
      auto const& water = found_.waters[known->second];
      if (water.setting == setting && water.field == settled.field) return known->second;
    }
    auto const number = static_cast<std::uint32_t>(found_.waters.size());
    found_.waters.push_back({setting, std::move(settled.field), settled.is_settled});
    by_hash_.emplace(hash, number);
    return number;
  }

  void visit(std::uint32_t state, std::uint32_t water, std::uint32_t parent, std::size_t event) {
    auto const key = (std::uint64_t{state} << 32) | water;
    if (!seen_.emplace(key, 0).second) return;
    found_.nodes.push_back({state, water, parent, static_cast<std::uint8_t>(event)});
    if (found_.nodes.size() > budget_.most_nodes) found_.is_complete = false;
  }

  void mark_fresh() {
    std::vector<water::Field> fresh(found_.settings.size());
    for (auto& water : found_.waters) {
      auto& field = fresh[water.setting];
      if (field.empty()) field = water::settle_fresh(arrangements_[water.setting]).field;
      water.is_fresh = water.field == field;
    }
  }

  model::Design const& design_;
  States const& states_;
  HistoryBudget const& budget_;
  std::function<void(std::size_t)> const& progress_;
  Histories found_;
  std::vector<Arrangement> arrangements_;  // by setting
  std::unordered_map<std::uint64_t, std::uint32_t> change_of_;
  std::unordered_map<std::uint64_t, char> seen_;
  std::unordered_multimap<std::size_t, std::uint32_t> by_hash_;
};

}  // namespace

std::vector<std::size_t> Histories::events_to(std::uint32_t node) const {
  std::vector<std::size_t> list;
  for (; nodes[node].parent != none; node = nodes[node].parent) list.push_back(nodes[node].event);
  std::reverse(list.begin(), list.end());
  return list;
}

Histories trace(model::Design const& design, logic::Machine const& machine, States const& states,
                HistoryBudget const& budget, std::function<void(std::size_t)> const& progress) {
  if (states.size() == 0) return {};
  return Trace(design, machine, states, budget, progress).run();
}

Histories fresh(model::Design const& design, logic::Machine const& machine, States const& states) {
  Histories found;
  number_settings(design, machine, states, found);
  for (std::uint32_t s = 0; s < found.settings.size(); ++s) found.waters.push_back({s, {}, true});
  for (std::uint32_t state = 0; state < states.size(); ++state) {
    found.nodes.push_back({state, found.setting_of_state[state], states.parent[state],
                           states.event_from_parent[state]});
  }
  found.is_complete = true;
  found.is_followed = false;
  return found;
}

bool do_rest(Histories const& histories) {
  return std::all_of(histories.waters.begin(), histories.waters.end(),
                     [](Water const& water) { return water.is_settled; });
}

water::Field field_of(model::Design const& design, Histories const& histories,
                      std::uint32_t water) {
  auto const& known = histories.waters[water];
  if (!known.field.empty()) return known.field;
  return water::settle_fresh({design, histories.settings[known.setting]}).field;
}

}  // namespace leat::explore
