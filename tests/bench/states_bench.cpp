#include <algorithm>
#include <chrono>
#include <cstdio>
#include <string_view>

#include "engine/explore/states.hpp"
#include "tests/support/wired.hpp"

// How long it takes to find all states a machine can reach. Each figure is the best of five runs in
// one process; ratios belong to one run on one machine.
//
//     states_bench [NAME]    only what begins with NAME
namespace {

using namespace leat;
using Clock = std::chrono::steady_clock;

template <class Work>
double best_seconds(Work work) {
  double best = 1e9;
  for (int run = 0; run < 5; ++run) {
    auto const start = Clock::now();
    work();
    best = std::min(best, std::chrono::duration<double>(Clock::now() - start).count());
  }
  return best;
}

// Levers, each with a latch that it sets and resets: 2^count states, count events from each.
model::Circuit latches(int count) {
  wired::Circuit circuit;
  std::vector<model::SignalId> levers;
  for (int i = 0; i < count; ++i) levers.push_back(circuit.input());
  for (auto lever : levers) {
    auto const on = circuit.of(lever);
    circuit.latch(on, circuit.negation(on));
  }
  return circuit.built();
}

// The same, but every latch needs two neighbouring levers on to be set, and both off to be reset:
// what it holds follows from no parity, so that states are looked up by hashing.
model::Circuit latches_of_pairs(int count) {
  wired::Circuit circuit;
  std::vector<model::ExpressionId> levers;
  for (int i = 0; i < count; ++i) levers.push_back(circuit.of(circuit.input()));
  for (std::size_t i = 0; i < levers.size(); ++i) {
    auto const one = levers[i], other = levers[(i + 1) % levers.size()];
    auto const none = circuit.negation(circuit.combined(model::Operator::disjunction, one, other));
    circuit.latch(circuit.conjunction(one, other), none);
  }
  return circuit.built();
}

model::Circuit ripple(int toggles) {
  wired::Circuit circuit;
  auto trigger = circuit.of(circuit.input());
  for (int i = 0; i < toggles; ++i) trigger = circuit.negation(circuit.of(circuit.toggle(trigger)));
  return circuit.built();
}

void time_explicit(char const* name, model::Circuit const& circuit, std::string_view only) {
  if (!std::string_view(name).starts_with(only)) return;
  logic::Machine const machine(circuit);
  std::size_t states = 0, transitions = 0;
  for (auto const successors : {explore::Successors::left_out, explore::Successors::tabled}) {
    auto const seconds = best_seconds([&] {
      auto const found = explore::reach(machine, std::size_t{1} << 21, successors);
      states = found.size();
      transitions = found.size() * found.events;
    });
    bool const is_tabled = successors == explore::Successors::tabled;
    std::printf("explicit %-20s %-24s %9zu states %10zu transitions %8.4f s\n", name,
                is_tabled ? "with successor table" : "states and sequences", states, transitions,
                seconds);
  }
}

}  // namespace

int main(int count, char** arguments) {
  std::string_view const only = count > 1 ? arguments[1] : "";
  time_explicit("latches 20", latches(20), only);
  time_explicit("latches of pairs 10", latches_of_pairs(10), only);
  time_explicit("ripple 19", ripple(19), only);
}
