#include "engine/explore/histories.hpp"

#include <algorithm>
#include <cassert>
#include <map>
#include <span>
#include <string_view>
#include <unordered_map>

#include "engine/water/lanes.hpp"

namespace leat::explore {

namespace {

using model::Arrangement;

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

// Idea: what the nodes known so far ask for is settled ahead of them, many changes at once, so that
// lanes can take them. Invariant: it is settled in the order in which the nodes will ask, so waters
// and nodes are numbered, and budgets end, as if each change were settled when it is asked for.
// Limits: so many changes ahead and those of one node more; one by one where fields are large.
class Trace {
 public:
  Trace(model::Design const& design, logic::Machine const& machine, States const& states,
        HistoryBudget const& budget, std::function<void(std::size_t)> const& progress)
      : design_(design),
        states_(states),
        budget_(budget),
        progress_(progress),
        most_together_(std::clamp<std::size_t>(most_cells_together / design.grid.size(), 1, 512)) {
    number_settings(design, machine, states, found_);
  }

  Histories run() {
    found_.is_complete = found_.settings.size() * design_.grid.size() <= budget_.most_cells / 2;
    if (!found_.is_complete) return std::move(found_);
    for (auto const& setting : found_.settings) arrangements_.emplace_back(design_, setting);
    auto const& first = arrangements_[found_.setting_of_state[0]];
    visit(0, water_number(found_.setting_of_state[0], water::settle_fresh(first)), Histories::none,
          0);
    for (std::uint32_t node = 0; node < found_.nodes.size() && found_.is_complete;) {
      auto const end = settle_ahead(node);
      for (; node < end && found_.is_complete; ++node) leave(node);
    }
    if (found_.is_complete) mark_fresh();
    return std::move(found_);
  }

 private:
  static constexpr std::size_t most_cells_together = std::size_t{1} << 23;

  // Visits what the events make of a node's state: event, state after it, its setting.
  template <class Visit>
  void for_each_event(std::uint32_t node, Visit visit) const {
    auto const state = found_.nodes[node].state;
    for (std::size_t event = 0; event < states_.events; ++event) {
      auto const next = states_.after(state, event);
      if (next != States::none) visit(event, next, found_.setting_of_state[next]);
    }
  }

  static std::uint64_t key(std::uint32_t water, std::uint32_t setting) {
    return (std::uint64_t{water} << 32) | setting;
  }

  // Settles what this node and those after it will ask for. The first node that it left out.
  std::uint32_t settle_ahead(std::uint32_t node) {
    std::vector<water::Switching> asked;
    do {
      auto const number = found_.nodes[node].water;
      auto const& water = found_.waters[number];
      for_each_event(node, [&](std::size_t, std::uint32_t, std::uint32_t setting) {
        if (setting == water.setting) return;
        if (!change_of_.emplace(key(number, setting), Histories::none).second) return;
        asked.push_back({&arrangements_[water.setting], &water.field, &arrangements_[setting],
                         water.is_settled});
      });
    } while (++node < found_.nodes.size() && asked.size() < most_together_);
    asked.resize(std::min(asked.size(), budget_.most_changes - found_.changes));
    ahead_ = water::settle_all(asked);
    taken_ = 0;
    return node;
  }

  // From a node by every event.
  void leave(std::uint32_t node) {
    auto const water = found_.nodes[node].water;
    for_each_event(node, [&](std::size_t event, std::uint32_t next_state, std::uint32_t setting) {
      auto next_water = water;
      if (setting != found_.waters[water].setting) next_water = change(water, setting);
      if (found_.is_complete) visit(next_state, next_water, node, event);
    });
  }

  std::uint32_t change(std::uint32_t from, std::uint32_t setting) {
    auto& to = change_of_.at(key(from, setting));
    if (to != Histories::none || !found_.is_complete) return to;
    found_.is_complete = found_.changes < budget_.most_changes &&
                         found_.waters.size() * design_.grid.size() <= budget_.most_cells / 2;
    if (!found_.is_complete) return to;
    assert(taken_ < ahead_.size());
    to = water_number(setting, std::move(ahead_[taken_++]));
    ++found_.changes;
    if (progress_) progress_(found_.changes);
    return to;
  }

  std::uint32_t water_number(std::uint32_t setting, water::Settled settled) {
    auto const hash = std::hash<std::string_view>{}(settled.field.bytes());
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
    std::span<Arrangement const> const all(arrangements_);
    for (std::size_t first = 0; first < all.size(); first += most_together_) {
      auto const fresh =
          water::settle_all(all.subspan(first, std::min(most_together_, all.size() - first)));
      for (auto& water : found_.waters) {
        if (water.setting < first || water.setting - first >= fresh.size()) continue;
        water.is_fresh = water.field == fresh[water.setting - first].field;
      }
    }
  }

  model::Design const& design_;
  States const& states_;
  HistoryBudget const& budget_;
  std::function<void(std::size_t)> const& progress_;
  Histories found_;
  std::vector<Arrangement> arrangements_;  // by setting
  std::size_t most_together_;
  std::vector<water::Settled> ahead_;  // in the order in which they are asked for
  std::size_t taken_ = 0;              // of those
  std::unordered_map<std::uint64_t, std::uint32_t> change_of_;  // none: settled ahead or no more
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
