#include <algorithm>

#include "engine/body/shape.hpp"
#include "engine/findings/families.hpp"

namespace leat::findings {

// By fairness a body leaves every loop that has a way out, so only closed ones hold it.
std::vector<Sighting> endless_loops(Passage const& passage) {
  std::vector<Sighting> seen;
  if (!passage.outcome.has_trap) return seen;
  for (auto const& loop : body::closed_loops(passage.graph)) {
    std::vector<Cell> cells;
    for (auto i : loop) cells.push_back(passage.graph.positions[i].feet);
    std::sort(cells.begin(), cells.end());
    cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
    seen.push_back({FindingKind::endless_loop, std::move(cells), {}, 0, 0, {}});
  }
  return seen;
}

}  // namespace leat::findings
