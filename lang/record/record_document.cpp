#include "lang/record/record.hpp"
#include "lang/render/json.hpp"

namespace leat::record {

namespace {

using render::Json;

Json sum_json(Sum const& sum) {
  auto products = Json::array();
  for (auto const& product : sum) {
    auto literals = Json::array();
    for (auto const& literal : product)
      literals.push_back(literal.is_on ? literal.signal : "not " + literal.signal);
    products.push_back(std::move(literals));
  }
  return products;
}

Json route_json(Route const& route) {
  auto ends = Json::array();
  for (auto const& end : route.ends)
    ends.push_back({{"outlet", end.outlet}, {"when", sum_json(end.when)}});
  return {{"inlet", route.inlet},
          {"body", route.body},
          {"ends", std::move(ends)},
          {"trapped", sum_json(route.trapped)},
          {"spilled", sum_json(route.spilled)},
          {"unsure", sum_json(route.unsure)},
          {"barred", sum_json(route.barred)}};
}

Json finding_json(Finding const& finding) {
  return {{"name", finding.name},
          {"inlets", finding.inlets},
          {"outlets", finding.outlets},
          {"bodies", finding.bodies},
          {"signals", finding.signals},
          {"event", finding.event.empty() ? Json(nullptr) : Json(finding.event)},
          {"accepted", finding.is_accepted},
          {"when", sum_json(finding.when)}};
}

Json time_json(Time const& time) {
  Json json{{"of", time.of}};
  if (time.of == "trip") {
    json["inlet"] = time.inlet;
    json["body"] = time.body;
  } else {
    json["event"] = time.event;
    json["goes"] = time.goes_on ? "on" : "off";
  }
  json["ticks"] = time.ticks ? Json(*time.ticks) : Json(nullptr);
  return json;
}

template <class Values, class Print>
Json list_of(Values const& values, Print print) {
  auto list = Json::array();
  for (auto const& value : values) list.push_back(print(value));
  return list;
}

}  // namespace

std::string document(Record const& record) {
  auto json = render::document_head("leat-record");
  json["junctions"] = list_of(record.junctions, [](Junction const& junction) {
    return Json{{"name", junction.name},
                {"routes", list_of(junction.routes, route_json)},
                {"findings", list_of(junction.findings, finding_json)},
                {"times", list_of(junction.times, time_json)}};
  });
  return render::printed(json);
}

}  // namespace leat::record
