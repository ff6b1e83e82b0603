#include "engine/findings/families.hpp"

namespace leat::findings {

std::vector<Sighting> rests(Passage const& passage) {
  std::vector<Sighting> seen;
  for (std::uint32_t i = 0; i < passage.graph.size(); ++i) {
    auto const report = [&](FindingKind kind) {
      seen.push_back({kind, {passage.graph.positions[i].feet}, {}, 0, 0, {}});
    };
    switch (passage.graph.ends[i]) {
      case body::End::dry:
        report(FindingKind::dry_stand);
        break;
      case body::End::still:
        report(FindingKind::still_water);
        break;
      case body::End::pinned:
        report(FindingKind::pinned);
        break;
      case body::End::none:
      case body::End::outlet:
      case body::End::spill:
        break;
    }
  }
  return seen;
}

}  // namespace leat::findings
