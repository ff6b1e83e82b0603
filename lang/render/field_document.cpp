#include "lang/render/assignment_json.hpp"
#include "lang/render/documents.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

Json wet_json(model::Grid const& grid, water::WetCell const& wet) {
  return {{"at", place_json(grid.place(wet.cell))},
          {"strength", wet.strength},
          {"falling", wet.state == water::falling},
          {"source", wet.state == water::source},
          {"current", Json::array({wet.current.x, wet.current.y})}};
}

}  // namespace

Json assignment_json(Subject const& subject, Assignment const& assignment) {
  auto result = Json::object();
  for (auto [signal, is_on] : assignment) result[subject.map.signals[signal].name] = is_on;
  return result;
}

std::string field_document(std::vector<FieldPart> const& parts) {
  auto document = document_head("leat-field");
  document["junctions"] = Json::array();
  for (auto const& part : parts) {
    auto cells = Json::array(), spills = Json::array();
    auto const& grid = part.subject.design.grid;
    for (auto const& wet : part.wet) {
      cells.push_back(wet_json(grid, wet));
      if (wet.spills) spills.push_back(place_json(grid.place(wet.cell)));
    }
    document["junctions"].push_back({{"name", part.subject.map.junction.name},
                                     {"assignment", assignment_json(part.subject, part.assignment)},
                                     {"done", names_of(part.subject.map.signals, part.flips)},
                                     {"cells", std::move(cells)},
                                     {"spills", std::move(spills)}});
  }
  return printed(document);
}

}  // namespace leat::render
