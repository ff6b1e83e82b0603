#include <algorithm>
#include <cmath>

#include "engine/logic/diagram_cover.hpp"
#include "engine/logic/minimal_cover.hpp"
#include "engine/works/destinations.hpp"
#include "lang/render/condition.hpp"
#include "lang/render/table_entry.hpp"
#include "lang/render/words.hpp"
#include "lang/render/works_condition.hpp"
#include "lang/render/works_table.hpp"

namespace leat::render {

namespace {

using works::Conditions;

// The same as for a junction, while the combinations can be written in columns.
DestinationEntry narrow_entry(Subject const& subject, works::Destination const& destination,
                              Conditions const& conditions,
                              std::vector<std::string> const& inputs) {
  auto const count = static_cast<int>(inputs.size());
  auto const reachable = works::rows_of(conditions.diagram(), conditions.reachable(), count);
  auto const rows = works::rows_of(conditions.diagram(), destination.condition, count);
  tables::Destination told{destination.verdict, destination.outlets, rows,
                           logic::irredundant_cover(rows, rows)};
  return entry_of(subject, told, reachable, inputs);
}

DestinationEntry wide_entry(Subject const& subject, works::Destination const& destination,
                            Conditions& conditions, std::vector<std::string> const& inputs) {
  DestinationEntry entry;
  entry.verdict = destination.verdict;
  entry.outlets = names_of(subject.map.outlets, destination.outlets);
  entry.condition = condition_expression(conditions, destination.condition, inputs);
  entry.words = condition_words(entry.condition);
  entry.combinations = combinations_of(conditions, destination.condition);
  return entry;
}

Lane lane_of(Subject const& subject, works::WorksJudgement const& judged,
             works::Passage const& passage, TableSheet& sheet) {
  Lane lane{subject.map.inlets[passage.inlet].name,
            subject.map.profiles[passage.profile].name,
            {},
            {},
            {}};
  auto const found = works::destinations(passage, *judged.conditions);
  if (!found) {
    sheet.is_too_long = true;
    return lane;
  }
  for (auto const& destination : *found)
    lane.destinations.push_back(
        sheet.is_wide ? wide_entry(subject, destination, *judged.conditions, sheet.signals)
                      : narrow_entry(subject, destination, *judged.conditions, sheet.signals));
  return lane;
}

}  // namespace

TableSheet works_sheet(Subject const& subject, works::WorksJudgement const& judged,
                       TableRequest const& request) {
  TableSheet sheet;
  auto const& conditions = *judged.conditions;
  sheet.junction = subject.map.junction.name;
  sheet.is_works = subject.map.is_works();
  sheet.signals = names_of(subject.map.signals, conditions.variables());
  sheet.is_wide = sheet.signals.size() > most_columns;
  sheet.has_run_out = judged.has_run_out;
  sheet.is_decided = judged.too_large.empty() && !judged.has_run_out;
  sheet.has_restless = conditions.has_restless();
  sheet.has_too_many_states = conditions.has_too_many_states();
  sheet.row_count = combinations_of(conditions, conditions.reachable());
  if (!sheet.is_decided) return sheet;
  auto const& passages = judged.passages;
  for (std::size_t p = 0; p < passages.size(); ++p) {
    if (request.inlet && *request.inlet != passages.inlet(p)) continue;
    if (request.profile && *request.profile != passages.profile(p)) continue;
    if (passages[p].unknown != logic::Diagram::never) {
      auto const& name = subject.map.inlets[passages.inlet(p)].name;
      auto& untold = sheet.undecided_inlets;
      if (untold.empty() || untold.back() != name) untold.push_back(name);
      continue;
    }
    sheet.lanes.push_back(lane_of(subject, judged, passages[p], sheet));
  }
  sheet.has_run_out = conditions.diagram().has_run_out();
  sheet.is_decided = !sheet.has_run_out;
  return sheet;
}

}  // namespace leat::render
