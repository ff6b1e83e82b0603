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
#include "lang/render/works_questions.hpp"

namespace leat::render {

using verdicts::Truthfulness;

namespace {

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
