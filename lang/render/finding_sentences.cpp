#include "lang/render/finding_sentences.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numeric>

#include "engine/findings/table_gap.hpp"
#include "lang/render/example.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using model::FindingKind;

struct SentenceRow {
  FindingKind kind;
  std::string_view headline, reason, remedy;
};

// One row a kind, in the order of model::FindingKind. {body} is the bodies and inlets concerned,
// {outlets} and {signals} are names, {measured} and {limit} what the finding's rule counts.
constexpr std::array<SentenceRow, static_cast<std::size_t>(FindingKind::count)> sentence_table{{
    {FindingKind::unreached_outlet, "{outlets} is never reached",
     "No combination of the signals brings a body from any inlet there{behind}.",
     "Look where the bodies end instead (leat follow), or remove the outlet."},
    {FindingKind::dry_stand, "{body} comes to stand on dry ground",
     "Here the body is in no water, and something carries it: nothing moves it on.",
     "Bring a flow to this cell, or let the body drop into water before it gets here."},
    {FindingKind::still_water, "{body} comes to {float_or_rest} in still water",
     "The cells the body fills have no current, so nothing moves it on.",
     "Take a source away or move it, so that the water runs on through this cell."},
    {FindingKind::pinned, "{body} is pressed against what it cannot enter",
     "The current pushes the body to a side on which it does not fit, and nowhere else.",
     "Turn the current before this cell, or open the way for the whole height of the body."},
    {FindingKind::endless_loop, "{body} goes round for ever", "{round}", "{round_remedy}"},
    {FindingKind::split_route, "{body} can end at {outlets}",
     "The ways part here under one and the same combination, so chance decides.",
     "Close one of the ways while the other is open, or say with may reach that it is wanted."},
    {FindingKind::unsure_move, "{body} gets on only by a move that may fail",
     "At this cell nothing but a climb over an edge leads on, and bodies often hang there.",
     "Lower the edge or raise the water by one level, so that the body is carried over."},
    {FindingKind::body_spill, "{body} leaves the drawing",
     "The way leads over the drawing's edge, where nothing is known of what follows.",
     "Wall the edge off, or draw the channel further and end it in an outlet."},
    {FindingKind::water_spill, "Water runs out of the drawing",
     "Outside is open, and this cell sends its water there.",
     "Wall the edge off, or stop the water with a sign."},
    {FindingKind::tight_inlet, "{body} does not fit into the inlet",
     "At none of the inlet's cells there is room for the whole body.",
     "Open the cells beside and above the inlet, or name the bodies meant to enter here."},
    {FindingKind::hard_landing, "{body} falls {measured} onto something dry",
     "More than {limit} of fall hurt the body.",
     "Put water under the drop, two cells deep or more, or shorten the drop."},
    {FindingKind::thin_cushion, "{body} falls into only {measured} of water",
     "After a long drop a body sinks; with less than {limit} of water it may touch the ground.",
     "Deepen the water under the drop to at least {limit}."},
    {FindingKind::narrow_pit, "{body} falls down a pit {measured} wide",
     "A body keeps drifting to the side to which the water carried it, and strikes the far wall.",
     "Widen the pit to {limit} along that side, all the way down."},
    {FindingKind::long_head_run, "{body} has its head under water for {measured} in a row",
     "More than {limit} with the water at head level, and a body in a queue may drown.",
     "Let the body come up for air: lower the water or raise the channel's floor in between."},
    {FindingKind::stacked_sources, "{body} rises through {sources} on top of each other",
     "Water between sources pushes to no side, and bodies stop or turn back in it.",
     "Leave {source_limit} in the lift and let falling water fill the rest of it."},
    {FindingKind::foot_lift, "{body} may not rise: the lift starts at foot level",
     "Only the feet are in the water and the ground carries them, so the rise is unsure.",
     "Raise the lowest source to head level, or take the ground away under the lift."},
    {FindingKind::diagonal_current, "{body} meets a diagonal current",
     "The water pushes to two sides at once; many bodies at a time press into the corner.",
     "Stop one of the two flows with a sign just before the corner."},
    {FindingKind::open_edge, "{body} is washed onto an open edge, {measured} deep",
     "The water runs over the edge with the body; nothing holds the flow back if it changes.",
     "Put a sign at the end of the flow: the body passes it, the water stops."},
    {FindingKind::swimmer_pool, "{measured} of standing water are joined",
     "In pools of {limit} or more swimmers may appear, and they clog the way.",
     "Part the pool with walls or signs, or let the water flow."},
    {FindingKind::idle_signal, "{signals} changes nothing",
     "Every route stays the same whichever way the signal stands.",
     "Use it as the control of a mark, or remove it."},
    {FindingKind::twin_signals, "{signals} always agree",
     "They have the same value in every combination.",
     "Keep one of them, or correct the definition that was meant to differ."},
    {FindingKind::oscillation, "{signals} never {come} to rest{after_event}",
     "Each change brings the next one about: the logic goes round in a ring.",
     "Break the ring: let a latch hold the value, or take one of its signals out of what drives "
     "it."},
    {FindingKind::no_return, "{signals} cannot be brought back to as built",
     "No list of events leads from there to the state as built.",
     "Add what resets it, or let it start as it ends."},
    {FindingKind::unreached_state, "{states} of the memory never {comes} about",
     "No list of events from as built brings {signals} to these values.",
     "Nothing, if it is meant so: routes need not be right there. Else look at what drives it."},
    {FindingKind::remembering_water, "The water depends on what was done before",
     "The same combination comes with up to {waters}{to_what_effect}.",
     "Take away what the water holds on to: a sign before the cell that switches, a drain, or a "
     "source that is switched too."},
    {FindingKind::formed_source, "A source forms by switching and stays",
     "Two sources stood beside this cell at some moment; what has formed between them remains.",
     "Keep sources two cells apart in every setting, or let something solid take the cell."},
    {FindingKind::restless_water, "The water never comes to rest",
     "These {cells} still changed when every water that rests would have rested.",
     "Wall one of the flows off that feed each other."},
    {FindingKind::misrouting_switch, "{body} on its way can end at {outlets} when {event} changes",
     "Neither the old nor the new setting leads there: the change catches it on its way.",
     "{wait}"},
    {FindingKind::stranding_switch, "{body} on its way can be stranded when {event} changes",
     "The water leaves it or its way closes, where neither setting by itself would hold it.",
     "{wait}"},
    {FindingKind::spilling_switch, "{body} on its way can leave the drawing when {event} changes",
     "Neither the old nor the new setting lets it out: the change catches it on its way.",
     "{wait}"},
    {FindingKind::crushing_switch, "{body} can be crushed when {event} changes",
     "Something solid takes a cell that it is in at that moment.", "{wait}"},
    {FindingKind::table_gap, "The table of {table} has no row for {gap}",
     "The rows say nothing of these combinations, so nothing is expected of them.",
     "{rows_to_add}"},
    {FindingKind::shadowed_row, "A row of the table of {table} says nothing of its own",
     "Every combination it applies to is named by earlier rows.",
     "Remove the row, or correct its settings."},
    {FindingKind::overlapping_rows, "Rows of the table of {table} share combinations",
     "They name the same route, so nothing contradicts; but they say it twice.",
     "Write 0 or 1 in the place of a dash in one of them, or let it be."},
    {FindingKind::stale_acceptance, "Nothing answers to an accepted finding",
     "No {accepted} is found that shows only where and when the acceptance says.",
     "Remove the acceptance, or correct its place and its condition."},
    {FindingKind::unlike_record, "{recorded_thing} not as recorded",
     "The record beside the design says otherwise.",
     "Look at both with leat record; mend the design, or accept what it does now."},
    {FindingKind::unrecorded, "{recorded_thing} not recorded",
     "The record beside the design says nothing of it.",
     "Look at it with leat record, and accept it if it is meant."},
    {FindingKind::stale_record, "{entries} of the record speak of what there is no more",
     "Something has been renamed or removed since it was recorded.",
     "Look at them with leat record, and accept that they go."},
}};

