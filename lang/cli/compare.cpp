#include <fmt/format.h>

#include "lang/cli/commands.hpp"
#include "lang/cli/compared.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/render/columns.hpp"

namespace leat::cli {

namespace {

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

}  // namespace

Exit run(CompareOptions const& options, Terminal& terminal) {
  auto const renamings = read_renamings(options, terminal);
  if (!renamings) return Exit::unusable;
  auto const before = load(options.before, terminal);
  auto const after = load(options.after, terminal);
  if (!before || !after || !are_answered(*renamings, *before, *after, terminal))
    return Exit::unusable;
  auto compared = compare_designs(*before, *after, *renamings, true, terminal);
  auto exit = compared.is_proved ? Exit::holds : Exit::undecided;
  if (compared.gravest >= options.fail_on) exit = Exit::violated;
  terminal.result(options.format == "json"
                      ? render::comparison_document(compared.comparison, static_cast<int>(exit))
                      : render::comparison_text(compared.comparison, terminal.result_look()));
  return exit;
}

}  // namespace leat::cli
