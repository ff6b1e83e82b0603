#include "lang/render/bill/bill_sheet.hpp"
#include "lang/render/json.hpp"

namespace leat::render {

namespace {

Json line_json(BillLine const& line) {
  Json json{{"kind", word_of(line.kind)}, {"what", line.what}, {"count", line.count}};
  if (line.kind == BillKind::part) {
    json["signals"] = line.names;
    return json;
  }
  json["spare"] = line.spare;
  json["levels"] = line.levels;
  return json;
}

Json step_json(BillSheet const& sheet, BuildingStep const& step) {
  using Kind = BuildingStep::Kind;
  auto const& grid = sheet.subject.design.grid;
  auto const& around = sheet.needs.around;
  switch (step.kind) {
    case Kind::floor:
      return {{"step", "floor"}, {"around", around.front()}};
    case Kind::roof:
      return {{"step", "roof"}, {"around", around.back()}};
    case Kind::level:
      return {{"step", "level"},
              {"level", step.level},
              {"around", around[static_cast<std::size_t>(step.level + 1)]}};
    case Kind::water:
      break;
  }
  auto const& pool = sheet.pools.pools[step.pool];
  return {{"step", "water"},
          {"after_level", pool.highest},
          {"sources", places_json(grid, pool.sources)},
          {"wet", places_json(grid, pool.wet)},
          {"holders", places_json(grid, pool.holders)},
          {"around", pool.around}};
}

Json sheet_json(BillSheet const& sheet) {
  auto lines = Json::array(), steps = Json::array(), placed = Json::array();
  for (auto const& line : sheet.lines) lines.push_back(line_json(line));
  for (auto const& step : building_steps(sheet)) steps.push_back(step_json(sheet, step));
  for (auto const& [name, count] : sheet.placed)
    placed.push_back({{"design", name}, {"count", count}});
  return {{"name", sheet.subject.map.junction.name},
          {"lines", std::move(lines)},
          {"around", sheet.around()},
          {"placed", std::move(placed)},
          {"steps", std::move(steps)},
          {"each_source_tried", sheet.pools.is_each_tried}};
}

}  // namespace

std::string bill_document(std::vector<BillSheet> const& sheets) {
  auto document = document_head("leat-bill");
  document["junctions"] = Json::array();
  for (auto const& sheet : sheets) document["junctions"].push_back(sheet_json(sheet));
  return printed(document);
}

}  // namespace leat::render
