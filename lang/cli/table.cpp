#include <fmt/format.h>

#include <algorithm>

#include "engine/model/joins.hpp"
#include "lang/cli/commands.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/render/table_sheet.hpp"
#include "lang/render/words.hpp"
#include "lang/render/works_table.hpp"

namespace leat::cli {

namespace {

constexpr std::size_t most_printed_rows = 4096;

bool is_printable(render::Subject const& subject, std::size_t rows, Terminal& terminal) {
  if (rows <= most_printed_rows) return true;
  terminal.refuse(fmt::format("junction {} has {} combinations; a full table prints at most {}",
                              subject.map.junction.name, rows, most_printed_rows),
                  "leave --full away: the condensed table says the same with conditions");
  return false;
}

// Conditions such as parities have about as many terms as combinations: no table to read.
bool is_condensable(render::Subject const& subject, Judgement const& judged,
                    render::TableRequest const& request, Terminal& terminal) {
  if (!judged.is_decided) return true;
  for (model::InletId inlet = 0; inlet < subject.design.inlets.size(); ++inlet) {
    if (request.inlet && *request.inlet != inlet) continue;
    for (model::ProfileId profile = 0; profile < subject.design.profiles.size(); ++profile) {
      if (request.profile && *request.profile != profile) continue;
      std::size_t rows = 0;
      for (auto const& d : tables::destinations(judged.combinations, judged.routes, inlet, profile))
        rows += d.condition.size();
      if (rows <= most_printed_rows) continue;
      terminal.refuse(
          fmt::format("junction {} has conditions of {} terms; a table prints at most {}",
                      subject.map.junction.name, rows, most_printed_rows),
          "say what is wanted with expect, and leat check proves it");
      return false;
    }
  }
  return true;
}

std::optional<render::TableSheet> sheet_of_works(render::Subject const& subject,
                                                 TableOptions const& options,
                                                 render::TableRequest const& request,
                                                 Terminal& terminal) {
  if (options.is_full || options.is_fresh) {
    terminal.refuse(
        fmt::format("{} {} is not told combination by combination",
                    subject.map.is_works() ? "works" : "junction", subject.map.junction.name),
        "leave --full and --fresh away: the condensed table says when bodies go where");
    return std::nullopt;
  }
  works::PlantBudget budget;
  auto const judged = works::judge_works(subject.design, budget);
  auto sheet = render::works_sheet(subject, judged, request);
  if (!sheet.is_too_long) return sheet;
  terminal.refuse(
      fmt::format("{} has too many destinations for a table", subject.map.junction.name),
      "ask for one inlet with --from, or say what is wanted with expect");
  return std::nullopt;
}

// Whether bodies come in there from outside, so that the table has rows for it; told where not.
bool is_entrance(render::Subject const& subject, model::InletId inlet, Terminal& terminal) {
  if (model::Joins(subject.design).is_entrance(inlet)) return true;
  terminal.refuse(fmt::format("the inlet '{}' is joined: nobody comes in there from outside",
                              subject.map.inlets[inlet].name),
                  "name an inlet of the works itself; leat follow begins at any inlet");
  return false;
}

// The junction's table, or none where it cannot be made as asked, which has been told.
std::optional<render::TableSheet> sheet_of(render::Subject const& subject,
                                           TableOptions const& options, Terminal& terminal) {
  render::TableRequest request;
  request.is_full = options.is_full;
  if (!options.inlet.empty()) {
    request.inlet = find_inlet(subject.map, options.inlet, terminal);
    if (!request.inlet || !is_entrance(subject, *request.inlet, terminal)) return std::nullopt;
  }
  if (!options.body.empty()) {
    request.profile = find_name(subject.map.profiles, options.body, "body", terminal);
    if (!request.profile) return std::nullopt;
  }
  if (subject.map.is_works()) return sheet_of_works(subject, options, request, terminal);
  Budget budget;
  budget.follows_history = !options.is_fresh;
  auto const judged =
      judge(subject.design, budget, ProgressLines(terminal, subject.map.junction.name));
  if (!options.is_full && !options.is_fresh && has_too_many_variables(judged))
    return sheet_of_works(subject, options, request, terminal);
  if (options.is_full && !is_printable(subject, judged.combinations.reachable.count(), terminal)) {
    return std::nullopt;
  }
  if (!options.is_full && !is_condensable(subject, judged, request, terminal)) return std::nullopt;
  return render::table_sheet(subject, judged, request);
}

std::string written(std::vector<render::TableSheet> const& sheets, std::string const& format) {
  if (format == "json") return render::table_document(sheets);
  if (format == "csv") return render::table_csv(sheets);
  std::string text;
  for (auto const& sheet : sheets) {
    if (!text.empty()) text += "\n";
    if (format == "text") text += render::table_text(sheet);
    if (format == "markdown") text += render::table_markdown(sheet);
    if (format == "expect") text += render::table_expect(sheet);
  }
  return text;
}

}  // namespace

Exit run(TableOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  auto const chosen = chosen_junctions(*loaded, options.junction, terminal);
  if (!chosen) return Exit::unusable;
  std::vector<render::TableSheet> sheets;
  auto exit = Exit::holds;
  for (auto i : *chosen) {
    auto sheet = sheet_of(loaded->subject(i), options, terminal);
    if (!sheet) return Exit::unusable;
    if (!sheet->is_decided) {
      refuse_undecided(loaded->subject(i), render::undecided_words(*sheet), sheet->is_restless,
                       terminal);
      exit = Exit::undecided;
    }
    for (auto const& inlet : sheet->undecided_inlets) {
      terminal.refuse(fmt::format("from {}, nothing is told: ways lead through what depends on too "
                                  "many signals to be run",
                                  inlet),
                      "leat check names it");
      exit = Exit::undecided;
    }
    if (sheet->has_too_many_states) {
      terminal.refuse(
          fmt::format("works {}: the memory has too many states to be followed; some of "
                      "these combinations may never come about",
                      loaded->subject(i).map.junction.name),
          "let fewer signals remember, or ask it of the junctions that are placed");
      exit = Exit::undecided;
    }
    if (sheet->has_restless) {
      warn_of_restless(loaded->subject(i), terminal);
      exit = Exit::undecided;
    }
    sheets.push_back(std::move(*sheet));
  }
  terminal.result(written(sheets, options.format));
  return exit;
}

}  // namespace leat::cli
