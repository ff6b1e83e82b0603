#include <fmt/format.h>

#include "lang/cli/commands.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/setting.hpp"
#include "lang/render/field_text.hpp"
#include "lang/render/islands_text.hpp"

namespace leat::cli {

namespace {

bool has_level(render::Subject const& subject, std::optional<int> level, Terminal& terminal) {
  auto const height = subject.design.grid.height();
  if (!level || (*level >= 0 && *level < height)) return true;
  terminal.refuse(fmt::format("junction {} has no level {}", subject.map.junction.name, *level),
                  fmt::format("its levels are 0 to {}", height - 1));
  return false;
}

Exit show_islands(Loaded const& loaded, std::vector<std::size_t> const& chosen,
                  Terminal& terminal) {
  std::string text;
  for (auto i : chosen) {
    auto const subject = loaded.subject(i);
    if (!text.empty()) text += "\n";
    auto const islands = works::islands_of(subject.design);
    text += render::islands_text(subject, islands) + render::regions_text(subject, islands);
  }
  terminal.result(text);
  return Exit::holds;
}

}  // namespace

Exit run(ShowOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  auto const chosen = chosen_junctions(*loaded, options.junction, terminal);
  if (!chosen) return Exit::unusable;
  if (options.is_of_islands) return show_islands(*loaded, *chosen, terminal);
  std::vector<render::FieldPart> parts;
  std::string text;
  for (auto i : *chosen) {
    auto const subject = loaded->subject(i);
    auto const situation = read_situation(subject, options.when, options.deeds, terminal);
    if (!situation || !has_level(subject, options.level, terminal)) return Exit::unusable;
    auto const& solved = situation->solved;
    parts.push_back({subject, situation->assignment, situation->flips, situation->standing,
                     water::survey({solved.arrangement, solved.field})});
    if (options.format != "text") continue;
    render::Scene const scene{subject, &solved.arrangement, parts.back().wet};
    if (!text.empty()) text += "\n\n";
    text += render::field_text(parts.back(), scene, options.level, terminal.result_look());
  }
  terminal.result(options.format == "text" ? text : render::field_document(parts));
  return Exit::holds;
}

}  // namespace leat::cli
