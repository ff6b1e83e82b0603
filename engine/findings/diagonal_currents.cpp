#include "engine/findings/families.hpp"

namespace leat::findings {

std::vector<Sighting> diagonal_currents(Passage const& passage) {
  std::vector<Sighting> seen;
  for (std::uint32_t i = 0; i < passage.graph.size(); ++i) {
    auto const end = passage.graph.ends[i];
    if (end == body::End::outlet || end == body::End::spill) continue;
    auto const feet = passage.graph.positions[i].feet;
    auto const push = passage.here.push(feet);
    if (push.along_x() && push.along_y()) {
      seen.push_back({FindingKind::diagonal_current, {feet}, {}, 0, 0, {}});
    }
  }
  return seen;
}

}  // namespace leat::findings
