#include <fmt/format.h>

#include <algorithm>

#include "lang/cli/commands.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/parts.hpp"
#include "lang/cli/picturing.hpp"
#include "lang/cli/written_file.hpp"
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

std::optional<int> number_of(std::string_view word) {
  constexpr std::size_t most_digits = 6;
  if (word.empty() || word.size() > most_digits) return std::nullopt;
  int number = 0;
  for (char c : word) {
    if (c < '0' || c > '9') return std::nullopt;
    number = 10 * number + (c - '0');
  }
  return number;
}

// "row 3" or "column 5".
std::optional<render::Cut> section_of(render::Subject const& subject, std::string const& text,
                                      Terminal& terminal) {
  auto const words = words_of(text);
  auto const number = words.size() == 2 ? number_of(words[1]) : std::nullopt;
  bool const is_row = number && words[0] == "row";
  if (!number || (!is_row && words[0] != "column")) {
    terminal.refuse(fmt::format("--section does not understand '{}'", render::showable(text)),
                    "write \"row 3\" or \"column 5\"");
    return std::nullopt;
  }
  auto const& grid = subject.design.grid;
  auto const count = is_row ? grid.depth() : grid.width();
  if (*number >= count) {
    terminal.refuse(
        fmt::format("junction {} has no {} {}", subject.map.junction.name, words[0], *number),
        fmt::format("its {}s are 0 to {}", words[0], count - 1));
    return std::nullopt;
  }
  return render::Cut{is_row ? render::Cut::Kind::row : render::Cut::Kind::column, *number};
}

// The levels from the top down, then the sections; sections alone where no level is asked for.
std::optional<std::vector<render::Cut>> cuts_of(render::Subject const& subject,
                                                DrawOptions const& options, Terminal& terminal) {
  std::vector<render::Cut> cuts;
  auto const height = subject.design.grid.height();
  for (auto level : options.levels) {
    if (level >= 0 && level < height) continue;
    terminal.refuse(fmt::format("junction {} has no level {}", subject.map.junction.name, level),
                    fmt::format("its levels are 0 to {}", height - 1));
    return std::nullopt;
  }
  auto const is_asked = [&](int z) {
    if (options.levels.empty()) return options.sections.empty();
    return std::find(options.levels.begin(), options.levels.end(), z) != options.levels.end();
  };
  for (int z = height - 1; z >= 0; --z) {
    if (is_asked(z)) cuts.push_back({render::Cut::Kind::level, z});
  }
  for (auto const& text : options.sections) {
    auto const cut = section_of(subject, text, terminal);
    if (!cut) return std::nullopt;
    cuts.push_back(*cut);
  }
  return cuts;
}

bool add_ways(render::PictureScene& scene, Situation const& situation, DrawOptions const& options,
              Terminal& terminal) {
  auto const& design = scene.subject.design;
  std::vector<model::InletId> inlets;
  for (auto const& name : options.inlets) {
    auto const inlet = find_name(scene.subject.map.inlets, name, "inlet", terminal);
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
      "draw less: --level for one level, --section for one row or column");
  return false;
}

// To a file where one is named, told on the narration stream; else it is the result.
Exit deliver(std::string const& picture, std::string const& path, Terminal& terminal) {
  if (path.empty() || path == "-") {
    terminal.result(picture);
    return Exit::holds;
  }
  if (auto const fault = write_file(path, picture)) {
    terminal.refuse(fault->headline, fault->remedy);
    return Exit::unusable;
  }
  terminal.narrate(fmt::format("{} written\n", render::showable(path)));
  return Exit::holds;
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
