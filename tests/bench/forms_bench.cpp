#include <algorithm>
#include <cstdio>
#include <ctime>
#include <random>

#include "engine/logic/diagram_cover.hpp"
#include "engine/logic/minimal_cover.hpp"

// How long a minimal sum takes beside an irredundant one of the same functions, and how much
// smaller it is. Each figure is the best of five runs in one process, by the processor time of that
// process; ratios belong to one run on one machine.
namespace {

using namespace leat;
using logic::RowSet;

struct Function {
  RowSet needed, allowed;
};

// So many of a hundred rows needed, and so many of the others free.
std::vector<Function> functions(int inputs, unsigned needed, unsigned free) {
  std::mt19937 dice(static_cast<unsigned>(inputs));
  std::vector<Function> list;
  for (int i = 0; i < 100; ++i) {
    Function f{RowSet(inputs), RowSet(inputs)};
    for (logic::Row row = 0; row < f.needed.row_count(); ++row) {
      auto const throw_of_dice = dice() % 100;
      if (throw_of_dice < needed) f.needed.insert(row);
      if (throw_of_dice < needed + free) f.allowed.insert(row);
    }
    list.push_back(std::move(f));
  }
  return list;
}

// Microseconds a function.
template <class Work>
double best_time(std::vector<Function> const& list, Work work) {
  double best = 1e18;
  for (int run = 0; run < 5; ++run) {
    auto const start = std::clock();
    for (auto const& f : list) work(f);
    best = std::min(best, static_cast<double>(std::clock() - start) * 1e6 / CLOCKS_PER_SEC);
  }
  return best / static_cast<double>(list.size());
}

void compare(int inputs, unsigned needed, unsigned free) {
  auto const list = functions(inputs, needed, free);
  auto const plain = best_time(list, [](auto const& f) { irredundant_cover(f.needed, f.allowed); });
  auto const exact = best_time(list, [](auto const& f) { minimal_cover(f.needed, f.allowed); });
  std::size_t of_plain = 0, of_exact = 0, undecided = 0;
  for (auto const& f : list) {
    auto const sum = minimal_cover(f.needed, f.allowed);
    of_plain += irredundant_cover(f.needed, f.allowed).size();
    of_exact += sum.cubes.size();
    undecided += sum.is_minimal ? 0 : 1;
  }
  std::printf(
      "%d inputs, %2u %% needed, %2u %% free: irredundant %8.1f us, minimal %8.1f us, ratio %6.2f; "
      "cubes %5zu to %5zu; not proved minimal %3zu of 100\n",
      inputs, needed, free, plain, exact, exact / plain, of_plain, of_exact, undecided);
}

// Every other pair of variables, both on: as many products as pairs.
void cover_pairs(unsigned pairs) {
  logic::Diagram diagram(std::size_t{1} << 20);
  auto sum = logic::Diagram::never;
  for (auto i = pairs; i-- > 0;)
    sum = diagram.either(diagram.both(diagram.variable(2 * i), diagram.variable(2 * i + 1)), sum);
  auto const start = std::clock();
  auto const products = irredundant_cover(diagram, sum, sum, pairs);
  auto const seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  std::printf("diagram of %4u variables: %4zu products in %8.5f s\n", 2 * pairs,
              products ? products->size() : 0, seconds);
}

}  // namespace

int main() {
  for (int inputs = 2; inputs <= 8; ++inputs) {
    for (unsigned needed : {25u, 60u}) {
      for (unsigned free : {0u, 25u}) compare(inputs, needed, free);
    }
  }
  for (unsigned pairs : {50u, 100u, 200u, 400u}) cover_pairs(pairs);
}
