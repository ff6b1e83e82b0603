#include "engine/findings/families.hpp"

namespace leat::findings {

std::vector<Sighting> tight_inlets(Passage const& passage) {
  if (!passage.graph.starts.empty()) return {};
  return {{FindingKind::tight_inlet, passage.design.inlets[passage.inlet].cells, {}, 0, 0, {}}};
}

}  // namespace leat::findings
