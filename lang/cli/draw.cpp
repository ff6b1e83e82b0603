#include <fmt/format.h>

#include <algorithm>

#include "lang/cli/commands.hpp"
#include "lang/cli/cuts.hpp"
#include "lang/cli/delivery.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/picturing.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/example.hpp"
#include "lang/render/picture/sheet.hpp"
#include "lang/render/words.hpp"

namespace leat::cli {

namespace {

// More cells than this make a picture that nobody can read, and files of some ten megabytes.
constexpr std::size_t most_cells = 65536;

std::optional<render::Subject> one_junction(Loaded const& loaded, std::string const& name,
                                            Terminal& terminal) {
  auto const chosen = chosen_junctions(loaded, name, terminal);
  if (!chosen) return std::nullopt;
  if (chosen->size() == 1) return loaded.subject(chosen->front());
  std::vector<std::string> names;
  for (auto const& junction : loaded.junctions) names.push_back(junction.map.junction.name);
  terminal.refuse(fmt::format("a picture shows one junction; the file has {}", names.size()),
                  "choose with --junction: " + render::listed(names, "or", 12));
  return std::nullopt;
}

bool add_ways(render::PictureScene& scene, Situation const& situation, DrawOptions const& options,
              Terminal& terminal) {
  auto const& design = scene.subject.design;
  std::vector<model::InletId> inlets;
  for (auto const& name : options.inlets) {
    auto const inlet = find_inlet(scene.subject.map, name, terminal);
    if (!inlet) return false;
    inlets.push_back(*inlet);
  }
  if (options.inlets.empty()) {
    for (model::InletId i = 0; i < design.inlets.size(); ++i) inlets.push_back(i);
  }
  model::ProfileId body = 0;
  if (!options.body.empty()) {
    auto const found = find_name(scene.subject.map.profiles, options.body, "body", terminal);
    if (!found) return false;
    body = *found;
  }
  for (auto inlet : inlets)
    scene.ways.push_back(ways_of(scene.subject, situation.solved, inlet, body));
  return true;
}

// What a reader must know of the picture.
std::string remark_of(render::Subject const& subject, Situation const& situation, bool is_judged) {
  std::string remark(render::caveat_of(situation.standing));
  if (is_judged) return remark;
  if (!remark.empty()) remark += "; ";
  return remark + (subject.map.is_works() ? "findings are not drawn in a works: see leat check"
                                          : "findings are not known: too many signals");
}

bool is_drawable(render::Sheet const& sheet, Terminal& terminal) {
  auto const count = render::cells_of(sheet);
  if (count <= most_cells) return true;
  terminal.refuse(
      fmt::format("the picture would show {} cells; at most {} can be read", count, most_cells),
      "draw less: --level, --section, --columns and --rows choose");
  return false;
}

}  // namespace

Exit run(DrawOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  auto const subject = one_junction(*loaded, options.junction, terminal);
  if (!subject) return Exit::unusable;
  auto cuts = cuts_of(*subject, options, terminal);
  if (!cuts) return Exit::unusable;
  auto const situation = read_situation(*subject, options.when, options.deeds, terminal);
  if (!situation) return Exit::unusable;
  auto scene = picture_of(*subject, *situation);
  render::Sheet sheet{scene, std::move(*cuts), options.theme, {}};
  if (!is_drawable(sheet, terminal)) return Exit::unusable;
  if (!options.is_without_ways && !add_ways(scene, *situation, options, terminal))
    return Exit::unusable;
  bool is_judged = false;
  if (!subject->map.is_works()) {
    auto const judged =
        judge(subject->design, {}, ProgressLines(terminal, subject->map.junction.name));
    is_judged = judged.is_decided;
    scene.pins = pins_of(*subject, judged, situation->solved);
  }
  sheet.remark = remark_of(*subject, *situation, is_judged);
  return deliver(render::picture_svg(sheet), options.out, terminal);
}

}  // namespace leat::cli
