#include <map>

#include "lang/render/documents.hpp"
#include "lang/render/json.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

Json route_json(Lane const& lane, RouteEntry const& route) {
  auto trapped = Json::array();
  for (auto at : route.trapped) trapped.push_back(place_json(at));
  return {{"inlet", lane.inlet},
          {"body", lane.body},
          {"verdict", word_of(route.verdict)},
          {"outlets", route.outlets},
          {"trapped", std::move(trapped)},
          {"spills", route.spills},
          {"unsure", route.is_unsure}};
}

Json assignment_json(TableSheet const& sheet, std::vector<Setting> const& settings) {
  auto assignment = Json::object();
  for (std::size_t i = 0; i < sheet.signals.size(); ++i) {
    if (settings[i] != Setting::any) assignment[sheet.signals[i]] = settings[i] == Setting::on;
  }
  return assignment;
}

Json row_json(TableSheet const& sheet, std::size_t row) {
  auto routes = Json::array();
  for (auto const& lane : sheet.lanes) routes.push_back(route_json(lane, lane.routes[row]));
  return {{"assignment", assignment_json(sheet, sheet.rows[row])}, {"routes", std::move(routes)}};
}

// Each different route with the assignments that lead to it; lanes with the same assignment share a
// row.
Json condensed_json(TableSheet const& sheet) {
  auto rows = Json::array();
  std::map<std::vector<Setting>, std::size_t> row_of;
  for (auto const& lane : sheet.lanes) {
    for (auto const& [route, settings_of_rows] : lane.condensed) {
      for (auto const& settings : settings_of_rows) {
        auto const [entry, is_new] = row_of.try_emplace(settings, rows.size());
        if (is_new) {
          rows.push_back(
              {{"assignment", assignment_json(sheet, settings)}, {"routes", Json::array()}});
        }
        rows[entry->second]["routes"].push_back(route_json(lane, route));
      }
    }
  }
  return rows;
}

Json conditions_json(TableSheet const& sheet) {
  auto list = Json::array();
  for (auto const& lane : sheet.lanes) {
    for (auto const& d : lane.destinations) {
      list.push_back({{"inlet", lane.inlet},
                      {"body", lane.body},
                      {"verdict", word_of(d.verdict)},
                      {"outlets", d.outlets},
                      {"condition", d.condition},
                      {"combinations", count_json(d.combinations)}});
    }
  }
  return list;
}

}  // namespace

std::string table_document(std::vector<TableSheet> const& sheets) {
  auto document = document_head("leat-table");
  document["junctions"] = Json::array();
  for (auto const& sheet : sheets) {
    auto rows = condensed_json(sheet);
    for (std::size_t row = 0; row < sheet.rows.size(); ++row) rows.push_back(row_json(sheet, row));
    document["junctions"].push_back({{"name", sheet.junction},
                                     {"signals", sheet.signals},
                                     {"rows", std::move(rows)},
                                     {"conditions", conditions_json(sheet)}});
  }
  return printed(document);
}

}  // namespace leat::render