std::string with_article(std::string const& name) {
  bool const is_vowel = std::string_view("aeiouAEIOU").find(name.front()) != std::string_view::npos;
  return (is_vowel ? "an " : "a ") + name;
}

std::string body_phrase(Subject const& subject, findings::Finding const& finding) {
  std::vector<std::string> bodies;
  for (auto const& name : names_of(subject.map.profiles, finding.profiles)) {
    bodies.push_back(with_article(name));
  }
  auto phrase = bodies.empty() ? std::string("a body") : listed(bodies, "or");
  phrase.front() = 'A';
  if (finding.inlets.empty()) return phrase;
  return phrase + " from " + listed(names_of(subject.map.inlets, finding.inlets), "or");
}

std::string accepted_name(Subject const& subject, findings::Finding const& finding) {
  if (!finding.acceptance) return {};
  return std::string(model::row_of(subject.design.acceptances[*finding.acceptance].kind).name);
}

std::string event_name(Subject const& subject, findings::Finding const& finding) {
  return finding.event ? subject.map.signals[*finding.event].name : std::string();
}

std::string wait_words(Subject const& subject, findings::Finding const& finding) {
  if (!finding.ticks) {
    return fmt::format(
        "Nothing may be on its way when {} changes; as it stands a body can stay "
        "inside for ever, so no wait is long enough.",
        event_name(subject, finding));
  }
  auto const kind = subject.design.circuit.signals[*finding.event].kind;
  if (kind == model::SignalKind::plate) {
    return fmt::format(
        "Let bodies follow each other by {}, so that none is on its way when the next one steps "
        "on {}.",
        time_words(subject, *finding.ticks), event_name(subject, finding));
  }
  return fmt::format(
      "Let {} change only {} after the last one has entered: wire that wait in, or "
      "shut the inlet before.",
      event_name(subject, finding), time_words(subject, *finding.ticks));
}

