#include <fmt/format.h>

#include "lang/render/condition.hpp"
#include "lang/render/page/page.hpp"
#include "lang/render/page/page_pieces.hpp"
#include "lang/render/picture/symbols.hpp"
#include "lang/render/trail_text.hpp"
#include "lang/render/water_signs.hpp"
#include "lang/render/words.hpp"

// The data of a page. Long lists are flat: numbers that belong together stand behind each other,
// and ascending ones are told by their differences, so that they deflate well.
namespace leat::render {

namespace {

using playback::Playback;

Json number_or_none(std::uint32_t number) {
  return number == playback::none ? Json(-1) : Json(number);
}

std::string bits(std::vector<bool> const& values) {
  std::string text;
  for (bool value : values) text += value ? '1' : '0';
  return text;
}

std::pair<std::string_view, std::string_view> state_words(model::SignalKind kind) {
  if (kind == model::SignalKind::button) return {"pressed", "let go"};
  if (kind == model::SignalKind::plate) return {"pressed", "free"};
  return {"on", "off"};
}

Json signals_data(PagePart const& part, std::size_t first_file) {
  auto list = Json::array();
  auto const& [design, map, text, is_alone] = part.subject;
  for (std::size_t s = 0; s < design.circuit.signals.size(); ++s) {
    auto const kind = design.circuit.signals[s].kind;
    auto const [on, off] = state_words(kind);
    list.push_back({{"name", map.signals[s].name},
                    {"kind", word_of(kind)},
                    {"on", on},
                    {"off", off},
                    {"line", line_data(text, map.signals[s].span, first_file)}});
  }
  return list;
}

Json fills_data(Subject const& subject, std::size_t first_file) {
  auto list = Json::array();
  auto const& design = subject.design;
  for (model::FillId id = 0; id < design.fills.size(); ++id) {
    auto const& fill = design.fills[id];
    Json told{{"mark", subject.map.fills[id].name},
              {"on", subject.map.materials[fill.powered].name},
              {"off", subject.map.materials[fill.unpowered].name},
              {"line", line_data(subject.text, subject.map.fills[id].span, first_file)}};
    if (fill.is_switched()) {
      told["when"] = expression_text(design.circuit, subject.map.signals, *fill.control);
      told["signs"] = {material_symbol(fill.powered), material_symbol(fill.unpowered)};
    }
    list.push_back(std::move(told));
  }
  return list;
}

// Pairs of a fill and how many cells in a row have it.
Json cells_data(model::Design const& design) {
  auto runs = Json::array();
  auto const& grid = design.grid;
  std::optional<model::FillId> last;
  std::size_t count = 0;
  auto const put = [&] {
    if (!last) return;
    runs.push_back(*last);
    runs.push_back(count);
  };
  for (int z = 0; z < grid.height(); ++z) {
    for (int y = 0; y < grid.depth(); ++y) {
      for (int x = 0; x < grid.width(); ++x) {
        auto const fill = design.fill_of[grid.cell({x, y, z})];
        if (last != fill) {
          put();
          count = 0;
        }
        last = fill;
        ++count;
      }
    }
  }
  put();
  return runs;
}

Json numbers_of(model::Grid const& grid, std::vector<model::Cell> const& cells) {
  auto list = Json::array();
  for (auto c : cells) list.push_back(playback::number_of(grid, c));
  return list;
}

Json ports_data(model::Grid const& grid, std::vector<model::Port> const& ports,
                std::vector<source::Named> const& names) {
  auto list = Json::array();
  for (std::size_t i = 0; i < ports.size(); ++i)
    list.push_back({{"name", names[i].name}, {"cells", numbers_of(grid, ports[i].cells)}});
  return list;
}

Json joins_data(Subject const& subject) {
  auto list = Json::array();
  for (auto const& join : subject.design.joins)
    list.push_back(Json::array({join.outlet, join.inlet}));
  return list;
}

Json bodies_data(Subject const& subject) {
  auto list = Json::array();
  for (std::size_t i = 0; i < subject.design.profiles.size(); ++i) {
    auto const& profile = subject.design.profiles[i];
    list.push_back({{"name", subject.map.profiles[i].name},
                    {"footprint", profile.footprint},
                    {"height", profile.height}});
  }
  return list;
}

// How a body's way ends, in words: by the end of its last position, and by outlet.
void put_endings(Subject const& subject, Json& data) {
  using body::End, body::EndingKind;
  auto endings = Json::object();
  for (auto end : {End::dry, End::still, End::pinned})
    endings[std::string(word_of(end))] =
        ending_words(subject, {EndingKind::rest, end, body::no_outlet, {}, {}});
  endings["spill"] =
      ending_words(subject, {EndingKind::spill, End::spill, body::no_outlet, {}, {}});
  endings["loop"] = "Goes round for ever";
  auto deliveries = Json::array();
  for (model::OutletId outlet = 0; outlet < subject.design.outlets.size(); ++outlet)
    deliveries.push_back(ending_words(subject, {EndingKind::outlet, End::outlet, outlet, {}, {}}));
  data["endings"] = std::move(endings);
  data["deliveries"] = std::move(deliveries);
}

Json looks_data(PagePart const& part) {
  auto list = Json::array();
  auto const& design = part.subject.design;
  Plane const plane(design.grid, {});
  for (auto const& look : part.playback.looks) {
    if (look.state == water::dry) {
      list.push_back(Json::array());
      continue;
    }
    auto const wet = wet_cell(look, design.practice);
    list.push_back(
        Json::array({water_symbol(wet, plane), current_symbol(wet, plane), water_words(wet)}));
  }
  return list;
}

// [[words], [[end, outlet, [move, east, south, up, what is remembered]...]...]]
void put_stances(PagePart const& part, Json& data) {
  playback::Numbered<std::string> moves;
  auto stances = Json::array();
  for (auto const& stance : part.playback.stances) {
    auto told = Json::array(
        {word_of(stance.end), stance.outlet == body::no_outlet ? Json(-1) : Json(stance.outlet)});
    for (auto const& way : stance.ways) {
      auto const words = move_words({}, {0, way.rule, way.is_sure}, {way.east, way.south, way.up});
      told.push_back(Json::array({moves.number(words), way.east, way.south, way.up,
                                  static_cast<int>(way.carried_to) * 5 + way.fallen}));
    }
    stances.push_back(std::move(told));
  }
  data["moves"] = moves.values();
  data["stances"] = std::move(stances);
}

Json patches_data(Playback const& playback) {
  auto list = Json::array();
  for (auto const& patch : playback.patches) {
    auto told = Json::array();
    std::uint32_t before = 0;
    for (auto const& change : patch) {
      told.push_back(change.at - before);
      told.push_back(change.to);
      before = change.at;
    }
    list.push_back(std::move(told));
  }
  return list;
}

std::string fate_words(Subject const& subject, playback::Fate const& fate) {
  if (!fate.fits) return "does not get in";
  auto words = fate.outlets.empty()
                   ? std::string("reaches nothing")
                   : "reaches " + listed(names_of(subject.map.outlets, fate.outlets), "or");
  if (fate.has_trap) words += ", can be trapped";
  if (fate.spills) words += ", can leave the drawing";
  if (fate.is_unsure) words += ", hangs on an unsure move";
  return words;
}

Json pools_data(PagePart const& part) {
  playback::Numbered<std::vector<std::string>> fates;
  auto parents = Json::array(), settings = Json::array(), stances = Json::array(),
       numbers = Json::array(), restless = Json::array();
  auto const& pools = part.playback.pools;
  for (std::size_t i = 0; i < pools.size(); ++i) {
    auto const& pool = pools[i];
    parents.push_back(number_or_none(pool.parent));
    settings.push_back(bits(pool.setting));
    for (auto patch : pool.stances) stances.push_back(patch);
    for (auto const& fate : pool.fates) {
      std::vector<std::string> told{std::string(word_of(fate.verdict)),
                                    fate_words(part.subject, fate)};
      for (auto const& name : names_of(part.subject.map.outlets, fate.outlets))
        told.push_back(name);
      numbers.push_back(fates.number(std::move(told)));
    }
    if (!pool.is_settled) restless.push_back(i);
  }
  return {{"parent", std::move(parents)},  {"setting", std::move(settings)},
          {"stances", std::move(stances)}, {"fate", std::move(numbers)},
          {"fates", fates.values()},       {"restless", std::move(restless)}};
}

Json nodes_data(Playback const& playback) {
  auto signals = Json::array(), pool = Json::array(), parent = Json::array(), event = Json::array(),
       next = Json::array(), run = Json::array();
  for (auto const& node : playback.nodes) {
    signals.push_back(bits(node.signals));
    pool.push_back(node.pool);
    parent.push_back(number_or_none(node.parent));
    event.push_back(node.event);
    for (auto to : node.next) next.push_back(number_or_none(to));
    for (auto number : node.run) run.push_back(number_or_none(number));
  }
  return {{"signals", std::move(signals)}, {"pool", std::move(pool)}, {"parent", std::move(parent)},
          {"event", std::move(event)},     {"next", std::move(next)}, {"run", std::move(run)}};
}

Json notes_data(PagePart const& part) {
  auto list = Json::array();
  for (auto const& note : part.notes) {
    list.push_back({{"cells", numbers_of(part.subject.design.grid, note.cells)},
                    {"flips", note.flips ? Json(*note.flips) : Json(nullptr)}});
  }
  return list;
}

// The signals of the table's columns, by their places in the list of signals.
Json columns_data(PagePart const& part) {
  auto list = Json::array();
  auto const& signals = part.subject.map.signals;
  for (auto const& name : part.sheet.signals) {
    for (std::size_t s = 0; s < signals.size(); ++s) {
      if (signals[s].name == name) list.push_back(s);
    }
  }
  return list;
}

constexpr std::string_view word_of(playback::Detail detail) {
  switch (detail) {
    case playback::Detail::whole:
      return "whole";
    case playback::Detail::without_steps:
      return "without steps";
    case playback::Detail::fresh:
      return "fresh";
    case playback::Detail::as_built:
      return "as built";
    case playback::Detail::nothing:
      break;
  }
  return "nothing";
}

// What a part is called in the address: two revisions have one name.
std::string label_of(PagePart const& part) {
  auto const& name = part.subject.map.junction.name;
  if (part.revision == PagePart::Revision::only) return name;
  return (part.revision == PagePart::Revision::before ? "before:" : "now:") + name;
}

Json part_data(PagePart const& part, std::size_t first_file) {
  auto const& [design, map, text, is_alone] = part.subject;
  auto const& playback = part.playback;
  auto const& grid = design.grid;
  Json data{{"name", map.junction.name},
            {"label", label_of(part)},
            {"prefix", sign_prefix(part)},
            {"size", Json::array({grid.width(), grid.depth(), grid.height()})},
            {"step_ticks", design.practice[model::Rule::step_ticks]},
            {"ticks_per_second", design.practice[model::Rule::ticks_per_second]},
            {"detail", word_of(playback.detail)},
            {"signals", signals_data(part, first_file)},
            {"inputs", playback.inputs},
            {"columns", columns_data(part)},
            {"notes", notes_data(part)}};
  if (playback.detail == playback::Detail::nothing) return data;
  data["fills"] = fills_data(part.subject, first_file);
  data["cells"] = cells_data(design);
  data["inlets"] = ports_data(grid, design.inlets, map.inlets);
  data["outlets"] = ports_data(grid, design.outlets, map.outlets);
  data["joins"] = joins_data(part.subject);
  data["bodies"] = bodies_data(part.subject);
  data["glyphs"] = glyphs_data(part.subject, first_file);
  data["looks"] = looks_data(part);
  put_endings(part.subject, data);
  put_stances(part, data);
  data["patches"] = patches_data(playback);
  data["runs"] = playback.runs;
  data["filling"] = playback.filling;
  data["pools"] = pools_data(part);
  data["nodes"] = nodes_data(playback);
  return data;
}

}  // namespace

water::WetCell wet_cell(playback::Look const& look, model::Practice const& practice) {
  return {model::no_cell,          look.state,
          look.is_placed,          water::strength(look.state, practice),
          {look.east, look.south}, false};
}

Json page_data(std::vector<PagePart> const& parts) {
  auto document = document_head("leat-page");
  document["junctions"] = Json::array();
  for (auto const& part : parts)
    document["junctions"].push_back(part_data(part, first_file(parts, part)));
  return document;
}

}  // namespace leat::render
