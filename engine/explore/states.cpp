#include "engine/explore/states.hpp"

#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/strong_components.hpp>
#include <unordered_map>

namespace leat::explore {

namespace {

// From codes to state numbers: a plain table while codes are short, else a hash map.
class Numbers {
 public:
  explicit Numbers(std::size_t bits) {
    if (bits <= most_table_bits) table_.assign(std::size_t{1} << bits, States::none);
  }

  // The number of a code; `next` becomes the number of a code not seen before.
  std::pair<std::uint32_t, bool> number(Code code, std::uint32_t next) {
    if (table_.empty()) {
      auto const [entry, is_new] = map_.try_emplace(code, next);
      return {entry->second, is_new};
    }
    auto& entry = table_[code];
    bool const is_new = entry == States::none;
    if (is_new) entry = next;
    return {entry, is_new};
  }

  // The same without giving a number: none where the code is new.
  std::uint32_t find(Code code) const {
    if (!table_.empty()) return table_[code];
    auto const entry = map_.find(code);
    return entry == map_.end() ? States::none : entry->second;
  }

 private:
  static constexpr std::size_t most_table_bits = 24;
  std::vector<std::uint32_t> table_;
  std::unordered_map<Code, std::uint32_t> map_;
};

class Search {
 public:
  Search(logic::Machine const& machine, std::size_t most_states)
      : machine_(machine), most_states_(most_states), numbers_(machine.variables().size()) {
    states_.events = machine.input_count();
  }

  States run() {
    auto const start = machine_.as_built();
    if (!start.is_quiet) {
      states_.unquiet_as_built = start.oscillation;
      return std::move(states_);
    }
    discover(start.code, States::none, 0);
    states_.is_complete = true;
    while (done_ < states_.size() && states_.is_complete) visit_next_lanes();
    states_.next.resize(states_.size() * states_.events, States::none);
    return std::move(states_);
  }

 private:
  void visit_next_lanes() {
    auto const count = std::min<std::size_t>(logic::lane_count, states_.size() - done_);
    std::vector<Code> const from(
        states_.codes.begin() + static_cast<std::ptrdiff_t>(done_),
        states_.codes.begin() + static_cast<std::ptrdiff_t>(done_ + count));
    states_.next.resize((done_ + count) * states_.events, States::none);
    std::vector<std::vector<Code>> to(states_.events);
    std::vector<logic::Lanes> unsettled(states_.events);
    for (std::size_t event = 0; event < states_.events; ++event) {
      unsettled[event] = machine_.after(from, event, to[event]);
    }
    // State by state, then event by event: the order in which a search one by one would find them.
    for (std::size_t lane = 0; lane < count; ++lane) {
      for (std::size_t event = 0; event < states_.events; ++event) {
        bool const is_unsettled = (unsettled[event] >> lane & 1u) != 0;
        arrive(static_cast<std::uint32_t>(done_ + lane), event, to[event][lane], is_unsettled);
      }
    }
    done_ += count;
  }

  void arrive(std::uint32_t from, std::size_t event, Code to, bool is_unsettled) {
    if (is_unsettled) {
      auto settled = machine_.after(states_.codes[from], event);
      if (!settled.is_quiet) {
        states_.unquiet.push_back({from, event, std::move(settled.oscillation)});
        return;
      }
      to = settled.code;
    }
    states_.next[from * states_.events + event] = discover(to, from, event);
  }

  std::uint32_t discover(Code code, std::uint32_t parent, std::size_t event) {
    if (states_.size() == most_states_) {
      auto const known = numbers_.find(code);
      if (known == States::none) states_.is_complete = false;
      return known;
    }
    auto const [number, is_new] = numbers_.number(code, static_cast<std::uint32_t>(states_.size()));
    if (is_new) {
      states_.codes.push_back(code);
      states_.parent.push_back(parent);
      states_.event_from_parent.push_back(static_cast<std::uint8_t>(event));
    }
    return number;
  }

  logic::Machine const& machine_;
  std::size_t most_states_;
  Numbers numbers_;
  States states_;
  std::size_t done_ = 0;
};

}  // namespace

std::vector<std::size_t> States::events_to(std::uint32_t state) const {
  std::vector<std::size_t> list;
  for (; parent[state] != none; state = parent[state]) list.push_back(event_from_parent[state]);
  std::reverse(list.begin(), list.end());
  return list;
}

States reach(logic::Machine const& machine, std::size_t most_states) {
  return Search(machine, most_states).run();
}

// Every state is reached from as built, so those that can return are exactly its strong component.
std::vector<std::uint32_t> without_return(States const& states) {
  if (states.size() == 0) return {};
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