// "millhouse", or "walker from millhouse", as the table's heading names them.
std::string table_name(Subject const& subject, findings::Finding const& finding) {
  auto const inlets = listed(names_of(subject.map.inlets, finding.inlets));
  if (finding.profiles.empty()) return inlets;
  return listed(names_of(subject.map.profiles, finding.profiles)) + " from " + inlets;
}

bool do_all_float(Subject const& subject, findings::Finding const& finding) {
  return std::all_of(finding.profiles.begin(), finding.profiles.end(),
                     [&](model::ProfileId body) { return subject.design.profiles[body].floats; });
}

std::string gap_words(Subject const& subject, findings::Finding const& finding) {
  if (finding.kind != FindingKind::table_gap) return {};
  auto const outlets = names_of(subject.map.outlets, finding.outlets);
  switch (static_cast<findings::Gap>(finding.measured)) {
    case findings::Gap::parting:
      return "where bodies go different ways";
    case findings::Gap::doubtful:
      return fmt::format("what reaches {} in doubt", listed(outlets));
    case findings::Gap::same_way:
      break;
  }
  return "what reaches " + (outlets.empty() ? "nothing" : listed(outlets));
}

// The rows that would fill a gap, below the columns that they need; where none holds, why not.
std::string rows_to_add(Subject const& subject, findings::Finding const& finding) {
  constexpr std::size_t most_rows = 4;
  if (finding.kind != FindingKind::table_gap) return {};
  auto const what = static_cast<findings::Gap>(finding.measured);
  if (what == findings::Gap::parting)
    return fmt::format(
        "No row holds for all of them: write a table for each body, such as "
        "'expect table {} from {}'.",
        subject.map.profiles.at(0).name, listed(names_of(subject.map.inlets, finding.inlets)));
  if (what == findings::Gap::doubtful)
    return "No row holds there yet: first repair what makes the route doubtful.";
  if (finding.condition.size() > most_rows)
    return "Add rows for them: leat table with --as expect writes a whole table.";
  std::string rows;
  for (auto const& cube : finding.condition) {
    rows += rows.empty() ? " " : "; ";
    for (std::size_t i = 0; i < finding.signals.size(); ++i) {
      bool const is_on = (cube.value >> i & 1u) != 0;
      rows += (cube.care >> i & 1u) == 0 ? "- " : is_on ? "1 " : "0 ";
    }
    auto const outlets = names_of(subject.map.outlets, finding.outlets);
    rows += outlets.empty() ? "| nothing" : fmt::format("| {}", fmt::join(outlets, ", "));
  }
  return fmt::format("Below the columns {}, add{}.",
                     fmt::join(names_of(subject.map.signals, finding.signals), " "), rows);
}

