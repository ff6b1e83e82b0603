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

// Where it comes about and by which inputs, one entry for each of them.
Json flips_json(GuardPart const& part, std::size_t guard) {
  auto flips = Json::array();
  for (auto const& place : part.places) {
    for (auto const& [signal, goes_on] : place.flips[guard])
      flips.push_back({{"place", place.name},
                       {"signal", part.subject.map.signals[signal].name},
                       {"on", goes_on}});
  }
  return flips;
}

Json guard_json(GuardPart const& part, std::size_t number) {
  auto const& judgement = part.judgement;
  auto const& guard = judgement.guards[number];
  auto const signals = names_of(part.subject.map.signals, judgement.variables);
  auto const [before, switched] = before_event(part.subject, guard.example.flips, guard.event);
  auto dangers = Json::array();
  for (auto const& threat : guard.threats)
    dangers.push_back(danger_json(part.subject, threat.danger));
  Json told{
      {"signal", part.subject.map.signals[guard.event].name},
      {"on", guard.goes_on},
      {"condition", condition_expression(guard.rows, judgement.combinations.reachable, signals)},
      {"wait_ticks", ticks_json(guard.wait)},
      {"clearing_ticks", ticks_json(guard.clearing)},
      {"dangers", std::move(dangers)},
      {"way", names_of(part.subject.map.signals, before)},
      {"switched_by", part.subject.map.signals[switched].name}};
  if (!part.places.empty()) told["flips"] = flips_json(part, number);
  return told;
}

}  // namespace

std::string guard_document(std::vector<GuardPart> const& parts) {
  auto document = document_head("leat-guard");
  document["junctions"] = Json::array();
  for (auto const& part : parts) {
    auto changes = Json::array();
    for (std::size_t guard = 0; guard < part.judgement.guards.size(); ++guard)
      changes.push_back(guard_json(part, guard));
    Json told{{"name", part.subject.map.junction.name},
              {"ticks_per_second", part.subject.design.practice[model::Rule::ticks_per_second]},
              {"is_complete", part.judgement.switchings.is_complete},
              {"changes", std::move(changes)}};
    for (auto const& place : part.places) told["places"].push_back(place.name);
    document["junctions"].push_back(std::move(told));
  }
  return printed(document);
}

}  // namespace leat::render
