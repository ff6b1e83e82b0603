#include "engine/findings/families.hpp"

namespace leat::findings {

std::vector<Finding> unreached_outlets(Explored const& explored,
                                       tables::RouteTable const& by_water) {
  auto const& outlets = explored.design.outlets;
  std::vector<bool> is_reached(outlets.size(), false);
  for (std::size_t water = 0; water < explored.histories.waters.size(); ++water) {
    for (model::InletId inlet = 0; inlet < by_water.inlets(); ++inlet) {
      for (model::ProfileId profile = 0; profile < by_water.profiles(); ++profile) {
        for (auto outlet : by_water.at(water, inlet, profile).outlets) is_reached[outlet] = true;
      }
    }
  }
  std::vector<Finding> findings;
  for (model::OutletId outlet = 0; outlet < outlets.size(); ++outlet) {
    if (is_reached[outlet]) continue;
    auto finding = finding_of(FindingKind::unreached_outlet);
    finding.cells = outlets[outlet].cells;
    finding.outlets = {outlet};
    finding.rows = explored.combinations.reachable;
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace leat::findings
