#include "engine/explore/states.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/strong_components.hpp>

#include "engine/contract.hpp"
#include "engine/explore/known_keys.hpp"
#include "engine/explore/neighbours.hpp"

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
    for (std::uint32_t state = 0; state < keys.size(); ++state) place(keys[state]) = state;
  }

  // None where the key is not known.
  std::uint32_t of(Key key) const { return const_cast<Numbers*>(this)->place(key); }

 private:
  std::uint32_t& place(Key key) {
    return key < dense_.size() ? dense_[key] : sparse_[known_->slot_of(key)];
  }

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
        to_(machine.input_count() * block) {
    states_.events = machine.input_count();
  }

  States run(Successors successors) {
    if (!start_.is_quiet) {
      states_.unquiet_as_built = start_.oscillation;
      return std::move(states_);
    }
    reserve();
    add(keys_.key_of(start_.code), States::none, 0);
    states_.is_complete = true;
    for (std::size_t done = 0; done < states_.size() && states_.is_complete;) {
      auto const count = std::min(block, states_.size() - done);
      visit(done, count);
      done += count;
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

  std::span<Key> after(std::size_t event, std::size_t count) {
    return std::span(to_).subspan(event * block, count);
  }

  void load(std::size_t done, std::size_t count) {
    neighbours_.load(std::span(states_.codes).subspan(done, count),
                     std::span(keys_of_states_).subspan(done, count));
  }

  void visit(std::size_t done, std::size_t count) {
    load(done, count);
    candidates_.fill(0);
    unsettled_.fill(0);
    for (std::size_t event = 0; event < states_.events; ++event) {
      auto const& unsettled = neighbours_.flip(event, after(event, count));
      mark_new(event, after(event, count));
      note_unsettled(event, unsettled);
    }
    for (std::size_t lane = 0; lane < count; ++lane) {
      for (auto rest = candidates_[lane] | unsettled_[lane]; rest != 0; rest &= rest - 1)
        arrive(static_cast<std::uint32_t>(done), lane,
               static_cast<std::size_t>(std::countr_zero(rest)));
    }
  }

  static void note(std::size_t event, std::size_t first_lane, std::uint64_t lanes,
                   std::array<std::uint64_t, block>& events_of_lane) {
    for (; lanes != 0; lanes &= lanes - 1)
      events_of_lane[first_lane + static_cast<std::size_t>(std::countr_zero(lanes))] |=
          std::uint64_t{1} << event;
  }

  void note_unsettled(std::size_t event, Neighbours::Plane const& lanes) {
    for (std::size_t w = 0; w < lanes.size(); ++w) note(event, 64 * w, lanes[w], unsettled_);
  }

  // Notes the lanes whose key is not known yet.
  void mark_new(std::size_t event, std::span<Key const> to) {
    Key any = 0;
    for (auto key : to) any |= key;
    bool const is_dense = any < known_.dense_end();
    for (std::size_t begin = 0; begin < to.size(); begin += 64) {
      auto const part = to.subspan(begin, std::min<std::size_t>(64, to.size() - begin));
      note(event, begin, is_dense ? known_.unknown_dense(part) : known_.unknown(part), candidates_);
    }
  }

  void arrive(std::uint32_t done, std::size_t lane, std::size_t event) {
    auto const from = static_cast<std::uint32_t>(done + lane);
    auto& key = to_[event * block + lane];
    if ((unsettled_[lane] >> event & 1u) != 0) {
      auto settled = machine_.after(states_.codes[from], event);
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
    if (!keys_.includes(key)) {
      auto const step = keys_.include(key);
      for (auto& other : to_) other = step(other);
    }
    add(key, from, event);
  }

  void add(Key key, std::uint32_t parent, std::size_t event) {
    known_.insert(key);
    keys_of_states_.push_back(key);
    states_.codes.push_back(keys_.code_of(key));
    states_.parent.push_back(parent);
    states_.event_from_parent.push_back(static_cast<std::uint8_t>(event));
  }

  // A pass of its own, when the numbers of all states are known.
  void table() {
    Numbers const numbers(known_, keys_of_states_);
    auto const events = states_.events;
    states_.next.reserve(states_.size() * events);
    for (std::size_t done = 0; done < states_.size(); done += block) {
      auto const count = std::min(block, states_.size() - done);
      load(done, count);
      unsettled_.fill(0);
      for (std::size_t event = 0; event < events; ++event)
        note_unsettled(event, neighbours_.flip(event, after(event, count)));
      for (std::size_t lane = 0; lane < count; ++lane) {
        for (std::size_t event = 0; event < events; ++event)
          states_.next.push_back(numbers.of(to_[event * block + lane]));
        for (auto rest = unsettled_[lane]; rest != 0; rest &= rest - 1) {
          auto const event = static_cast<std::size_t>(std::countr_zero(rest));
          auto const settled = machine_.after(states_.codes[done + lane], event);
          states_.next[(done + lane) * events + event] =
              settled.is_quiet ? numbers.of(keys_.key_of(settled.code)) : States::none;
        }
      }
    }
  }

  logic::Machine const& machine_;
  std::size_t most_states_;
  logic::Machine::Settled start_;
  StateKeys keys_;
  KnownKeys known_;
  Neighbours neighbours_;
  States states_;
  std::vector<Key> keys_of_states_;
  std::vector<Key> to_;  // event * block + lane
  // By lane, one bit for each event.
  std::array<std::uint64_t, block> candidates_, unsettled_;
};

}  // namespace

std::vector<std::size_t> States::events_to(std::uint32_t state) const {
  std::vector<std::size_t> list;
  for (; parent[state] != none; state = parent[state]) list.push_back(event_from_parent[state]);
  std::reverse(list.begin(), list.end());
  return list;
}

States reach(logic::Machine const& machine, std::size_t most_states, Successors successors) {
  return Search(machine, most_states).run(successors);
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
