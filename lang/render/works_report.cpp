#include "lang/render/works_report.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/works/claims.hpp"
#include "lang/render/diagnostic_text.hpp"
#include "lang/render/example.hpp"
#include "lang/render/fate_words.hpp"
#include "lang/render/finding_sentences.hpp"
#include "lang/render/islands_text.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/words.hpp"
#include "lang/render/works_condition.hpp"

namespace leat::render {

using verdicts::Truthfulness;

namespace {

std::vector<std::string> input_names(JudgedWorks const& works) {
  return names_of(works.subject.map.signals, works.judgement.conditions->variables());
}

std::string heading(JudgedWorks const& works, Look look) {
  auto const& [subject, judged] = works;
  auto text = painted(look, Role::strong, "works " + subject.map.junction.name);
  if (!subject.map.title.empty()) text += ", " + subject.map.title;
  auto const structure = fmt::format(
      "{}, {}, {} in {}", counted(subject.map.placed.size(), "place"),
      counted(subject.design.joins.size(), "join"), counted(judged.islands.copies.size(), "island"),
      counted(judged.islands.parts.size(), "kind"));
  return text + "\n    " + painted(look, Role::quiet, structure) + "\n\n";
}

// Where else the part of a finding stands.
std::string also_line(JudgedWorks const& works, std::uint32_t part, Look look) {
  auto places = places_of(works, part);
  if (places.size() < 2) return {};
  places.erase(places.begin());
  return worded_line("also in", listed(places), look);
}

std::string part_findings(JudgedWorks const& works, Look look) {
  std::string result;
  for (std::uint32_t part = 0; part < works.judgement.parts.size(); ++part) {
    auto const& judged = works.judgement.parts[part];
    JudgedJunction const told{works.subject, judged,
                              std::vector<Scene const*>(judged.findings.size(), nullptr)};
    for (auto i : telling_order(judged.findings))
      result += finding_text(told, i, look) + also_line(works, part, look) + "\n";
  }
  return result;
}

std::string whole_findings(JudgedWorks const& works, Look look) {
  auto const whole = whole_of(works.judgement);
  JudgedJunction const told{works.subject, whole,
                            std::vector<Scene const*>(whole.findings.size(), nullptr)};
  std::string result;
  for (auto i : telling_order(whole.findings)) result += finding_text(told, i, look) + "\n";
  return result;
}

std::string undecided_parts(JudgedWorks const& works, Look look) {
  std::string result;
  for (auto part : works.judgement.too_large) {
    auto const& variables = works.judgement.parts[part].variables;
    auto const places = places_of(works, part);
    result += heading_line("undecided", "island",
                           fmt::format("What stands in {} depends on {}, too many to run",
                                       places.empty() ? "the works" : places.front(),
                                       counted(variables.size(), "signal")),
                           look);
    result += worded_line("signals", listed(names_of(works.subject.map.signals, variables)), look);
    result +=
        worded_line("do",
                    "Part it: water between solid cells, or a join in the place of a way, lets "
                    "each piece be judged by itself.",
                    look) +
        "\n";
  }
  return result;
}

std::string follow_line(JudgedWorks const& works, works::JudgedClaim const& claim, Look look) {
  auto const& passage = works.judgement.passages[*claim.passage];
  auto const setting = instance_words(works, *claim.instance);
  return see_line(follow_command(works.subject, passage.inlet, passage.profile,
                                 setting.empty() ? "" : fmt::format(" --when \"{}\"", setting)),
                  look);
}

std::string found_words(JudgedWorks const& works, works::JudgedClaim const& claim) {
  std::vector<model::FindingKind> kinds;
  for (auto const& [part, finding] : claim.part_findings)
    kinds.push_back(works.judgement.parts[part].findings[finding].kind);
  for (auto finding : claim.plant_findings)
    kinds.push_back(works.judgement.findings[finding].finding.kind);
  return kinds_words(kinds);
}

// What a player does; where memory stands in the way, the setting that must be come to.
std::string way_words(JudgedWorks const& works, works::Instance const& instance) {
  auto const& [subject, judged] = works;
  std::vector<model::SignalId> flips;
  auto const& variables = judged.conditions->variables();
  for (std::size_t level = 0; level < variables.size(); ++level) {
    auto const& signal = subject.design.circuit.signals[variables[level]];
    if (signal.is_memory()) return instance_words(works, instance);
    if (signal.starts_on != instance[level]) flips.push_back(variables[level]);
  }
  return player_steps(subject, flips);
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
  if (claim.passage && claim.instance) {
    auto const& passage = judged.passages[*claim.passage];
    result += worded_line(
        "then",
        fmt::format("the {} from {} {}", subject.map.profiles[passage.profile].name,
                    subject.map.inlets[passage.inlet].name,
                    fate_words(subject, works::fate(passage, judged.conditions->diagram(),
                                                    *claim.instance))),
        look);
    result += follow_line(works, claim, look);
  }
  bool const is_told = claim.instance.has_value();
  return is_told ? result : result + worded_line("why", reason_of(claim.verdict), look);
}

}  // namespace

std::vector<std::string> places_of(JudgedWorks const& works, std::uint32_t part) {
  std::vector<std::string> names;
  for (auto const& copy : works.judgement.islands.copies) {
    if (copy.part != part) continue;
    auto name = standing_words(works.subject, works.judgement.islands.parts[part], copy);
    if (!name.empty()) names.push_back(std::move(name));
  }
  return names;
}

Judgement whole_of(works::WorksJudgement const& judged) {
  Judgement whole;
  whole.is_decided = true;
  for (auto const& [finding, condition] : judged.findings) whole.findings.push_back(finding);
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

std::string works_report(JudgedWorks const& works, Look look) {
  auto result = heading(works, look);
  result += undecided_parts(works, look);
  result += part_findings(works, look);
  result += whole_findings(works, look);
  for (std::size_t i = 0; i < works.judgement.expectations.size(); ++i) {
    if (works.judgement.expectations[i].verdict == Truthfulness::holds) continue;
    result += claim_text(works, i, look) + "\n";
  }
  return result;
}

std::string works_lines(JudgedWorks const& works) {
  std::string result;
  for (auto const& part : works.judgement.parts)
    result += junction_lines({works.subject, part, {}});
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
  for (auto const& part : judged.parts) {
    if (!part.is_decided) summary.too_many = "signals of some islands";
    if (part.is_decided) {
      summary.is_history_left_out |= !part.histories.is_followed;
      summary.is_switching_left_out |= !part.switchings.is_complete;
    }
    count_findings(summary, part.findings);
  }
  count_findings(summary, whole_of(judged).findings);
  for (auto const& claim : judged.expectations) count_verdict(summary, claim.verdict);
}

}  // namespace leat::render
