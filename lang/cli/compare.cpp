#include <fmt/format.h>

#include <algorithm>

#include "engine/compare/comparison.hpp"
#include "lang/cli/commands.hpp"
#include "lang/cli/judged.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/lower/matching.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/comparison_sheet.hpp"

namespace leat::cli {

namespace {

using compare::Change;

constexpr std::size_t most_nodes = std::size_t{1} << 22;

struct Pair {
  std::optional<std::size_t> before, after;  // indices into the junctions of the two files
};

// Junctions of the same name; where each file has just one, these, whatever they are called.
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

// "divert=turn", told where it is none.
std::optional<std::vector<lower::Renaming>> read_renamings(CompareOptions const& options,
                                                           Terminal& terminal) {
  std::vector<lower::Renaming> renamings;
  for (auto const& text : options.renamings) {
    auto const at = text.find('=');
    if (at == std::string::npos || at == 0 || at + 1 == text.size()) {
      terminal.refuse(fmt::format("'{}' does not say what is renamed", render::showable(text)),
                      "write the old name and the new one: --renamed divert=turn");
      return std::nullopt;
    }
    renamings.push_back({text.substr(0, at), text.substr(at + 1)});
  }
  return renamings;
}

bool are_answered(std::vector<lower::Renaming> const& renamings, Loaded const& before,
                  Loaded const& after, Terminal& terminal) {
  for (auto const& renaming : renamings) {
    bool is_known = false;
    for (auto const& [b, a] : pairs_of(before, after)) {
      is_known = is_known ||
                 (b && a &&
                  lower::is_answered(renaming, before.junctions[*b].map, after.junctions[*a].map));
    }
    if (is_known) continue;
    terminal.refuse(
        fmt::format("'{}' before and '{}' now name nothing that could be the same",
                    render::showable(renaming.before), render::showable(renaming.after)),
        "name a signal, an inlet, an outlet or a body, as both designs call it");
    return false;
  }
  return true;
}

render::ComparisonSheet sheet_of(render::Subject const& before, render::Subject const& after,
                                 std::vector<lower::Renaming> const& renamings,
                                 Terminal& terminal) {
  Judged const was(before, terminal), is(after, terminal);
  auto const matching = lower::matched(before.map, after.map, renamings);
  compare::Ground ground({before.design, was.variables()}, {after.design, is.variables()},
                         matching.signals, most_nodes);
  auto const behaviour_before = was.behaviour(ground.before(), ground);
  auto const behaviour_after = is.behaviour(ground.after(), ground);
  auto comparison = compare::compare(behaviour_before, behaviour_after, matching, ground);
  comparison.parts = compare::compare_parts(before.design, after.design, matching);
  return render::comparison_sheet(
      {before, after, behaviour_before, behaviour_after, matching, comparison, ground,
       compare::shift_of(before.design, after.design, matching), false});
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

Exit run(CompareOptions const& options, Terminal& terminal) {
  auto const renamings = read_renamings(options, terminal);
  if (!renamings) return Exit::unusable;
  auto const before = load(options.before, terminal);
  auto const after = load(options.after, terminal);
  if (!before || !after || !are_answered(*renamings, *before, *after, terminal))
    return Exit::unusable;
  render::FileComparison comparison{before->text.name(), after->text.name(), {}, {}};
  auto gravest = Change::same;
  bool is_proved = true;
  for (auto const& [b, a] : pairs_of(*before, *after)) {
    comparison.sheets.push_back(
        b && a ? sheet_of(before->subject(*b), after->subject(*a), *renamings, terminal)
               : render::missing_sheet(b ? before->junctions[*b].map.junction.name
                                         : after->junctions[*a].map.junction.name,
                                       b.has_value()));
    gravest = std::max(gravest, comparison.sheets.back().gravest);
    is_proved = is_proved && comparison.sheets.back().is_proved;
  }
  auto exit = is_proved ? Exit::holds : Exit::undecided;
  if (gravest >= options.fail_on) exit = Exit::violated;
  comparison.verdict = verdict_of(comparison.sheets, gravest, is_proved);
  terminal.result(options.format == "json"
                      ? render::comparison_document(comparison, static_cast<int>(exit))
                      : render::comparison_text(comparison, terminal.result_look()));
  return exit;
}

}  // namespace leat::cli
