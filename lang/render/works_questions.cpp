#include "lang/render/works_questions.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/works/knowledge.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/example.hpp"
#include "lang/render/islands_text.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/words.hpp"
#include "lang/render/works_report.hpp"

namespace leat::render {

using verdicts::Truthfulness;

namespace {

constexpr std::size_t most_named = 40;  // signals of a region that is too large

// Something that depends on more signals than can be run: what it is and on how many, and which.
struct TooMuch {
  std::string_view what;
  std::string headline;
  std::vector<model::SignalId> signals;
  std::string_view parting;  // how it could fall into smaller pieces
};

TooMuch too_much(JudgedWorks const& works, std::uint32_t part) {
  auto const& judged = works.judgement.parts[part];
  auto const places = places_of(works, part);
  auto const why = judged.unended ? "is not known: " + unended_words(*judged.unended)
                                  : fmt::format("depends on {}, too many to run",
                                                counted(judged.variables.size(), "signal"));
  return {"island",
          fmt::format("What stands in {} {}", places.empty() ? "the works" : places.front(), why),
          judged.variables,
          "Or part it: water between solid cells, or a join in the place of a way, lets each piece "
          "be judged by itself."};
}

TooMuch too_much(JudgedWorks const& works, std::uint32_t part, std::uint32_t number) {
  auto const& judged = works.judgement;
  auto const& copy = first_copy(judged.islands, part);
  auto const& region = judged.by_regions[part]->regions[number];
  std::vector<model::SignalId> signals;
  for (auto signal : region.own_variables) signals.push_back(copy.signals[signal]);
  std::sort(signals.begin(), signals.end());
  return {"region",
          fmt::format("What happens around {} depends on {}, too much to run",
                      region_place(judged.islands.parts[part], copy, region.region),
                      counted(signals.size(), "signal")),
          std::move(signals),
          "Or part it: sources between its gates, or 8 cells of channel, keep their waters from "
          "each other. Everything that does not lead through it is decided."};
}

std::vector<TooMuch> all_too_much(JudgedWorks const& works) {
  std::vector<TooMuch> all;
  for (auto part : works.judgement.too_large) all.push_back(too_much(works, part));
  for (auto const& [part, number] : works.judgement.too_large_regions)
    all.push_back(too_much(works, part, number));
  return all;
}

constexpr std::string_view fewer_signals =
    "Let a wire say what a gate follows: if it reads each of its levers in one sense, and nothing "
    "else here reads them, it counts as one signal.";

constexpr std::string_view too_many_routes = "The conditions of the routes are too many to be kept";
constexpr std::string_view ask_one = "Ask it of one inlet, or of the junctions that are placed.";
constexpr std::string_view too_many_states =
    "It is not known which states the memory comes to: there are too many to be followed";
constexpr std::string_view fewer_latches =
    "Let fewer signals remember, or ask it of the junctions that are placed.";

std::string in_doubt(works::WorksJudgement const& judged) {
  return "A 'never' may bar what was done before, so it is not known whether these show: " +
         kinds_words(judged.kinds_in_doubt);
}
constexpr std::string_view without_doubt =
    "Promise it of the signals that switch the junction alone, or let its water forget: without "
    "the 'never' the check names the place.";

std::string not_looked_for(std::vector<model::FindingKind> const& kinds) {
  return "It is not known of all combinations whether these show: " + kinds_words(kinds);
}
constexpr std::string_view smaller_drawings =
    "Let the water forget where remembering-water is told, and part a drawing of many signals: "
    "islands of at most 16 signals, joined where bodies go on, are looked at as a whole.";

// How grave a finding of some kind is at most.
model::Severity gravest(std::vector<model::FindingKind> const& kinds) {
  auto most = model::Severity::note;
  for (auto kind : kinds) most = std::max(most, findings::finding_of(kind).severity);
  return most;
}

// What is found, but not for sure, and not accepted.
std::vector<model::FindingKind> not_proved(works::WorksJudgement const& judged) {
  std::vector<model::FindingKind> kinds;
  for (auto const& [finding, condition, is_proved, can_be_parted] : judged.findings)
    if (!is_proved && !finding.accepted_by) findings::insert_sorted(kinds, finding.kind);
  return kinds;
}

// What is left out since something else is too much is told with that.
std::vector<model::FindingKind> left_out_by_itself(works::WorksJudgement const& judged) {
  bool const is_told = works::is_incomplete(judged) || !judged.kinds_in_doubt.empty() ||
                       judged.conditions->has_too_many_states();
  if (is_told) return {};
  auto const kinds = works::kinds_left_out(judged);
  return gravest(kinds) > model::Severity::note ? kinds : std::vector<model::FindingKind>();
}

}  // namespace

std::string undecided_text(JudgedWorks const& works, Look look) {
  std::string result;
  for (auto const& each : all_too_much(works)) {
    auto const names = names_of(works.subject.map.signals, each.signals);
    result += heading_line("undecided", each.what, each.headline, look);
    result += worded_line("signals", listed(names, "and", most_named), look);
    result += worded_line("do", fmt::format("{} {}", fewer_signals, each.parting), look) + "\n";
  }
  if (!works.judgement.kinds_in_doubt.empty()) {
    result += heading_line("undecided", "promised", in_doubt(works.judgement), look);
    result += worded_line("do", without_doubt, look) + "\n";
  }
  if (auto const kinds = left_out_by_itself(works.judgement); !kinds.empty()) {
    result += heading_line("undecided", "left out", not_looked_for(kinds), look);
    result += worded_line("do", smaller_drawings, look) + "\n";
  }
  return result;
}

WhyOpen why_open(JudgedWorks const& works, std::size_t index) {
  auto const& judged = works.judgement;
  auto const verdict = judged.expectations[index].verdict;
  if (verdict == Truthfulness::empty && judged.passages.size() == 0)
    return {"Nobody can come in from outside: every inlet is joined.",
            "Leave an inlet open, or remove the expectation."};
  if (verdict != Truthfulness::undecided)
    return {std::string(reason_of(verdict)), std::string(remedy_of(verdict))};
  if (auto const too_much = all_too_much(works); !too_much.empty())
    return {too_much.front().headline + ".", std::string(fewer_signals)};
  if (judged.has_run_out) return {fmt::format("{}.", too_many_routes), std::string(ask_one)};
  auto const claim = works.subject.design.expectations[index].claim;
  bool const is_of_findings = claim == model::Claim::no_findings || claim == model::Claim::finds;
  if (is_of_findings && !judged.kinds_in_doubt.empty())
    return {in_doubt(judged) + ".", std::string(without_doubt)};
  if (judged.may_be_wider && !is_of_findings)
    return {
        "Some water depends on what was done before, and it is not known which waters come "
        "together on a body's way.",
        "Let the water forget: remembering-water says where it does not."};
  if (judged.conditions->has_too_many_states())
    return {fmt::format("{}.", too_many_states), std::string(fewer_latches)};
  if (!judged.kinds_left_out.empty())
    return {not_looked_for(works::kinds_left_out(judged)) + ".", std::string(smaller_drawings)};
  return {std::string(reason_of(verdict)), std::string(remedy_of(verdict))};
}

std::vector<ToldOpen> open_questions(JudgedWorks const& works) {
  auto const& judged = works.judgement;
  std::vector<ToldOpen> open;
  for (auto const& each : all_too_much(works))
    open.push_back({each.headline, fmt::format("{} {}", fewer_signals, each.parting)});
  if (judged.has_run_out) open.push_back({std::string(too_many_routes), std::string(ask_one)});
  if (judged.conditions->has_too_many_states())
    open.push_back({std::string(too_many_states), std::string(fewer_latches)});
  if (auto const& kinds = judged.kinds_in_doubt; !kinds.empty())
    open.push_back({in_doubt(judged), std::string(without_doubt), gravest(kinds)});
  if (auto const kinds = left_out_by_itself(judged); !kinds.empty())
    open.push_back({not_looked_for(kinds), std::string(smaller_drawings), gravest(kinds)});
  if (auto const kinds = not_proved(judged); !kinds.empty())
    open.push_back(
        {"It is not known whether anybody comes to what these tell: " + kinds_words(kinds),
         std::string(smaller_drawings), gravest(kinds)});
  return open;
}

}  // namespace leat::render
