#include "engine/explore/states.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/strong_components.hpp>

#include "engine/contract.hpp"
#include "engine/explore/known_keys.hpp"
#include "engine/explore/neighbours.hpp"
#include "engine/logic/truth.hpp"

namespace leat::explore {

namespace {

using Key = StateKeys::Key;

// The numbers of known keys, laid out as the keys are. Made once all are known.
class Numbers {
 public:
  Numbers(KnownKeys const& known, std::vector<Key> const& keys)
      : known_(&known),
        dense_(known.dense_end(), States::none),
        sparse_(known.slot_count(), States::none) {
    for (std::uint32_t state = 0; state < keys.size(); ++state) {
      auto const key = keys[state];
      (key < dense_.size() ? dense_[key] : sparse_[known.slot_of(key)]) = state;
    }
  }

  // None where the key is not known.
  std::uint32_t of(Key key) const {
    return key < dense_.size() ? dense_[key] : sparse_[known_->slot_of(key)];
  }

 private:
  KnownKeys const* known_;
  std::vector<std::uint32_t> dense_, sparse_;
};

// Breadth first in blocks. A block first marks, event by event, the lanes that lead to keys not
// known yet; those few are then taken state by state and, within a state, event by event: the order
// in which a search one by one would find them.
class Search {
 public:
  Search(logic::Machine const& machine, std::size_t most_states)
      : machine_(machine),
        most_states_(most_states),
        start_(machine.as_built()),
        keys_(start_.code),
        neighbours_(machine, keys_),
        after_(machine.input_count()),
        to_(machine.input_count() * block) {
    states_.events = machine.input_count();
  }

  States run(Successors successors) {
    if (!start_.is_quiet) {
      states_.unquiet_as_built = start_.oscillation;
      return std::move(states_);
    }
    reserve();
    add(start_.code, keys_.key_of(start_.code), States::none, 0);
    states_.is_complete = true;
    for (; done_ < states_.size() && states_.is_complete; done_ += block_keys_.size()) {
      visit();
      known_.widen(keys_.dimensions());
    }
    if (successors == Successors::tabled) table();
    return std::move(states_);
  }

 private:
  static constexpr auto block = Neighbours::most_states;

  // Room for as many states as there can be, so that growing copies nothing; what is not used is
  // not touched.
  void reserve() {
    constexpr std::size_t most_reserved = std::size_t{1} << 20;
    auto const bits = std::min<std::size_t>(machine_.variables().size(), 20);
    auto const count = std::min({most_states_, std::size_t{1} << bits, most_reserved});
    keys_of_states_.reserve(count);
    states_.codes.reserve(count);
    states_.parent.reserve(count);
    states_.event_from_parent.reserve(count);
  }

  // Where the states of the present block lead by an event.
  struct After {
    Key by = 0;  // from the state's own key; where is_even is not set, `to_` holds the keys instead
    logic::Code code_by = 0;
    bool is_even = true;
  };

  std::span<Key> uneven(std::size_t event) {
    return std::span(to_).subspan(event * block, block_keys_.size());
  }
  Key key_after(std::size_t lane, std::size_t event) const {
    auto const& after = after_[event];
    return after.is_even ? block_keys_[lane] ^ after.by : to_[event * block + lane];
  }
  logic::Code code_after(std::size_t lane, std::size_t event) const {
    auto const& after = after_[event];
    return after.is_even ? states_.codes[done_ + lane] ^ after.code_by
                         : keys_.code_of(to_[event * block + lane]);
  }

  void load() {
    auto const count = std::min(block, states_.size() - done_);
    block_keys_.assign(keys_of_states_.begin() + static_cast<std::ptrdiff_t>(done_),
                       keys_of_states_.begin() + static_cast<std::ptrdiff_t>(done_ + count));
    neighbours_.load(std::span(states_.codes).subspan(done_, count), block_keys_);
    unsettled_.fill(0);
  }

  void flip(std::size_t event) {
    auto const flip = neighbours_.flip(event, uneven(event));
    after_[event] = {flip.key, flip.code, flip.is_even};
    for (std::size_t w = 0; w < flip.unsettled->size(); ++w)
      note(event, 64 * w, (*flip.unsettled)[w], unsettled_);
  }

  void visit() {
    load();
    candidates_.fill(0);
    Key any = 0;
    for (auto key : block_keys_) any |= key;
    for (std::size_t event = 0; event < states_.events; ++event) {
      flip(event);
      mark_new(event, any);
    }
    for (std::size_t lane = 0; lane < block_keys_.size(); ++lane) {
      for (auto rest = candidates_[lane] | unsettled_[lane]; rest != 0; rest &= rest - 1)
        arrive(lane, static_cast<std::size_t>(std::countr_zero(rest)));
    }
  }

