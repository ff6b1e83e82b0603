#include "lang/cli/compared.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "lang/cli/judged.hpp"
#include "lang/cli/terminal.hpp"

namespace leat::cli {

using compare::Change;

std::vector<Pair> pairs_of(Loaded const& before, Loaded const& after) {
  if (before.junctions.size() == 1 && after.junctions.size() == 1) return {{0, 0}};
  std::vector<Pair> pairs;
  std::vector<bool> is_known(after.junctions.size(), false);
  for (std::size_t b = 0; b < before.junctions.size(); ++b) {
    auto const& name = before.junctions[b].map.junction.name;
    auto const at = std::find_if(after.junctions.begin(), after.junctions.end(),
                                 [&](auto const& j) { return j.map.junction.name == name; });
    auto const a = static_cast<std::size_t>(at - after.junctions.begin());
    bool const is_there = at != after.junctions.end();
    if (is_there) is_known[a] = true;
    pairs.push_back({b, is_there ? std::optional(a) : std::nullopt});
  }
  for (std::size_t a = 0; a < is_known.size(); ++a) {
    if (!is_known[a]) pairs.push_back({std::nullopt, a});
  }
  return pairs;
}

namespace {

constexpr std::size_t most_nodes = std::size_t{1} << 22;

Judged judged_aloud(Loaded const& loaded, std::size_t i, Terminal& terminal) {
  auto const& junction = loaded.junctions[i];
  return judged(junction,
                ProgressLines(terminal, junction.map.junction.name, progress_unit(junction)));
}

std::string verdict_of(std::vector<render::ComparisonSheet> const& sheets, Change gravest,
                       bool is_proved) {
  if (gravest != Change::same) return std::string(render::word_of(gravest));
  bool const is_plain = std::all_of(sheets.begin(), sheets.end(),
                                    [](auto const& sheet) { return sheet.entries.empty(); });
  auto const word = is_plain ? "the same" : "the same in effect";
  return is_proved ? fmt::format("{}, proved for every combination", word)
                   : fmt::format("{} as far as both are known", word);
}

}  // namespace

render::ComparisonSheet compared(Loaded const& old, std::size_t b, Loaded const& revised,
                                 std::size_t a, std::vector<lower::Renaming> const& renamings,
                                 bool is_replayable, Terminal& terminal) {
  auto const before = old.subject(b), after = revised.subject(a);
  auto const was = judged_aloud(old, b, terminal), is = judged_aloud(revised, a, terminal);
  auto const variables_before = was.variables(), variables_after = is.variables();
  auto const matching = lower::matched(before.map, after.map, renamings);
  compare::Ground ground({before.design, variables_before}, {after.design, variables_after},
                         matching.signals, most_nodes);
  auto const behaviour_before = was.behaviour(before.design, ground.before(), ground);
  auto const behaviour_after = is.behaviour(after.design, ground.after(), ground);
  auto comparison = compare::compare(behaviour_before, behaviour_after, matching, ground);
  comparison.parts = compare::compare_parts(before.design, after.design, matching);
  return render::comparison_sheet(
      {before, after, behaviour_before, behaviour_after, matching, comparison, ground,
       compare::shift_of(before.design, after.design, matching), !is_replayable});
}

Compared compare_designs(Loaded const& before, Loaded const& after,
                         std::vector<lower::Renaming> const& renamings, bool is_replayable,
                         Terminal& terminal) {
  Compared compared{{before.text.name(), after.text.name(), {}, {}}, Change::same, true};
  auto& sheets = compared.comparison.sheets;
  for (auto const& [b, a] : pairs_of(before, after)) {
    sheets.push_back(b && a
                         ? cli::compared(before, *b, after, *a, renamings, is_replayable, terminal)
                         : render::missing_sheet(b ? before.junctions[*b].map.junction.name
                                                   : after.junctions[*a].map.junction.name,
                                                 b.has_value()));
    compared.gravest = std::max(compared.gravest, sheets.back().gravest);
    compared.is_proved = compared.is_proved && sheets.back().is_proved;
  }
  compared.comparison.verdict = verdict_of(sheets, compared.gravest, compared.is_proved);
  return compared;
}

}  // namespace leat::cli