// What is recorded: "Routes of the walker from millhouse are", "Findings hard-landing are".
std::string recorded_thing(Subject const& subject, findings::Finding const& finding) {
  bool const is_of_record =
      finding.kind == FindingKind::unlike_record || finding.kind == FindingKind::unrecorded;
  if (!is_of_record) return {};
  if (!finding.about.empty()) {
    std::vector<std::string> kinds;
    for (auto kind : finding.about) kinds.emplace_back(model::row_of(kind).name);
    return fmt::format("What {} {} is", listed(kinds), kinds.size() == 1 ? "says" : "say");
  }
  if (finding.inlets.empty() && finding.kind == FindingKind::unrecorded)
    return fmt::format("The junction {} is", subject.map.junction.name);
  if (finding.inlets.empty())
    return finding.measured == 1 ? "1 time is" : fmt::format("{} times are", finding.measured);
  return fmt::format("Where the {} from {} goes is",
                     subject.map.profiles[finding.profiles.front()].name,
                     subject.map.inlets[finding.inlets.front()].name);
}

// The inlets that a round of joins leads through; none where the round is one of cells.
std::vector<std::string> round_of_joins(Subject const& subject, findings::Finding const& finding) {
  std::vector<std::string> names;
  std::size_t cells = 0;
  if (finding.kind != FindingKind::endless_loop) return names;
  for (auto const& join : subject.design.joins) {
    auto const& inlet = subject.design.inlets[join.inlet].cells;
    auto const& name = subject.map.inlets[join.inlet].name;
    bool const is_of_it =
        std::includes(finding.cells.begin(), finding.cells.end(), inlet.begin(), inlet.end());
    if (!is_of_it || std::find(names.begin(), names.end(), name) != names.end()) continue;
    names.push_back(name);
    cells += inlet.size();
  }
  if (cells < finding.cells.size()) names.clear();
  return names;
}

std::string round_words(Subject const& subject, findings::Finding const& finding) {
  auto const inlets = round_of_joins(subject, finding);
  if (inlets.empty())
    return fmt::format("These {} lead only to one another: no move leaves them.",
                       counted(finding.cells.size(), "cell"));
  return fmt::format("Joins lead from {} back to {}, and nothing leads out.",
                     listed(inlets, "and", 4), inlets.size() == 1 ? "itself" : "one another");
}

// Of a works, what lies behind an outlet along the joins.
std::string behind_words(findings::Finding const& finding) {
  if (finding.kind != FindingKind::unreached_outlet || finding.measured == 0) return {};
  return fmt::format(", nor to {} behind it",
                     counted(static_cast<std::size_t>(finding.measured), "outlet"));
}

std::string round_remedy(Subject const& subject, findings::Finding const& finding) {
  return round_of_joins(subject, finding).empty()
             ? "Break the ring: stop one of its flows with a sign, or open a way out."
             : "Let one of these joins lead elsewhere, or leave an outlet of the round open.";
}

