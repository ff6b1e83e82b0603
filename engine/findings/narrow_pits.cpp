#include "engine/findings/falls.hpp"
#include "engine/findings/families.hpp"

namespace leat::findings {

std::vector<Sighting> narrow_pits(Passage const& passage) {
  auto const wanted = passage.here.practice()[model::Rule::pit_width];
  std::vector<Sighting> seen;
  for (auto const& landing : long_landings(passage)) {
    if (landing.carried_to == model::Side::none) continue;
    auto const feet = passage.graph.positions[landing.position].feet;
    int width = 1;
    auto next = passage.here.grid().beside(feet, landing.carried_to);
    while (width < wanted && passage.here.grid().is_inside(next) && passage.here.fits(next)) {
      ++width;
      next = passage.here.grid().beside(next, landing.carried_to);
    }
    if (width < wanted) seen.push_back({FindingKind::narrow_pit, {feet}, {}, width, wanted, {}});
  }
  return seen;
}

}  // namespace leat::findings