  static void note(std::size_t event, std::size_t first_lane, std::uint64_t lanes,
                   std::array<std::uint64_t, block>& events_of_lane) {
    for (; lanes != 0; lanes &= lanes - 1)
      events_of_lane[first_lane + static_cast<std::size_t>(std::countr_zero(lanes))] |=
          std::uint64_t{1} << event;
  }

  // Notes the lanes whose key is not known yet; `any` has all bits that the block's own keys have.
  void mark_new(std::size_t event, Key any) {
    auto const& after = after_[event];
    std::span<Key const> const keys = after.is_even ? std::span(block_keys_) : uneven(event);
    auto const by = after.is_even ? after.by : 0;
    if (!after.is_even) {
      for (auto key : keys) any |= key;
    }
    bool const is_dense = (any | by) < known_.dense_end();
    for (std::size_t begin = 0; begin < keys.size(); begin += 64) {
      auto const part = keys.subspan(begin, std::min<std::size_t>(64, keys.size() - begin));
      note(event, begin, is_dense ? known_.unknown_dense(part, by) : known_.unknown(part, by),
           candidates_);
    }
  }

  void arrive(std::size_t lane, std::size_t event) {
    auto const from = static_cast<std::uint32_t>(done_ + lane);
    auto key = key_after(lane, event);
    bool const is_unsettled = (unsettled_[lane] >> event & 1u) != 0;
    logic::Machine::Settled settled;
    if (is_unsettled) {
      settled = machine_.after(states_.codes[from], event);
      if (!settled.is_quiet) {
        states_.unquiet.push_back({from, event, std::move(settled.oscillation)});
        return;
      }
      key = keys_.key_of(settled.code);
    }
    if (known_.is_known(key)) return;
    if (states_.size() == most_states_) {
      states_.is_complete = false;
      return;
    }
    auto const code = is_unsettled ? settled.code : code_after(lane, event);
    if (!keys_.includes(key)) key = include(key);
    add(code, key, from, event);
  }

  // Widens the span of the keys. Those of known states stay; what was worked out for this block
  // follows, since a step is linear.
  Key include(Key key) {
    auto const step = keys_.include(key);
    for (auto& other : to_) other = step(other);
    for (auto& after : after_) after.by = step(after.by);
    return step(key);
  }

  void add(logic::Code code, Key key, std::uint32_t parent, std::size_t event) {
    known_.insert(key);
    keys_of_states_.push_back(key);
    states_.codes.push_back(code);
    states_.parent.push_back(parent);
    states_.event_from_parent.push_back(static_cast<std::uint8_t>(event));
  }

  // A pass of its own, when the numbers of all states are known.
  void table() {
    Numbers const numbers(known_, keys_of_states_);
    auto const events = states_.events;
    states_.next.reserve(states_.size() * events);
    for (done_ = 0; done_ < states_.size(); done_ += block_keys_.size()) {
      load();
      states_.next.resize(states_.next.size() + block_keys_.size() * events);
      for (std::size_t event = 0; event < events; ++event) {
        flip(event);
        number_successors(numbers, event);
      }
      for (std::size_t lane = 0; lane < block_keys_.size(); ++lane) {
        for (auto rest = unsettled_[lane]; rest != 0; rest &= rest - 1)
          settle_alone(numbers, lane, static_cast<std::size_t>(std::countr_zero(rest)));
      }
    }
  }

  void number_successors(Numbers const& numbers, std::size_t event) {
    auto const& after = after_[event];
    std::span<Key const> const keys = after.is_even ? std::span(block_keys_) : uneven(event);
    auto const by = after.is_even ? after.by : 0;
    auto* const next = &states_.next[done_ * states_.events + event];
    for (std::size_t lane = 0; lane < keys.size(); ++lane)
      next[lane * states_.events] = numbers.of(keys[lane] ^ by);
  }

  void settle_alone(Numbers const& numbers, std::size_t lane, std::size_t event) {
    auto const settled = machine_.after(states_.codes[done_ + lane], event);
    states_.next[(done_ + lane) * states_.events + event] =
        settled.is_quiet ? numbers.of(keys_.key_of(settled.code)) : States::none;
  }

