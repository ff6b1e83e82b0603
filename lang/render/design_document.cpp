#include "lang/render/documents.hpp"
#include "lang/render/json.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

Json expression_json(Subject const& subject, model::ExpressionId id) {
  using enum model::Operator;
  auto const& node = subject.design.circuit.expressions[id];
  auto const operand = [&](std::uint32_t of) { return expression_json(subject, of); };
  switch (node.op) {
    case constant:
      return node.left != 0;
    case signal:
      return subject.map.signals[node.left].name;
    case negation:
      return Json::array({"not", operand(node.left)});
    case conjunction:
      return Json::array({"and", operand(node.left), operand(node.right)});
    case disjunction:
      return Json::array({"or", operand(node.left), operand(node.right)});
    case parity:
      return Json::array({"xor", operand(node.left), operand(node.right)});
  }
  return nullptr;
}

Json practice_json(model::Practice const& practice) {
  auto result = Json::object();
  for (auto const& row : model::rule_table) result[std::string(row.name)] = practice[row.rule];
  return result;
}

Json materials_json(Subject const& subject) {
  auto list = Json::array();
  for (std::size_t i = 0; i < subject.design.materials.size(); ++i) {
    auto const& m = subject.design.materials[i];
    list.push_back({{"name", subject.map.materials[i].name},
                    {"is_source", m.is_source},
                    {"water_enters", m.water_enters},
                    {"body_enters", m.body_enters},
                    {"carries", m.carries},
                    {"bears_sources", m.bears_sources},
                    {"shows_slope", m.shows_slope},
                    {"is_plate", m.is_plate}});
  }
  return list;
}

Json signals_json(Subject const& subject) {
  auto list = Json::array();
  for (model::SignalId s = 0; s < subject.design.circuit.signals.size(); ++s) {
    auto const& signal = subject.design.circuit.signals[s];
    Json entry{{"name", subject.map.signals[s].name}, {"kind", word_of(signal.kind)}};
    if (signal.kind != model::SignalKind::wire) entry["starts_on"] = signal.starts_on;
    if (!signal.is_input()) entry["definition"] = expression_json(subject, signal.definition);
    if (signal.kind == model::SignalKind::latch)
      entry["reset"] = expression_json(subject, signal.reset);
    if (signal.ticks > 0) entry["ticks"] = signal.ticks;
    list.push_back(std::move(entry));
  }
  return list;
}

// Only fills that the drawing uses are listed: what fills the rim has no mark.
struct DrawnFills {
  Json fills = Json::array();
  std::vector<int> number;  // by FillId; -1: not drawn
};

void draw_fill(Subject const& subject, model::FillId id, DrawnFills& drawn) {
  if (drawn.number[id] >= 0) return;
  drawn.number[id] = static_cast<int>(drawn.fills.size());
  auto const& fill = subject.design.fills[id];
  drawn.fills.push_back(
      {{"mark", subject.map.fills[id].name},
       {"powered", subject.map.materials[fill.powered].name},
       {"unpowered", subject.map.materials[fill.unpowered].name},
       {"control", fill.control ? expression_json(subject, *fill.control) : Json(nullptr)}});
}

Json cells_json(Subject const& subject, DrawnFills& drawn) {
  auto const& grid = subject.design.grid;
  auto levels = Json::array();
  for (int z = 0; z < grid.height(); ++z) {
    auto level = Json::array();
    for (int y = 0; y < grid.depth(); ++y) {
      auto row = Json::array();
      for (int x = 0; x < grid.width(); ++x) {
        auto const id = subject.design.fill_of[grid.cell({x, y, z})];
        draw_fill(subject, id, drawn);
        row.push_back(drawn.number[id]);
      }
      level.push_back(std::move(row));
    }
    levels.push_back(std::move(level));
  }
  return levels;
}

Json ports_json(Subject const& subject, std::vector<model::Port> const& ports,
                std::vector<source::Named> const& names) {
  auto list = Json::array();
  for (std::size_t i = 0; i < ports.size(); ++i) {
    list.push_back(
        {{"name", names[i].name}, {"cells", places_json(subject.design.grid, ports[i].cells)}});
  }
  return list;
}

Json plates_json(Subject const& subject) {
  auto list = Json::array();
  for (auto const& plate : subject.design.plates) {
    list.push_back({{"signal", subject.map.signals[plate.signal].name},
                    {"cells", places_json(subject.design.grid, plate.cells)}});
  }
  return list;
}

Json bodies_json(Subject const& subject) {
  auto list = Json::array();
  for (std::size_t i = 0; i < subject.design.profiles.size(); ++i) {
    auto const& body = subject.design.profiles[i];
    list.push_back({{"name", subject.map.profiles[i].name},
                    {"footprint", body.footprint},
                    {"height", body.height},
                    {"floats", body.floats},
                    {"breath", body.breath},
                    {"safe_fall", body.safe_fall}});
  }
  return list;
}

Json junction_json(Subject const& subject) {
  auto const& design = subject.design;
  DrawnFills drawn{Json::array(), std::vector<int>(design.fills.size(), -1)};
  auto cells = cells_json(subject, drawn);
  return {{"name", subject.map.junction.name},
          {"title", subject.map.title},
          {"size",
           {{"x", design.grid.width()}, {"y", design.grid.depth()}, {"z", design.grid.height()}}},
          {"outside", design.outside_is_open ? "open" : "rock"},
          {"practice", practice_json(design.practice)},
          {"materials", materials_json(subject)},
          {"signals", signals_json(subject)},
          {"fills", std::move(drawn.fills)},
          {"cells", std::move(cells)},
          {"inlets", ports_json(subject, design.inlets, subject.map.inlets)},
          {"outlets", ports_json(subject, design.outlets, subject.map.outlets)},
          {"plates", plates_json(subject)},
          {"bodies", bodies_json(subject)}};
}

}  // namespace

std::string design_document(std::vector<Subject> const& subjects) {
  auto document = document_head("leat-design");
  document["junctions"] = Json::array();
  for (auto const& subject : subjects) document["junctions"].push_back(junction_json(subject));
  return printed(document);
}

}  // namespace leat::render
