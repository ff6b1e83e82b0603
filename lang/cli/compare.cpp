#include <fmt/format.h>

#include <algorithm>

#include "engine/compare/comparison.hpp"
#include "lang/cli/commands.hpp"
#include "lang/cli/comparing.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/lower/matching.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/comparison_sheet.hpp"

namespace leat::cli {

namespace {

using compare::Change;

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
        b && a ? compared(*before, *b, *after, *a, *renamings, terminal)
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
