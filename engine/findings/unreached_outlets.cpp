#include "engine/findings/families.hpp"

namespace leat::findings {

std::vector<Finding> unreached_outlets(model::Design const& design,
                                       explore::Combinations const& combinations,
                                       tables::RouteTable const& routes) {
  std::vector<bool> is_reached(design.outlets.size(), false);
  for (std::size_t setting = 0; setting < combinations.settings.size(); ++setting) {
    for (model::InletId inlet = 0; inlet < routes.inlets(); ++inlet) {
      for (model::ProfileId profile = 0; profile < routes.profiles(); ++profile) {
        for (auto outlet : routes.at(setting, inlet, profile).outlets) is_reached[outlet] = true;
      }
    }
  }
  std::vector<Finding> findings;
  for (model::OutletId outlet = 0; outlet < design.outlets.size(); ++outlet) {
    if (is_reached[outlet]) continue;
    Finding finding;
    finding.kind = FindingKind::unreached_outlet;
    finding.severity = model::row_of(finding.kind).severity;
    finding.cells = design.outlets[outlet].cells;
    finding.outlets = {outlet};
    finding.rows = logic::RowSet(static_cast<int>(combinations.inputs.size()), true);
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace leat::findings
