#include "engine/findings/falls.hpp"
#include "engine/findings/families.hpp"

namespace leat::findings {

using model::Rule;

namespace {

// Levels of water under a body that comes down at `feet`, in the shallowest way it can sink.
int depth_of_water(Passage const& passage, Cell feet) {
  int depth = 0;
  while (passage.here.are_feet_wet(feet) && passage.here.fits(feet)) {
    ++depth;
    feet = passage.here.grid().below(feet);
  }
  return depth;
}

}  // namespace

std::vector<Sighting> thin_cushions(Passage const& passage) {
  auto const least = passage.here.practice()[Rule::cushion];
  auto const advised = passage.here.practice()[Rule::cushion_advised];
  std::vector<Sighting> seen;
  for (auto const& landing : long_landings(passage)) {
    if (!landing.in_water) continue;
    auto const feet = passage.graph.positions[landing.position].feet;
    auto const depth = depth_of_water(passage, feet);
    if (depth < least) {
      seen.push_back({FindingKind::thin_cushion, {feet}, {}, depth, least, {}});
    } else if (depth < advised) {
      seen.push_back(
          {FindingKind::thin_cushion, {feet}, {}, depth, advised, model::Severity::note});
    }
  }
  return seen;
}

}  // namespace leat::findings
