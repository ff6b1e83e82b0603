#include "lang/render/works_report.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/works/claims.hpp"
#include "engine/works/knowledge.hpp"
#include "engine/works/lever_flips.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/diagnostic_text.hpp"
#include "lang/render/example.hpp"
#include "lang/render/fate_words.hpp"
#include "lang/render/finding_sentences.hpp"
#include "lang/render/found_again.hpp"
#include "lang/render/islands_text.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/words.hpp"
#include "lang/render/works_condition.hpp"

namespace leat::render {

using verdicts::Truthfulness;

namespace {

constexpr std::size_t most_named = 40;  // signals of a region that is too large

std::vector<std::string> input_names(JudgedWorks const& works) {
  return names_of(works.subject.map.signals, works.judgement.conditions->variables());
}

std::string heading(JudgedWorks const& works, Look look) {
  auto const& [subject, judged] = works;
  auto const word = subject.map.is_works() ? "works " : "junction ";
  auto text = painted(look, Role::strong, word + subject.map.junction.name);
  if (!subject.map.title.empty()) text += ", " + showable(subject.map.title);
  auto structure = fmt::format("{} in {}", counted(judged.islands.copies.size(), "island"),
                               counted(judged.islands.parts.size(), "kind"));
  if (subject.map.is_works())
    structure = fmt::format("{}, {}, {}", counted(subject.map.placed.size(), "place"),
                            counted(subject.design.joins.size(), "join"), structure);
  return text + "\n    " + painted(look, Role::quiet, structure) + "\n\n";
}

std::string piece_findings(JudgedWorks const& works, Look look) {
  std::string result;
  for (auto const& piece : works::pieces_of(works.judgement)) {
    auto const& findings = piece.judged->findings;
    JudgedJunction const told{works.subject, *piece.judged,
                              std::vector<Scene const*>(findings.size(), nullptr)};
    for (auto i : telling_order(findings))
      result +=
          finding_text(told, i, look) +
          worded_line("also in", listed(also_words(found_again(works, piece, findings[i]))), look) +
          "\n";
  }
  return result;
}

constexpr std::string_view not_sure =
    "No: ways are told wider here than they may be, and perhaps nobody comes to it.";

std::string whole_findings(JudgedWorks const& works, Look look) {
  auto const whole = whole_of(works.judgement);
  JudgedJunction told{works.subject, whole,
                      std::vector<Scene const*>(whole.findings.size(), nullptr)};
  auto const& judged = works.judgement;
  auto const inputs = input_names(works);
  for (auto const& found : judged.findings)
    told.conditions.push_back(
        inputs.empty() ? "" : where_words(*judged.conditions, found.condition, inputs));
  std::string result;
  for (auto i : telling_order(whole.findings)) {
    result += finding_text(told, i, look);
    if (!judged.findings[i].is_proved) result += worded_line("sure", not_sure, look);
    result += "\n";
  }
  return result;
}

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
    "the "
    "'never' the check names the place.";

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

std::string follow_command(JudgedWorks const& works, works::JudgedClaim const& claim) {
  auto const& passage = works.judgement.passages[*claim.passage];
  auto const setting = instance_words(works, *claim.instance);
  return render::follow_command(works.subject, passage.inlet, passage.profile,
                                setting.empty() ? "" : fmt::format(" --when \"{}\"", setting));
}

std::string found_words(JudgedWorks const& works, works::JudgedClaim const& claim) {
  std::vector<model::FindingKind> kinds;
  for (auto const* finding : claim.part_findings) kinds.push_back(finding->kind);
  for (auto finding : claim.plant_findings)
    kinds.push_back(works.judgement.findings[finding].finding.kind);
  return kinds_words(kinds);
}

// What a player does; where memory stands in the way, the setting that must be come to.
std::string way_words(JudgedWorks const& works, works::Instance const& instance) {
  auto const flips = flips_to(works, instance);
  return flips ? player_steps(works.subject, *flips) : instance_words(works, instance);
}

// What becomes of the body in the example.
std::string passage_words(JudgedWorks const& works, works::JudgedClaim const& claim) {
  auto const& [subject, judged] = works;
  auto const& passage = judged.passages[*claim.passage];
  return fmt::format(
      "the {} from {} {}", subject.map.profiles[passage.profile].name,
      subject.map.inlets[passage.inlet].name,
      fate_words(subject, works::fate(passage, judged.conditions->diagram(), *claim.instance)));
}

std::string claim_text(JudgedWorks const& works, std::size_t index, Look look) {
  auto const& [subject, judged] = works;
  auto const& claim = judged.expectations[index];
  auto const& words = subject.map.expectations[index];
  auto result = heading_line(word_of(claim.verdict),
                             words.title.empty() ? "expectation" : words.title, words.clause, look);
  result += "    " + painted(look, Role::quiet, location(subject.text, words.span.begin)) + "\n\n";
  result += source_excerpt(subject.text, words.span, 8, look) + "\n";
  result += worded_line("found", found_words(works, claim), look);
  if (claim.failing != logic::Diagram::never && !judged.conditions->variables().empty())
    result += worded_line("fails when",
                          where_words(*judged.conditions, claim.failing, input_names(works)), look);
  if (claim.instance && !judged.conditions->variables().empty())
    result += worded_line("try", way_words(works, *claim.instance), look);
  if (claim.passage && claim.instance)
    result += worded_line("then", passage_words(works, claim), look) +
              see_line(follow_command(works, claim), look);
  if (claim.instance) return result;
  auto const [why, remedy] = why_open(works, index);
  result += worded_line("why", why, look);
  return remedy.empty() ? result : result + worded_line("do", remedy, look);
}

}  // namespace

std::vector<std::string> places_of(JudgedWorks const& works, std::uint32_t part) {
  std::vector<std::string> names;
  auto const& islands = works.judgement.islands;
  for (auto c : islands.parts[part].copies) {
    auto name = standing_words(works.subject, islands.parts[part], islands.copies[c]);
    if (!name.empty()) names.push_back(std::move(name));
  }
  return names;
}

Judgement whole_of(works::WorksJudgement const& judged) {
  Judgement whole;
  whole.is_decided = true;
  for (auto const& found : judged.findings) whole.findings.push_back(found.finding);
  return whole;
}

std::string instance_words(JudgedWorks const& works, works::Instance const& instance) {
  auto const& [subject, judged] = works;
  Assignment assignment;
  auto const& variables = judged.conditions->variables();
  for (std::size_t level = 0; level < variables.size(); ++level)
    assignment[variables[level]] = instance[level];
  return setting_text(subject, assignment);
}

std::optional<std::vector<model::SignalId>> flips_to(JudgedWorks const& works,
                                                     works::Instance const& instance) {
  return works::flips_to(works.subject.design.circuit, *works.judgement.conditions, instance);
}

ClaimWords claim_words(JudgedWorks const& works, std::size_t index) {
  auto const& claim = works.judgement.expectations[index];
  auto& conditions = *works.judgement.conditions;
  ClaimWords words;
  if (claim.failing != logic::Diagram::never && !conditions.variables().empty())
    words.when = where_words(conditions, claim.failing, input_names(works));
  auto const found = found_words(works, claim);
  bool const is_shown = claim.passage && claim.instance;
  words.outcome = !found.empty() ? "found: " + found
                  : is_shown     ? passage_words(works, claim)
                                 : why_open(works, index).why;
  words.remedy = why_open(works, index).remedy;
  if (is_shown) words.command = follow_command(works, claim);
  return words;
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
    open.push_back({"It is not known whether anybody comes to what these tell: " +
                        kinds_words(kinds),
                    std::string(smaller_drawings), gravest(kinds)});
  return open;
}

std::string works_report(JudgedWorks const& works, Look look) {
  auto result = heading(works, look);
  result += undecided_text(works, look);
  result += piece_findings(works, look);
  result += whole_findings(works, look);
  for (std::size_t i = 0; i < works.judgement.expectations.size(); ++i) {
    if (works.judgement.expectations[i].verdict == Truthfulness::holds) continue;
    result += claim_text(works, i, look) + "\n";
  }
  return result;
}

std::string works_lines(JudgedWorks const& works) {
  std::string result;
  for (auto const& piece : works::pieces_of(works.judgement))
    result += junction_lines({works.subject, *piece.judged, {}});
  auto const whole = whole_of(works.judgement);
  result += junction_lines({works.subject, whole, {}});
  for (std::size_t i = 0; i < works.judgement.expectations.size(); ++i) {
    auto const verdict = works.judgement.expectations[i].verdict;
    if (verdict != Truthfulness::holds) result += expectation_line(works.subject, i, verdict);
  }
  return result;
}

void add(Summary& summary, JudgedWorks const& works) {
  auto const& [subject, judged] = works;
  auto const& conditions = *judged.conditions;
  ++summary.junctions;
  summary.combinations += combinations_of(conditions, conditions.reachable());
  for (auto variable : conditions.variables()) {
    summary.has_signals = true;
    summary.has_memory |= subject.design.circuit.signals[variable].is_memory();
  }
  summary.has_restless |= conditions.has_restless();
  summary.is_in_doubt |= !judged.kinds_in_doubt.empty();
  for (auto kind : works::kinds_left_out(judged))
    findings::insert_sorted(summary.kinds_left_out, kind);
  if (conditions.has_too_many_states())
    summary.too_many = "states of the memory";
  else if (!judged.too_large.empty())
    summary.too_many = "signals of some islands";
  else if (!judged.too_large_regions.empty())
    summary.too_many = "signals of some regions";
  for (auto const& piece : works::pieces_of(judged)) {
    summary.is_by_regions |= piece.region.has_value();
    if (piece.judged->is_decided && !piece.region) {
      summary.is_history_left_out |= !piece.judged->histories.is_followed;
      summary.is_switching_left_out |= !piece.judged->switchings.is_complete;
    }
    count_findings(summary, piece.judged->findings);
  }
  count_findings(summary, whole_of(judged).findings);
  for (auto const& claim : judged.expectations) count_verdict(summary, claim.verdict);
}

}  // namespace leat::render
