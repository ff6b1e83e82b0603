#include "engine/explore/memory_graph.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <unordered_map>

#include "engine/contract.hpp"

namespace leat::explore {

namespace {

bool is_on_in(Code code, std::size_t variable) { return (code >> variable & 1u) != 0; }

std::vector<Restless> restless_of(States const& states) {
  std::map<std::tuple<std::uint32_t, bool, std::vector<model::SignalId>>, std::size_t> known;
  std::vector<Restless> result;
  for (auto const& unquiet : states.unquiet) {
    auto const event = static_cast<std::uint32_t>(unquiet.event);
    bool const is_on = !is_on_in(states.codes[unquiet.state], event);
    auto const [entry, is_new] =
        known.try_emplace({event, is_on, unquiet.oscillation.loop}, result.size());
    if (is_new) result.push_back({unquiet.oscillation, unquiet.state, event, is_on, 0});
    ++result[entry->second].count;
  }
  return result;
}

// Where in a code the elements stand.
std::vector<std::size_t> places_of(logic::Machine const& machine,
                                   std::vector<model::SignalId> const& elements) {
  std::vector<std::size_t> places;
  auto const& variables = machine.variables();
  for (auto element : elements) {
    auto const at = std::find(variables.begin(), variables.end(), element);
    require(at != variables.end(), "memory_graph: a signal that the machine does not have");
    places.push_back(static_cast<std::size_t>(at - variables.begin()));
  }
  return places;
}

}  // namespace

std::vector<model::SignalId> memory_of(logic::Machine const& machine) {
  auto const inputs = static_cast<std::ptrdiff_t>(machine.input_count());
  return {machine.variables().begin() + inputs, machine.variables().end()};
}

MemoryGraph memory_graph(logic::Machine const& machine, States const& states,
                         std::vector<model::SignalId> const& elements) {
  require(states.is_complete, "memory_graph: all states");
  MemoryGraph graph;
  std::unordered_map<Code, std::uint32_t> known;
  auto const places = places_of(machine, elements);
  std::vector<std::uint32_t> events;
  for (std::uint32_t state = 0; state < states.size(); ++state) {
    events.push_back(state == 0 ? 0 : events[states.parent[state]] + 1);
    Code memory = 0;
    for (std::size_t i = 0; i < places.size(); ++i)
      memory |= (states.codes[state] >> places[i] & 1u) << i;
    auto const [entry, is_new] =
        known.try_emplace(memory, static_cast<std::uint32_t>(graph.values.size()));
    if (is_new) graph.values.push_back({memory, state, 0, events[state]});
    ++graph.values[entry->second].states;
    graph.value_of.push_back(entry->second);
  }
  graph.restless = restless_of(states);
  return graph;
}

// Each kind of departure (a value, an event, a direction) is counted once for all states and once
// for each value that it leads to: where both counts are the same, it always leads there.
std::vector<MemoryChange> memory_changes(States const& states, MemoryGraph const& graph) {
  require(states.next.size() == states.size() * states.events, "memory_changes: all successors");
  auto const departure = [&](std::uint32_t value, std::uint32_t event, bool is_on) {
    return (std::size_t{value} * states.events + event) * 2 + (is_on ? 1 : 0);
  };
  std::vector<std::uint32_t> departures(graph.values.size() * states.events * 2);
  std::vector<std::pair<std::size_t, std::uint32_t>> found;
  for (std::uint32_t state = 0; state < states.size(); ++state) {
    auto const from = graph.value_of[state];
    for (std::uint32_t event = 0; event < states.events; ++event) {
      auto const leaving = departure(from, event, !is_on_in(states.codes[state], event));
      ++departures[leaving];
      auto const next = states.after(state, event);
      auto const to = next == States::none ? States::none : graph.value_of[next];
      if (to != from) found.emplace_back(leaving, to);
    }
  }
  std::sort(found.begin(), found.end());
  std::vector<MemoryChange> changes;
  for (auto run = found.begin(); run != found.end();) {
    auto const end = std::upper_bound(run, found.end(), *run);
    auto const [leaving, to] = *run;
    auto const value_and_event = leaving / 2;
    changes.push_back({static_cast<std::uint32_t>(value_and_event / states.events), to,
                       static_cast<std::uint32_t>(value_and_event % states.events),
                       leaving % 2 != 0,
                       static_cast<std::size_t>(end - run) == departures[leaving]});
    run = end;
  }
  return changes;
}

logic::RowSet never_reached(MemoryGraph const& graph, std::size_t elements) {
  logic::RowSet reached(static_cast<int>(elements));
  for (auto const& value : graph.values) {
    logic::Row row = 0;
    for (std::size_t i = 0; i < elements; ++i)
      row = row << 1 | static_cast<logic::Row>(value.memory >> i & 1u);
    reached.insert(row);
  }
  return ~reached;
}

namespace {

// Walks from signals to what they look at.
class Behind {
 public:
  explicit Behind(model::Circuit const& circuit)
      : circuit_(circuit),
        is_behind_(circuit.signals.size()),
        is_seen_(circuit.expressions.size()) {}

  std::vector<bool> of_memory() {
    for (model::SignalId s = 0; s < circuit_.signals.size(); ++s) {
      if (circuit_.signals[s].is_memory()) reach(s);
    }
    while (!open_.empty()) {
      auto const node = circuit_.expressions[open_.back()];
      open_.pop_back();
      if (node.op == model::Operator::constant) continue;
      if (node.op == model::Operator::signal) {
        reach(node.left);
        continue;
      }
      look_at(node.left);
      if (node.op != model::Operator::negation) look_at(node.right);
    }
    return std::move(is_behind_);
  }

 private:
  void reach(model::SignalId s) {
    if (is_behind_[s]) return;
    is_behind_[s] = true;
    auto const& signal = circuit_.signals[s];
    if (!signal.is_input()) look_at(signal.definition);
    if (signal.kind == model::SignalKind::latch) look_at(signal.reset);
  }

  void look_at(model::ExpressionId expression) {
    if (!is_seen_[expression]) open_.push_back(expression);
    is_seen_[expression] = true;
  }

  model::Circuit const& circuit_;
  std::vector<bool> is_behind_, is_seen_;
  std::vector<model::ExpressionId> open_;
};

}  // namespace

std::vector<bool> behind_memory(model::Circuit const& circuit) {
  return Behind(circuit).of_memory();
}

}  // namespace leat::explore
