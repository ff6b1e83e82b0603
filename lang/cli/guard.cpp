#include <fmt/format.h>

#include "lang/cli/commands.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/sights.hpp"
#include "lang/render/example.hpp"
#include "lang/render/guard.hpp"

namespace leat::cli {

namespace {

// Whether the dangers of a junction were looked for; told where not.
bool is_known(render::Subject const& subject, Judgement const& judged, Terminal& terminal) {
  if (judged.is_decided && judged.switchings.is_complete) return true;
  refuse_undecided(subject, "it has too many combinations or changes to follow bodies through each",
                   render::never_rests(judged), terminal);
  return false;
}

}  // namespace

Exit run(GuardOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  auto chosen = chosen_junctions(*loaded, options.junction, terminal);
  if (!chosen) return Exit::unusable;
  std::erase_if(*chosen, [&](auto i) { return loaded->junctions[i].map.is_works(); });
  if (chosen->empty()) {
    terminal.refuse("a works is not asked what its changes do to creatures inside",
                    "ask the junctions that it places, in their own files");
    return Exit::unusable;
  }
  std::vector<Judgement> judgements;
  for (auto i : *chosen) {
    auto const subject = loaded->subject(i);
    judgements.push_back(
        judge(subject.design, {}, ProgressLines(terminal, subject.map.junction.name)));
  }
  auto exit = Exit::holds;
  std::vector<std::unique_ptr<Sights>> sights;  // scenes of the parts point into them
  std::vector<render::GuardPart> parts;
  std::string text;
  for (std::size_t at = 0; at < chosen->size(); ++at) {
    auto const subject = loaded->subject((*chosen)[at]);
    auto const& judged = judgements[at];
    if (!is_known(subject, judged, terminal)) exit = Exit::undecided;
    if (judged.has_restless) {
      warn_of_restless(subject, terminal);
      exit = Exit::undecided;
    }
    parts.push_back({subject, judged, {}});
    if (options.format != "text" || !judged.is_decided || !judged.switchings.is_complete) continue;
    sights.push_back(std::make_unique<Sights>(subject, judged));
    for (auto const& guard : judged.guards) {
      for (auto const& threat : guard.threats)
        parts.back().sights.push_back(sights.back()->of(threat.example));
    }
    text.append(text.empty() ? "" : "\n")
        .append(render::guard_text(parts.back(), terminal.result_look()));
  }
  terminal.result(options.format == "text" ? text : render::guard_document(parts));
  return exit;
}

}  // namespace leat::cli
