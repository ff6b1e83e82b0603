#include "engine/findings/families.hpp"

namespace leat::findings {

std::vector<Sighting> formed_sources(Basin const& basin) {
  if (basin.fresh == nullptr) return {};
  std::vector<Sighting> seen;
  for (Cell c = 0; c < basin.field.size(); ++c) {
    bool const is_formed = basin.field[c] == water::source && !basin.arrangement[c].is_source;
    if (!is_formed || (*basin.fresh)[c] == water::source) continue;
    seen.push_back({FindingKind::formed_source, {c}, {}, 0, 0, {}});
  }
  return seen;
}

}  // namespace leat::findings
