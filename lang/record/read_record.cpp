#include <filesystem>

#include "lang/record/record.hpp"
#include "lang/render/json.hpp"

namespace leat::record {

namespace {

using render::Json;

// Reads by the schema's shape; whatever is not of it throws the library's exceptions, which end in
// `read`.
std::vector<std::string> texts(Json const& json) { return json.get<std::vector<std::string>>(); }

Sum sum_of(Json const& json) {
  Sum sum;
  for (auto const& product : json) {
    auto& literals = sum.emplace_back();
    for (auto const& text : product) {
      auto literal = text.get<std::string>();
      bool const is_on = !literal.starts_with("not ");
      literals.push_back({is_on ? literal : literal.substr(4), is_on});
    }
  }
  return sum;
}

Route route_of(Json const& json) {
  Route route;
  route.inlet = json.at("inlet").get<std::string>();
  route.body = json.at("body").get<std::string>();
  for (auto const& end : json.at("ends"))
    route.ends.push_back({end.at("outlet").get<std::string>(), sum_of(end.at("when"))});
  route.trapped = sum_of(json.at("trapped"));
  route.spilled = sum_of(json.at("spilled"));
  route.unsure = sum_of(json.at("unsure"));
  route.barred = sum_of(json.at("barred"));
  return route;
}

Finding finding_of(Json const& json) {
  auto const& event = json.at("event");
  return {json.at("name").get<std::string>(),
          texts(json.at("inlets")),
          texts(json.at("outlets")),
          texts(json.at("bodies")),
          texts(json.at("signals")),
          event.is_null() ? std::string() : event.get<std::string>(),
          json.at("accepted").get<bool>(),
          sum_of(json.at("when"))};
}

Time time_of(Json const& json) {
  Time time;
  time.of = json.at("of").get<std::string>();
  if (time.of == "trip") {
    time.inlet = json.at("inlet").get<std::string>();
    time.body = json.at("body").get<std::string>();
  } else {
    time.event = json.at("event").get<std::string>();
    time.goes_on = json.at("goes").get<std::string>() == "on";
  }
  if (!json.at("ticks").is_null()) time.ticks = json.at("ticks").get<int>();
  return time;
}

Junction junction_of(Json const& json) {
  Junction junction;
  junction.name = json.at("name").get<std::string>();
  for (auto const& route : json.at("routes")) junction.routes.push_back(route_of(route));
  for (auto const& finding : json.at("findings")) junction.findings.push_back(finding_of(finding));
  for (auto const& time : json.at("times")) junction.times.push_back(time_of(time));
  return junction;
}

// Deeper than any record; the library's own recursion is bounded by it.
constexpr std::size_t most_depth = 16;

bool is_too_deep(std::string const& text) {
  std::size_t depth = 0;
  bool is_in_text = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    char const c = text[i];
    if (is_in_text) {
      if (c == '\\') ++i;
      is_in_text = c != '"';
    } else if (c == '"') {
      is_in_text = true;
    } else if (c == '[' || c == '{') {
      if (++depth > most_depth) return true;
    } else if ((c == ']' || c == '}') && depth > 0) {
      --depth;
    }
  }
  return false;
}

}  // namespace

std::string path_beside(std::string const& design) {
  return std::filesystem::path(design).replace_extension(".record.json").string();
}

std::variant<Record, Unreadable> read(std::string const& text) {
  if (is_too_deep(text)) return Unreadable{"is no record: its brackets are nested too deep"};
  try {
    auto const json = Json::parse(text);
    if (json.at("format") != "leat-record") return Unreadable{"is no record of a design"};
    if (json.at("version") != 1) return Unreadable{"is a record of another version of the format"};
    Record record;
    for (auto const& junction : json.at("junctions"))
      record.junctions.push_back(junction_of(junction));
    return record;
  } catch (Json::parse_error const& error) {
    return Unreadable{"is no JSON from byte " + std::to_string(error.byte) + " on"};
  } catch (Json::exception const&) {
    return Unreadable{"is JSON, but not of the shape of a record"};
  }
}

}  // namespace leat::record
