#include "lang/render/page/page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>

#include "engine/tables/routes.hpp"
#include "lang/cli/commands.hpp"
#include "lang/cli/compared.hpp"
#include "lang/cli/delivery.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/page/page_notes.hpp"
#include "lang/render/words.hpp"
#include "lang/render/works_table.hpp"

namespace leat::cli {

namespace {

// Rows of a table that a page holds.
constexpr std::size_t most_rows = 512;

// A junction or works with all that a page tells of it.
struct Shown {
  render::Subject subject;
  playback::Playback playback;
  render::TableSheet sheet;
  bool has_table = true;
  std::vector<render::PageNote> notes;
  std::vector<render::PageClaim> claims;
  render::PagePart::Revision revision = render::PagePart::Revision::only;
  std::vector<model::Cell> differing;

  render::PagePart part() const;
};

bool has_delays(model::Circuit const& circuit) {
  return std::any_of(circuit.signals.begin(), circuit.signals.end(),
                     [](auto const& signal) { return signal.kind == model::SignalKind::delay; });
}

// What of the design is not in its page, a sentence each.
std::vector<std::string> left_out(Shown const& shown) {
  using playback::Detail;
  std::vector<std::string> sentences;
  auto const& design = shown.subject.design;
  auto const cells = design.grid.volume();
  switch (shown.playback.detail) {
    case Detail::nothing:
      sentences.push_back(
          cells > playback::Budget{}.most_cells
              ? fmt::format("Left out: the levels, since {} cells are too many for a page. The "
                            "tables and findings are whole; leat show prints single levels.",
                            cells)
              : "Left out: the levels, since the signals do not come to rest as built. leat "
                "machine "
                "says why.");
      break;
    case Detail::as_built:
      sentences.push_back(
          "Left out: the levers and what they change, since the signals have too many states for "
          "a page. The levels show the design as built; the tables and findings are whole.");
      break;
    case Detail::without_steps:
      sentences.push_back(
          "Left out: the steps of the water on its way, since there are too many for a page. A "
          "lever goes straight to the settled water.");
      break;
    case Detail::fresh:
      sentences.push_back(
          "Left out: what the water remembers of earlier settings, since that is too much for a "
          "page. Each setting is shown with the water it has when it is built so, without the "
          "steps "
          "on its way.");
      break;
    case Detail::whole:
      break;
  }
  if (has_delays(design.circuit))
    sentences.push_back(
        "Delays are shown as if they had run out: the cells go straight to where the signals come "
        "to rest. leat guard looks at what happens on the way.");
  return sentences;
}

render::PagePart Shown::part() const {
  return {subject, playback, sheet, has_table, notes, claims, left_out(*this), revision, differing};
}

bool is_readable(render::TableSheet const& sheet) {
  std::size_t rows = 0;
  for (auto const& lane : sheet.lanes) {
    for (auto const& destination : lane.destinations)
      rows += std::max<std::size_t>(1, destination.rows.size());
  }
  return !sheet.is_too_long && rows <= most_rows;
}

// Whether the conditions of a junction are short enough to be put into words at all.
bool has_short_conditions(model::Design const& design, Judgement const& judged) {
  std::size_t terms = 0;
  for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
    for (model::ProfileId profile = 0; profile < design.profiles.size(); ++profile) {
      for (auto const& d : tables::destinations(judged.combinations, judged.routes, inlet, profile))
        terms += d.condition.size();
    }
  }
  return terms <= most_rows;
}

void judge_junction(Shown& shown, Terminal& terminal) {
  auto const& design = shown.subject.design;
  auto const judged = judge(design, {}, ProgressLines(terminal, shown.subject.map.junction.name));
  shown.has_table = !judged.is_decided || has_short_conditions(design, judged);
  if (shown.has_table) shown.sheet = render::table_sheet(shown.subject, judged, {});
  shown.sheet.is_decided = judged.is_decided;
  shown.notes = notes_of(shown.subject, judged);
  shown.claims = claims_of(shown.subject, judged);
}

void judge_works(Shown& shown) {
  auto const judged = works::judge_works(shown.subject.design);
  render::JudgedWorks const works{shown.subject, judged};
  shown.sheet = render::works_sheet(shown.subject, judged, {});
  shown.notes = notes_of(works);
  shown.claims = claims_of(works);
}

Shown shown_of(render::Subject const& subject, Terminal& terminal) {
  Shown shown{subject,
              playback::record(subject.design, circuit_to_run(subject.design)),
              {},
              true,
              {},
              {},
              render::PagePart::Revision::only,
              {}};
  if (subject.map.is_works())
    judge_works(shown);
  else
    judge_junction(shown, terminal);
  shown.has_table = shown.has_table && is_readable(shown.sheet);
  return shown;
}

Exit show(std::vector<Shown> const& shown, std::vector<render::ComparisonSheet> const& sheets,
          std::string const& out, Terminal& terminal) {
  auto exit = Exit::holds;
  std::vector<render::PagePart> parts;
  for (auto const& one : shown) {
    parts.push_back(one.part());
    if (!one.sheet.is_decided) exit = Exit::undecided;
  }
  return worst(exit, deliver(render::page(parts, sheets), out, terminal));
}

// Both revisions of every junction that both files have; of one that only one of them has, that.
Exit show_two(PageOptions const& options, Loaded const& before, Loaded const& now,
              Terminal& terminal) {
  using Revision = render::PagePart::Revision;
  std::vector<Shown> shown;
  std::vector<render::ComparisonSheet> sheets;
  for (auto const& [b, n] : pairs_of(before, now)) {
    auto const& map = b ? before.junctions[*b].map : now.junctions[*n].map;
    if (!options.junction.empty() && options.junction != map.junction.name) continue;
    if (b) shown.push_back(shown_of(before.subject(*b), terminal));
    if (b) shown.back().revision = Revision::before;
    if (n) shown.push_back(shown_of(now.subject(*n), terminal));
    if (n) shown.back().revision = Revision::now;
    if (!b || !n) {
      sheets.push_back(render::missing_sheet(map.junction.name, b.has_value()));
      continue;
    }
    sheets.push_back(compared(before, *b, now, *n, {}, true, terminal));
    auto cells = render::differing_cells(before.subject(*b), now.subject(*n),
                                         sheets.back().shift.value_or(model::Place{}));
    shown[shown.size() - 2].differing = std::move(cells.before);
    shown.back().differing = std::move(cells.now);
  }
  if (!shown.empty()) return show(shown, sheets, options.out, terminal);
  terminal.refuse(
      fmt::format("neither file has a junction '{}'", render::showable(options.junction)));
  return Exit::unusable;
}

}  // namespace

Exit run(PageOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  if (!options.newer.empty()) {
    auto const newer = load(options.newer, terminal);
    return newer ? show_two(options, *loaded, *newer, terminal) : Exit::unusable;
  }
  auto const chosen = chosen_junctions(*loaded, options.junction, terminal);
  if (!chosen) return Exit::unusable;
  std::vector<Shown> shown;
  for (auto i : *chosen) shown.push_back(shown_of(loaded->subject(i), terminal));
  return show(shown, {}, options.out, terminal);
}

}  // namespace leat::cli
