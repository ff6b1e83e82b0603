#include "lang/render/json.hpp"
#include "lang/render/machine.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

Json events_json(MachineSheet const& sheet, std::vector<Event> const& events) {
  auto list = Json::array();
  for (auto const& event : events)
    list.push_back(Json::array({sheet.subject.map.signals[event.input].name, event.is_on}));
  return list;
}

Json loop_json(MachineSheet const& sheet, logic::Oscillation const& oscillation) {
  return {{"loop", names_of(sheet.subject.map.signals, oscillation.loop)},
          {"period", oscillation.period}};
}

Json values_json(MachineSheet const& sheet) {
  auto list = Json::array();
  for (auto const& value : sheet.graph.values) {
    auto memory = Json::object();
    for (std::size_t i = 0; i < sheet.memory.size(); ++i)
      memory[sheet.subject.map.signals[sheet.memory[i]].name] = (value.memory >> i & 1u) != 0;
    list.push_back({{"memory", std::move(memory)},
                    {"states", value.states},
                    {"events", events_json(sheet, events_to(sheet, value.nearest))}});
  }
  return list;
}

Json changes_json(MachineSheet const& sheet) {
  auto list = Json::array();
  for (auto const& change : sheet.changes) {
    list.push_back({{"from", change.from},
                    {"to", change.to == explore::States::none ? Json(nullptr) : Json(change.to)},
                    {"signal", sheet.subject.map.signals[sheet.inputs[change.event]].name},
                    {"on", change.is_on},
                    {"always", change.is_always}});
  }
  return list;
}

// Each cube is an object of the signals that matter in it.
Json never_json(MachineSheet const& sheet) {
  if (!sheet.never_reached) return nullptr;
  auto list = Json::array();
  for (auto const& cube : logic::irredundant_cover(*sheet.never_reached, *sheet.never_reached)) {
    auto part = Json::object();
    for (std::size_t i = 0; i < sheet.memory.size(); ++i) {
      if ((cube.care >> i & 1u) != 0)
        part[sheet.subject.map.signals[sheet.memory[i]].name] = (cube.value >> i & 1u) != 0;
    }
    list.push_back(std::move(part));
  }
  return list;
}

Json oscillations_json(MachineSheet const& sheet) {
  auto list = Json::array();
  for (auto const& restless : sheet.graph.restless) {
    auto events = events_to(sheet, restless.state);
    events.push_back({sheet.inputs[restless.event], restless.is_on});
    auto entry = loop_json(sheet, restless.oscillation);
    entry["events"] = events_json(sheet, events);
    entry["states"] = restless.count;
    list.push_back(std::move(entry));
  }
  return list;
}

}  // namespace

bool is_listable(MachineSheet const& sheet) {
  constexpr std::size_t most_values = std::size_t{1} << 16, most_events = std::size_t{1} << 20;
  if (sheet.graph.values.size() > most_values) return false;
  std::size_t events = 0;
  for (auto const& value : sheet.graph.values) events += value.events;
  for (auto const& restless : sheet.graph.restless)
    events += sheet.states.events_to(restless.state).size() + 1;
  return events <= most_events;
}

std::string machine_document(MachineSheet const& sheet) {
  auto const& names = sheet.subject.map.signals;
  auto const& lost = sheet.without_return;
  auto document = document_head("leat-machine");
  document["decided"] = sheet.is_decided;
  document["inputs"] = names_of(names, sheet.inputs);
  document["left_out"] = names_of(names, sheet.left_out);
  document["memory"] = names_of(names, sheet.memory);
  document["states"] = sheet.states.size();
  document["counted"] = sheet.counted ? Json(sheet.counted->states) : Json(nullptr);
  document["values"] = values_json(sheet);
  document["changes"] = changes_json(sheet);
  document["never_reached"] = never_json(sheet);
  document["without_return"] = {
      {"states", lost.size()},
      {"events",
       lost.empty() ? Json(nullptr) : events_json(sheet, events_to(sheet, lost.front()))}};
  document["unquiet_as_built"] = sheet.states.unquiet_as_built
                                     ? loop_json(sheet, *sheet.states.unquiet_as_built)
                                     : Json(nullptr);
  document["oscillations"] = oscillations_json(sheet);
  return printed(document);
}

}  // namespace leat::render
