#include "lang/render/assignment_json.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

Json position_json(TrailPart const& part, std::uint32_t i) {
  auto const& graph = part.graph;
  auto const& position = graph.positions[i];
  auto const end = graph.ends[i];
  auto const dominator = part.dominators[i];
  bool const is_delivered = end == body::End::outlet;
  return {{"at", place_json(part.subject.design.grid.place(position.feet))},
          {"side", word_of(position.carried_to)},
          {"fallen", position.fallen},
          {"end", end == body::End::none ? Json(nullptr) : Json(word_of(end))},
          {"outlet",
           is_delivered ? Json(part.subject.map.outlets[graph.outlets[i]].name) : Json(nullptr)},
          {"trapped", static_cast<bool>(part.outcome.is_trapped[i])},
          {"component", part.components.component_of[i]},
          {"dominator", dominator == body::at_root ? Json(nullptr) : Json(dominator)}};
}

Json moves_json(body::RouteGraph const& graph) {
  auto list = Json::array();
  for (std::uint32_t from = 0; from < graph.size(); ++from) {
    for (auto s = graph.first_step[from]; s < graph.first_step[from + 1]; ++s) {
      auto const& step = graph.steps[s];
      list.push_back(
          {{"from", from}, {"to", step.to}, {"rule", word_of(step.rule)}, {"sure", step.is_sure}});
    }
  }
  return list;
}

Json paces_json(TrailPart const& part) {
  auto const ticks = [](std::optional<int> time) { return time ? Json(*time) : Json(nullptr); };
  auto list = Json::array();
  for (auto const& pace : part.paces) {
    auto narrowest = Json::array();
    for (auto const& narrow : pace.throughput.narrowest)
      narrowest.push_back(place_json(part.subject.design.grid.place(narrow.cell)));
    bool const is_limited = pace.throughput.rate != body::no_limit;
    list.push_back({{"outlet", part.subject.map.outlets[pace.outlet].name},
                    {"quickest", ticks(pace.quickest)},
                    {"longest", ticks(pace.longest)},
                    {"per_second",
                     is_limited ? Json(static_cast<double>(pace.throughput.rate) / 1e6) : nullptr},
                    {"narrowest", std::move(narrowest)}});
  }
  return list;
}

// Where joins lead on: when bodies leave the works; the joins whose time is said count with it.
Json arrivals_json(TrailPart const& part) {
  auto const ticks = [](std::optional<works::Ticks> time) {
    return time ? Json(*time) : Json(nullptr);
  };
  auto list = Json::array();
  for (auto const& arrival : part.arrivals)
    list.push_back({{"outlet", part.subject.map.outlets[arrival.outlet].name},
                    {"quickest", ticks(arrival.quickest)},
                    {"longest", ticks(arrival.longest)},
                    {"untold_joins", arrival.has_untold}});
  return list;
}

}  // namespace

std::string trail_document(std::vector<TrailPart> const& parts) {
  auto document = document_head("leat-trail");
  document["junctions"] = Json::array();
  for (auto const& part : parts) {
    auto positions = Json::array();
    for (std::uint32_t i = 0; i < part.graph.size(); ++i) {
      positions.push_back(position_json(part, i));
    }
    document["junctions"].push_back({{"name", part.subject.map.junction.name},
                                     {"inlet", part.subject.map.inlets[part.inlet].name},
                                     {"body", part.subject.map.profiles[part.profile].name},
                                     {"assignment", assignment_json(part.subject, part.assignment)},
                                     {"done", names_of(part.subject.map.signals, part.flips)},
                                     {"positions", std::move(positions)},
                                     {"moves", moves_json(part.graph)},
                                     {"starts", part.graph.starts},
                                     {"paces", paces_json(part)},
                                     {"arrivals", arrivals_json(part)}});
  }
  return printed(document);
}

}  // namespace leat::render
