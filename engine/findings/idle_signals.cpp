#include <algorithm>
#include <map>

#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

using explore::Combinations;
using logic::Row;
using model::SignalId;

// Numbers the settings so that two have the same number when all their routes are the same.
std::vector<std::uint32_t> class_of_settings(Combinations const& combinations,
                                             tables::RouteTable const& routes) {
  std::map<std::vector<std::uint32_t>, std::uint32_t> classes;
  std::vector<std::uint32_t> class_of(combinations.settings.size());
  for (std::size_t setting = 0; setting < class_of.size(); ++setting) {
    std::vector<std::uint32_t> key;
    for (model::InletId inlet = 0; inlet < routes.inlets(); ++inlet) {
      for (model::ProfileId profile = 0; profile < routes.profiles(); ++profile) {
        auto const& route = routes.at(setting, inlet, profile);
        key.push_back(static_cast<std::uint32_t>(route.verdict));
        key.push_back((route.spills ? 2u : 0u) + (route.is_unsure ? 1u : 0u));
        key.insert(key.end(), route.outlets.begin(), route.outlets.end());
        key.push_back(model::no_cell);
        key.insert(key.end(), route.trapped.begin(), route.trapped.end());
        key.push_back(model::no_cell);
      }
    }
    auto const next = static_cast<std::uint32_t>(classes.size());
    class_of[setting] = classes.try_emplace(std::move(key), next).first->second;
  }
  return class_of;
}

bool changes_a_route(Combinations const& combinations, std::vector<std::uint32_t> const& class_of,
                     std::size_t input) {
  auto const bit = Row{1} << (combinations.inputs.size() - 1 - input);
  for (Row row = 0; row < combinations.row_count(); ++row) {
    auto const other = row ^ bit;
    if (class_of[combinations.setting_of_row[row]] !=
        class_of[combinations.setting_of_row[other]]) {
      return true;
    }
  }
  return false;
}

// Signals that some cell or expectation depends on by its text.
std::vector<bool> signals_used(model::Design const& design) {
  std::vector<model::ExpressionId> roots;
  for (auto const& fill : design.fills) {
    if (fill.control) roots.push_back(*fill.control);
  }
  for (auto const& expectation : design.expectations) {
    if (expectation.condition) roots.push_back(*expectation.condition);
  }
  return logic::used_signals(design.circuit, roots);
}

}  // namespace

std::vector<Finding> idle_signals(model::Design const& design, Combinations const& combinations,
                                  tables::RouteTable const& routes) {
  auto const class_of = class_of_settings(combinations, routes);
  auto const is_used = signals_used(design);
  std::vector<bool> is_idle(design.circuit.signals.size());
  for (SignalId s = 0; s < is_idle.size(); ++s) is_idle[s] = !is_used[s];
  for (std::size_t i = 0; i < combinations.inputs.size(); ++i) {
    is_idle[combinations.inputs[i]] = !changes_a_route(combinations, class_of, i);
  }
  std::vector<Finding> findings;
  for (SignalId s = 0; s < is_idle.size(); ++s) {
    if (!is_idle[s]) continue;
    Finding finding;
    finding.kind = FindingKind::idle_signal;
    finding.severity = model::row_of(finding.kind).severity;
    finding.signals = {s};
    finding.rows = logic::RowSet(static_cast<int>(combinations.inputs.size()), true);
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace leat::findings