  logic::Machine const& machine_;
  std::size_t most_states_;
  logic::Machine::Settled start_;
  StateKeys keys_;
  KnownKeys known_;
  Neighbours neighbours_;
  States states_;
  std::vector<Key> keys_of_states_;
  std::size_t done_ = 0;         // the first state of the present block
  std::vector<Key> block_keys_;  // of the present block's states
  std::vector<After> after_;     // by event
  std::vector<Key> to_;          // event * block + lane
  // By lane, one bit for each event.
  std::array<std::uint64_t, block> candidates_, unsettled_;
};

// The states that are left when events into what never comes about are not done, numbered anew
// breadth first.
class Keeping {
 public:
  Keeping(logic::Machine const& machine, States const& all) : machine_(machine), all_(all) {}

  States kept() {
    kept_.events = all_.events;
    kept_.is_complete = all_.is_complete;
    kept_.unquiet_as_built = all_.unquiet_as_built;
    if (all_.size() == 0) return std::move(kept_);
    number_.assign(all_.size(), States::none);
    add(0, States::none, 0);
    for (std::uint32_t from = 0; from < old_.size(); ++from) go_on(from);
    for (auto const& unquiet : all_.unquiet) {
      if (number_[unquiet.state] == States::none) continue;
      kept_.unquiet.push_back(unquiet);
      kept_.unquiet.back().state = number_[unquiet.state];
    }
    return std::move(kept_);
  }

 private:
  void go_on(std::uint32_t from) {
    for (std::size_t event = 0; event < all_.events; ++event) {
      auto const to = all_.after(old_[from], event);
      bool const is_done = to != States::none && (to == 0 || !is_never(to));
      if (is_done && number_[to] == States::none) add(to, from, event);
      kept_.next.push_back(is_done ? number_[to] : States::none);
    }
  }

  void add(std::uint32_t state, std::uint32_t parent, std::size_t event) {
    number_[state] = static_cast<std::uint32_t>(old_.size());
    old_.push_back(state);
    kept_.codes.push_back(all_.codes[state]);
    kept_.parent.push_back(parent);
    kept_.event_from_parent.push_back(static_cast<std::uint8_t>(event));
  }

  bool is_never(std::uint32_t state) const {
    auto const& circuit = machine_.circuit();
    auto const values = machine_.values(all_.codes[state]);
    return std::any_of(circuit.nevers.begin(), circuit.nevers.end(),
                       [&](auto never) { return logic::is_true(circuit, never, values); });
  }

  logic::Machine const& machine_;
  States const& all_;
  States kept_;
  std::vector<std::uint32_t> number_, old_;  // by old number, by new one
};

}  // namespace

std::vector<std::size_t> States::events_to(std::uint32_t state) const {
  std::vector<std::size_t> list;
  for (; parent[state] != none; state = parent[state]) list.push_back(event_from_parent[state]);
  std::reverse(list.begin(), list.end());
  return list;
}

States reach(logic::Machine const& machine, std::size_t most_states, Successors successors) {
  if (machine.circuit().nevers.empty()) return Search(machine, most_states).run(successors);
  auto const all = Search(machine, most_states).run(Successors::tabled);
  return Keeping(machine, all).kept();
}

// Every state is reached from as built, so those that can return are exactly its strong component.
std::vector<std::uint32_t> without_return(States const& states) {
  if (states.size() == 0) return {};
  require(states.next.size() == states.size() * states.events,
          "without_return: successors were left out");
  using Csr =
      boost::compressed_sparse_row_graph<boost::directedS, boost::no_property, boost::no_property,
                                         boost::no_property, std::uint32_t, std::uint32_t>;
  std::vector<std::pair<std::uint32_t, std::uint32_t>> edges;
  edges.reserve(states.next.size());
  for (std::uint32_t from = 0; from < states.size(); ++from) {
    for (std::size_t event = 0; event < states.events; ++event) {
      auto const to = states.after(from, event);
      if (to != States::none && to != from) edges.emplace_back(from, to);
    }
  }
  Csr const graph(boost::edges_are_sorted, edges.begin(), edges.end(),
                  static_cast<std::uint32_t>(states.size()));
  std::vector<std::uint32_t> component(states.size());
  boost::strong_components(graph, boost::make_iterator_property_map(
                                      component.begin(), boost::get(boost::vertex_index, graph)));
  std::vector<std::uint32_t> result;
  for (std::uint32_t state = 0; state < states.size(); ++state) {
    if (component[state] != component[0]) result.push_back(state);
  }
  return result;
}

}  // namespace leat::explore
