#include "engine/findings/falls.hpp"
#include "engine/findings/families.hpp"

namespace leat::findings {

// An outlet in mid-air ends nothing: what lies under it is not drawn, so nothing is said of it.
std::vector<Sighting> hard_landings(Passage const& passage) {
  std::vector<Sighting> seen;
  for (auto const& landing : long_landings(passage)) {
    auto const feet = passage.graph.positions[landing.position].feet;
    if (landing.in_water || !passage.here.is_carried(feet)) continue;
    seen.push_back({FindingKind::hard_landing,
                    {feet},
                    {},
                    landing.fallen,
                    passage.here.profile().safe_fall,
                    {}});
  }
  return seen;
}

}  // namespace leat::findings
