#include "lang/render/table_sheet.hpp"

#include <fmt/format.h>

#include "engine/tables/route_groups.hpp"
#include "lang/render/condition.hpp"
#include "lang/render/example.hpp"
#include "lang/render/table_entry.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::vector<Setting> settings_of(logic::Cube const& cube, std::size_t inputs) {
  std::vector<Setting> settings(inputs, Setting::any);
  for (std::size_t i = 0; i < inputs; ++i) {
    if ((cube.care >> i & 1u) == 0) continue;
    settings[i] = (cube.value >> i & 1u) != 0 ? Setting::on : Setting::off;
  }
  return settings;
}

std::vector<Setting> settings_of(logic::Row row, std::size_t inputs) {
  std::vector<Setting> settings(inputs, Setting::off);
  for (std::size_t i = 0; i < inputs; ++i) {
    if ((row >> (inputs - 1 - i) & 1u) != 0) settings[i] = Setting::on;
  }
  return settings;
}

RouteEntry entry_of(Subject const& subject, tables::Route const& route) {
  RouteEntry entry{route.verdict,
                   names_of(subject.map.outlets, route.outlets),
                   {},
                   route.spills,
                   route.is_unsure};
  for (auto c : route.trapped) entry.trapped.push_back(subject.design.grid.place(c));
  return entry;
}

std::vector<std::vector<Setting>> settings_of(std::vector<logic::Cube> const& cubes,
                                              logic::RowSet const& reachable) {
  std::vector<std::vector<Setting>> rows;
  for (auto const& cube : logic::disjoint_cubes(cubes, reachable.inputs())) {
    bool const is_reached = !(logic::rows_of({cube}, reachable.inputs()) & reachable).is_empty();
    if (is_reached) rows.push_back(settings_of(cube, static_cast<std::size_t>(reachable.inputs())));
  }
  return rows;
}

std::vector<RouteRows> condensed_routes(Subject const& subject, Judgement const& judged,
                                        model::InletId inlet, model::ProfileId profile) {
  std::vector<RouteRows> condensed;
  for (auto const& group :
       tables::route_groups(judged.combinations, judged.routes, inlet, profile)) {
    condensed.push_back({entry_of(subject, judged.routes.at(group.situation, inlet, profile)),
                         settings_of(group.condition, judged.combinations.reachable)});
  }
  return condensed;
}

Lane lane_of(Subject const& subject, Judgement const& judged, model::InletId inlet,
             model::ProfileId profile, TableSheet const& sheet) {
  Lane lane{subject.map.inlets[inlet].name, subject.map.profiles[profile].name, {}, {}, {}};
  if (!judged.is_decided) return lane;
  for (auto const& d : tables::destinations(judged.combinations, judged.routes, inlet, profile)) {
    lane.destinations.push_back(entry_of(subject, d, judged.combinations.reachable, sheet.signals));
  }
  if (!sheet.is_full) lane.condensed = condensed_routes(subject, judged, inlet, profile);
  if (!sheet.is_full) return lane;
  for (auto situation : judged.combinations.situation_of_row) {
    if (situation == explore::Combinations::never) continue;
    lane.routes.push_back(entry_of(subject, judged.routes.at(situation, inlet, profile)));
  }
  return lane;
}

}  // namespace

DestinationEntry entry_of(Subject const& subject, tables::Destination const& destination,
                          logic::RowSet const& reachable, std::vector<std::string> const& inputs) {
  DestinationEntry entry{destination.verdict,
                         names_of(subject.map.outlets, destination.outlets),
                         {},
                         {},
                         {},
                         {},
                         static_cast<Count>(destination.rows.count())};
  auto const cubes = logic::disjoint_cubes(destination.condition, static_cast<int>(inputs.size()));
  for (auto const& cube : cubes) {
    auto const rows = logic::rows_of({cube}, reachable.inputs()) & reachable;
    if (rows.is_empty()) continue;
    entry.rows.push_back(settings_of(cube, inputs.size()));
    entry.combinations_of_row.push_back(rows.count());
  }
  entry.condition = condition_expression(destination.rows, reachable, inputs);
  entry.words = condition_words(destination.rows, reachable, inputs);
  return entry;
}

std::string undecided_words(TableSheet const& sheet) {
  if (sheet.is_restless) return "the signals never come to rest as built";
  if (sheet.unended) return unended_words(*sheet.unended);
  auto const signals = counted(sheet.signals.size(), "signal");
  return sheet.has_run_out
             ? fmt::format("the conditions of its routes, by {}, take more than can be held",
                           signals)
             : fmt::format("{} are too many to run", signals);
}

std::string destination_words(std::vector<std::string> const& outlets) {
  std::string words;
  for (auto const& outlet : outlets) words += (words.empty() ? "" : ", ") + outlet;
  return words.empty() ? "nothing" : words;
}

TableSheet table_sheet(Subject const& subject, Judgement const& judged,
                       TableRequest const& request) {
  TableSheet sheet;
  sheet.junction = subject.map.junction.name;
  sheet.signals = names_of(subject.map.signals, judged.variables);
  sheet.is_full = request.is_full;
  sheet.is_decided = judged.is_decided;
  sheet.has_restless = judged.has_restless;
  sheet.is_restless = never_rests(judged);
  sheet.unended = judged.unended;
  sheet.row_count = static_cast<Count>(judged.combinations.reachable.count());
  for (model::InletId i = 0; i < subject.design.inlets.size(); ++i) {
    if (request.inlet && *request.inlet != i) continue;
    for (model::ProfileId p = 0; p < subject.design.profiles.size(); ++p) {
      if (request.profile && *request.profile != p) continue;
      sheet.lanes.push_back(lane_of(subject, judged, i, p, sheet));
    }
  }
  if (!request.is_full || !judged.is_decided) return sheet;
  for (logic::Row row = 0; row < judged.combinations.situation_of_row.size(); ++row) {
    if (judged.combinations.reachable.contains(row))
      sheet.rows.push_back(settings_of(row, sheet.signals.size()));
  }
  return sheet;
}

}  // namespace leat::render
