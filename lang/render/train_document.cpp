#include "lang/render/json.hpp"
#include "lang/render/train.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

Json body_json(Subject const& subject, explore::Arrival const& body) {
  return {{"entered", body.entered},
          {"ended", body.ended},
          {"outlet", body.outlet ? Json(subject.map.outlets[*body.outlet].name) : Json(nullptr)},
          {"spilled", body.end == body::End::spill},
          {"cell", body.cell == model::no_cell ? Json(nullptr)
                                               : place_json(subject.design.grid.place(body.cell))}};
}

}  // namespace

std::string train_document(std::vector<TrainPart> const& parts) {
  auto document = document_head("leat-train");
  document["trains"] = Json::array();
  for (auto const& [subject, order, run] : parts) {
    auto bodies = Json::array();
    for (auto const& body : run.bodies) bodies.push_back(body_json(subject, body));
    document["trains"].push_back({{"junction", subject.map.junction.name},
                                  {"inlet", subject.map.inlets[order.inlet].name},
                                  {"body", subject.map.profiles[order.profile].name},
                                  {"interval_ticks", order.interval},
                                  {"done", names_of(subject.map.signals, order.flips)},
                                  {"ticks", run.ticks},
                                  {"had_choice", run.had_choice},
                                  {"bodies", std::move(bodies)}});
  }
  return printed(document);
}

}  // namespace leat::render
