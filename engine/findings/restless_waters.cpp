#include "engine/findings/families.hpp"
#include "engine/water/step.hpp"

namespace leat::findings {

// The cells that the next step still changes.
std::vector<Sighting> restless_waters(Basin const& basin) {
  if (basin.is_settled) return {};
  auto const next = water::step(basin.arrangement, basin.field);
  Sighting sighting{FindingKind::restless_water, {}, {}, 0, 0, {}};
  for (Cell c = 0; c < next.size(); ++c) {
    if (next[c] != basin.field[c]) sighting.cells.push_back(c);
  }
  return {sighting};
}

}  // namespace leat::findings
