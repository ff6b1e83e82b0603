#include "engine/explore/states.hpp"

#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/strong_components.hpp>

#include "engine/contract.hpp"
#include "engine/explore/state_search.hpp"
#include "engine/logic/truth.hpp"

namespace leat::explore {

namespace {

// The states that are left when events into what never comes about are not done, numbered anew
// breadth first.
class Keeping {
 public:
  Keeping(logic::Machine const& machine, States const& all) : machine_(machine), all_(all) {}

  States kept() {
    kept_.events = all_.events;
    kept_.is_complete = all_.is_complete;
    kept_.unended = all_.unended;
    kept_.unquiet_as_built = all_.unquiet_as_built;
    if (all_.size() == 0) return std::move(kept_);
    number_.assign(all_.size(), States::none);
    mark_nevers();
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
      bool const is_done = to != States::none && !is_never_[to];
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

  // Once for each state, however many events lead there.
  void mark_nevers() {
    auto const& circuit = machine_.circuit();
    is_never_.reserve(all_.size());
    for (auto code : all_.codes) {
      auto const values = machine_.values(code);
      is_never_.push_back(
          std::any_of(circuit.nevers.begin(), circuit.nevers.end(),
                      [&](auto never) { return logic::is_true(circuit, never, values); }));
    }
  }

  logic::Machine const& machine_;
  States const& all_;
  States kept_;
  std::vector<std::uint32_t> number_, old_;  // by old number, by new one
  std::vector<bool> is_never_;               // by old number
};

}  // namespace

std::vector<std::size_t> States::events_to(std::uint32_t state) const {
  std::vector<std::size_t> list;
  for (; parent[state] != none; state = parent[state]) list.push_back(event_from_parent[state]);
  std::reverse(list.begin(), list.end());
  return list;
}

States reach(logic::Machine const& machine, std::size_t most_states, Successors successors) {
  if (machine.circuit().nevers.empty()) return search(machine, most_states, successors);
  auto const all = search(machine, most_states, Successors::tabled);
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
