#include "lang/render/condition.hpp"
#include "lang/render/example.hpp"
#include "lang/render/guard.hpp"
#include "lang/render/json.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using explore::Danger;

Json danger_json(Subject const& subject, Danger const& danger) {
  auto const& map = subject.map;
  return {{"kind", word_of(danger.kind)},
          {"inlet", map.inlets[danger.inlet].name},
          {"body", map.profiles[danger.profile].name},
          {"outlet", danger.outlet ? Json(map.outlets[*danger.outlet].name) : Json(nullptr)},
          {"cells", places_json(subject.design.grid, danger.cells)}};
}

Json ticks_json(std::optional<int> ticks) { return ticks ? Json(*ticks) : Json(nullptr); }

Json guard_json(GuardPart const& part, explore::Guard const& guard) {
  auto const& judgement = part.judgement;
  auto const signals = names_of(part.subject.map.signals, judgement.variables);
  auto const [before, switched] = before_event(part.subject, guard.example.flips, guard.event);
  auto dangers = Json::array();
  for (auto const& threat : guard.threats)
    dangers.push_back(danger_json(part.subject, threat.danger));
  return {
      {"signal", part.subject.map.signals[guard.event].name},
      {"on", guard.goes_on},
      {"condition", condition_expression(guard.rows, judgement.combinations.reachable, signals)},
      {"wait_ticks", ticks_json(guard.wait)},
      {"clearing_ticks", ticks_json(guard.clearing)},
      {"dangers", std::move(dangers)},
      {"way", names_of(part.subject.map.signals, before)},
      {"switched_by", part.subject.map.signals[switched].name}};
}

}  // namespace

std::string guard_document(std::vector<GuardPart> const& parts) {
  auto document = document_head("leat-guard");
  document["junctions"] = Json::array();
  for (auto const& part : parts) {
    auto changes = Json::array();
    for (auto const& guard : part.judgement.guards) changes.push_back(guard_json(part, guard));
    Json told{{"name", part.subject.map.junction.name},
              {"ticks_per_second", part.subject.design.practice[model::Rule::ticks_per_second]},
              {"is_complete", part.judgement.switchings.is_complete},
              {"changes", std::move(changes)}};
    if (!part.places.empty()) told["places"] = part.places;
    document["junctions"].push_back(std::move(told));
  }
  return printed(document);
}

}  // namespace leat::render