std::string filled(std::string_view sentence, Subject const& subject,
                   findings::Finding const& finding) {
  auto const measured = static_cast<std::size_t>(finding.measured);
  auto const limit = static_cast<std::size_t>(finding.limit);
  bool const is_choice = finding.kind == FindingKind::split_route;
  return fmt::format(
      fmt::runtime(sentence), fmt::arg("body", body_phrase(subject, finding)),
      fmt::arg("outlets",
               listed(names_of(subject.map.outlets, finding.outlets), is_choice ? "or" : "and")),
      fmt::arg("destination", finding.outlets.empty()
                                  ? std::string("nothing")
                                  : listed(names_of(subject.map.outlets, finding.outlets))),
      fmt::arg("signals", listed(names_of(subject.map.signals, finding.signals))),
      fmt::arg("measured", counted(measured, "cell")), fmt::arg("limit", counted(limit, "cell")),
      fmt::arg("sources", counted(measured, "source")),
      fmt::arg("source_limit", counted(limit, "source")),
      fmt::arg("cells", counted(finding.cells.size(), "cell")),
      fmt::arg("waters", counted(measured, "water")),
      fmt::arg("states", counted(measured, "value")),
      fmt::arg("comes", measured == 1 ? "comes" : "come"),
      fmt::arg("come", finding.signals.size() == 1 ? "comes" : "come"),
      fmt::arg("to_what_effect", finding.severity == model::Severity::note
                                     ? ", to the same effect"
                                     : ", and bodies go different ways in them"),
      fmt::arg("event", event_name(subject, finding)),
      fmt::arg("after_event",
               finding.event ? fmt::format(" after {} changes", event_name(subject, finding)) : ""),
      fmt::arg("wait", wait_words(subject, finding)),
      fmt::arg("table", table_name(subject, finding)),
      fmt::arg("float_or_rest", do_all_float(subject, finding) ? "float" : "rest"),
      fmt::arg("gap", gap_words(subject, finding)),
      fmt::arg("rows_to_add", rows_to_add(subject, finding)),
      fmt::arg("behind", behind_words(finding)), fmt::arg("round", round_words(subject, finding)),
      fmt::arg("round_remedy", round_remedy(subject, finding)),
      fmt::arg("recorded_thing", recorded_thing(subject, finding)),
      fmt::arg("entries", measured == 1 ? "1 entry" : fmt::format("{} entries", measured)),
      fmt::arg("accepted", accepted_name(subject, finding)));
}

}  // namespace

FindingSentences sentences_of(Subject const& subject, findings::Finding const& finding) {
  auto const& row = sentence_table[static_cast<std::size_t>(finding.kind)];
  return {filled(row.headline, subject, finding), filled(row.reason, subject, finding),
          filled(row.remedy, subject, finding)};
}

source::Span span_of(Subject const& subject, findings::Finding const& finding) {
  auto const& map = subject.map;
  if (finding.acceptance) return map.acceptances[*finding.acceptance].span;
  if (finding.expectation) return map.expectations[*finding.expectation].span;
  if (!finding.cells.empty()) {
    return map.span_of(subject.design.grid.place(finding.cells.front()));
  }
  if (!finding.signals.empty()) return map.signals[finding.signals.front()].span;
  if (finding.event) return map.signals[*finding.event].span;
  if (!finding.outlets.empty()) return map.outlets[finding.outlets.front()].span;
  if (!finding.inlets.empty()) return map.inlets[finding.inlets.front()].span;
  return map.junction.span;
}

std::vector<std::size_t> telling_order(std::vector<findings::Finding> const& findings) {
  std::vector<std::size_t> order(findings.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    auto const &first = findings[a], &second = findings[b];
    if (first.severity != second.severity) return first.severity > second.severity;
    bool const is_first_effect = first.kind == FindingKind::unreached_outlet;
    return !is_first_effect && second.kind == FindingKind::unreached_outlet;
  });
  return order;
}

}  // namespace leat::render
