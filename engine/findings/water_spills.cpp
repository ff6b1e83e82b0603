#include "engine/findings/families.hpp"
#include "engine/water/spread.hpp"

namespace leat::findings {

std::vector<Sighting> water_spills(Basin const& basin) {
  std::vector<Sighting> seen;
  if (!basin.arrangement.outside_is_open()) return seen;
  water::Moment const now{basin.arrangement, basin.field};
  for (Cell c = 0; c < basin.field.size(); ++c) {
    if (now.is_wet(c) && water::spills(now, c)) {
      seen.push_back({FindingKind::water_spill, {c}, {}, 0, 0, {}});
    }
  }
  return seen;
}

}  // namespace leat::findings
