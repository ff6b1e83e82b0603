#include <algorithm>
#include <cstdio>
#include <ctime>
#include <string_view>

#include "engine/explore/states.hpp"
#include "engine/explore/symbolic_states.hpp"
#include "tests/support/counters.hpp"

// How long it takes to find all states a machine can reach. Each figure is the best of nine runs in
// one process, by the processor time of that process; ratios belong to one run on one machine.
//
//     states_bench [NAME]    only what begins with NAME
namespace {

using namespace leat;
template <class Work>
double best_seconds(Work work) {
  double best = 1e9;
  for (int run = 0; run < 9; ++run) {
    auto const start = std::clock();
    work();
    best = std::min(best, static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  }
  return best;
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

char const* word(explore::SymbolicStates::Knowledge knowledge) {
  switch (knowledge) {
    case explore::SymbolicStates::Knowledge::complete:
      return "complete";
    case explore::SymbolicStates::Knowledge::out_of_nodes:
      return "OUT OF NODES";
    default:
      return "OUT OF ROUNDS";
  }
}

void time_symbolic(char const* name, model::Circuit const& circuit, std::string_view only) {
  if (!std::string_view(name).starts_with(only)) return;
  auto const seconds = best_seconds([&] { explore::SymbolicStates const states(circuit); });
  explore::SymbolicStates const states(circuit);
  std::printf("symbolic %-20s %-24s %12.6Lg states %8zu nodes made, %6zu left %8.4f s\n", name,
              word(states.knowledge()), states.count(), states.nodes_made(),
              states.nodes_of_states(), seconds);
}

}  // namespace

int main(int count, char** arguments) {
  std::string_view const only = count > 1 ? arguments[1] : "";
  time_explicit("latches 20", wired::latches(20), only);
  time_explicit("latches of pairs 10", wired::latches_of_pairs(10), only);
  time_explicit("latch of all 19", wired::latch_of_all(19), only);
  time_explicit("ripple 19", wired::ripple(19), only);
  time_symbolic("latches 20", wired::latches(20), only);
  time_symbolic("latches of pairs 10", wired::latches_of_pairs(10), only);
  time_symbolic("latches of pairs 20", wired::latches_of_pairs(20), only);
  time_symbolic("ripple 64", wired::ripple(64), only);
  time_symbolic("ripple 256", wired::ripple(256), only);
  time_symbolic("gray 12", wired::gray_counter(12), only);
  time_symbolic("ring 64", wired::ring(64), only);
  time_symbolic("twisted ring 64", wired::twisted_ring(64), only);
}
