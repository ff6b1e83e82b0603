#include "lang/render/telling.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "lang/render/check_report.hpp"
#include "lang/render/condition.hpp"
#include "lang/render/example.hpp"
#include "lang/render/finding_sentences.hpp"
#include "lang/render/spots.hpp"
#include "lang/render/trail_text.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using findings::Finding;
using verdicts::JudgedExpectation;

// Of a long way its beginning and its end are told.
constexpr std::size_t most_trail = 500;

std::vector<Remark> trail_of(Subject const& subject, BodyWay const& way, std::string const& body,
                             std::string_view ending) {
  auto const& grid = subject.design.grid;
  auto const count = way.positions.size();
  auto const left_out = count - std::min(count, most_trail);
  std::vector<Remark> trail;
  for (std::size_t i = 0; i < count; ++i) {
    if (left_out > 0 && i == most_trail / 2) i += left_out;
    auto const at = grid.place(way.positions[i].feet);
    std::string words = "enters";
    if (i > 0) words = move_words(grid.place(way.positions[i - 1].feet), way.steps[i - 1], at);
    if (left_out > 0 && i == most_trail / 2 + left_out)
      words = fmt::format("after {} that are left out: {}", counted(left_out, "step"), words);
    if (i + 1 == count) words += fmt::format("; {}", ending);
    trail.push_back(remark_at(subject, at, fmt::format("{}: {}", body, words)));
  }
  return trail;
}

ToldWay way_of(Subject const& subject, std::vector<model::SignalId> const& flips,
               std::optional<model::SignalId> event) {
  ToldWay way;
  auto all = flips;
  if (event) {
    auto const [before, switched] = before_event(subject, flips, *event);
    way.switched_by = subject.map.signals[switched].name;
    all = before;
    all.push_back(switched);
  }
  way.flips = names_of(subject.map.signals, all);
  if (event) way.flips.pop_back();
  auto const steps = step_words(subject, all);
  for (std::size_t i = 0; i < all.size(); ++i)
    way.deeds.push_back({spot_of(subject.text, subject.map.signals[all[i]].span), {}, steps[i]});
  return way;
}

void tell_ways(JudgedSubject const& judged, std::size_t index, ToldFinding& told) {
  auto const& subject = judged.subject;
  auto const& finding = judged.judgement.findings[index];
  for (auto const& example : finding.examples)
    told.ways.push_back(way_of(subject, example.flips, finding.event));
  if (judged.of_findings.empty() || !judged.of_findings[index]) return;
  told.ways.front().trail = trail_of(subject, *judged.of_findings[index], told.bodies.front(),
                                     "here " + told.name + " shows");
}

std::string command_of(JudgedSubject const& judged, Finding const& finding) {
  if (model::is_of_switching(finding.kind)) return guard_command(judged.subject);
  if (finding.inlets.empty() || finding.profiles.empty() || finding.examples.empty()) return {};
  return follow_command(judged.subject, judged.judgement, finding.examples.front(),
                        finding.inlets.front(), finding.profiles.front());
}

ToldFinding told_finding(JudgedSubject const& judged, std::size_t index) {
  auto const& [subject, judgement, of_findings, of_expectations] = judged;
  auto const& finding = judgement.findings[index];
  auto const& map = subject.map;
  auto sentences = sentences_of(subject, finding);
  auto const signals = names_of(map.signals, judgement.variables);
  ToldFinding told;
  told.name = model::row_of(finding.kind).name;
  told.severity = finding.severity;
  told.spot = spot_of(subject.text, span_of(subject, finding));
  for (auto cell : finding.cells) told.cells.push_back(subject.design.grid.place(cell));
  for (std::size_t i = 1; i < std::min(told.cells.size(), most_elsewhere + 1); ++i)
    told.elsewhere.push_back(remark_at(subject, told.cells[i], "It shows here too"));
  told.inlets = names_of(map.inlets, finding.inlets);
  told.outlets = names_of(map.outlets, finding.outlets);
  told.bodies = names_of(map.profiles, finding.profiles);
  told.signals = names_of(map.signals, finding.signals);
  told.condition = condition_expression(finding.rows, judgement.combinations.reachable, signals);
  if (!judgement.variables.empty() && !finding.rows.is_empty())
    told.when = where_words(subject, judgement, finding.rows);
  told.combinations = static_cast<Count>(finding.rows.count());
  if (finding.event) told.event = map.signals[*finding.event].name;
  told.ticks = finding.ticks;
  told.headline = std::move(sentences.headline);
  told.reason = std::move(sentences.reason);
  told.remedy = std::move(sentences.remedy);
  told.command = command_of(judged, finding);
  if (finding.accepted_by) {
    auto const& acceptance = map.acceptances[*finding.accepted_by];
    told.accepted = ToldAcceptance{acceptance.reason, spot_of(subject.text, acceptance.span)};
  }
  tell_ways(judged, index, told);
  return told;
}

void tell_example(JudgedSubject const& judged, std::size_t index, ToldExpectation& told) {
  auto const& subject = judged.subject;
  auto const& expectation = judged.judgement.expectations[index];
  if (!expectation.example) return;
  told.example.emplace();
  for (auto [signal, is_on] : assignment_of(subject, judged.judgement, *expectation.example))
    told.example->emplace_back(subject.map.signals[signal].name, is_on);
  told.way = way_of(subject, expectation.example->flips, std::nullopt);
  if (!expectation.route) return;
  auto const& trapped = expectation.route->trapped;
  for (std::size_t i = 0; i < std::min(trapped.size(), most_elsewhere); ++i)
    told.elsewhere.push_back(
        remark_at(subject, subject.design.grid.place(trapped[i]), "It can be trapped here"));
  told.command = follow_command(subject, judged.judgement, *expectation.example, *expectation.inlet,
                                *expectation.profile);
  if (judged.of_expectations.empty() || !judged.of_expectations[index]) return;
  told.way->trail = trail_of(subject, *judged.of_expectations[index],
                             subject.map.profiles[*expectation.profile].name, "here its way ends");
}

ToldExpectation told_expectation(JudgedSubject const& judged, std::size_t index) {
  auto const& [subject, judgement, of_findings, of_expectations] = judged;
  auto const& expectation = judgement.expectations[index];
  auto const& words = subject.map.expectations[index];
  ToldExpectation told;
  told.title = words.title;
  told.clause = words.clause;
  told.verdict = expectation.verdict;
  told.spot = spot_of(subject.text, words.span);
  if (!judgement.variables.empty() && !expectation.condition.empty())
    told.when = where_words(subject, judgement, expectation.failing);
  told.outcome = outcome_words({subject, judgement, {}}, index);
  told.remedy = remedy_of(expectation.verdict);
  told.ticks = expectation.measured;
  for (auto const outlet : expectation.dealt) {
    told.dealt.emplace_back();
    if (outlet) told.dealt.back() = subject.map.outlets[*outlet].name;
  }
  tell_example(judged, index, told);
  return told;
}

// What was not looked for, because it would have been too much.
std::vector<std::string> left_out(Judgement const& judgement) {
  if (!judgement.is_decided) return {"combinations"};
  std::vector<std::string> names;
  if (!judgement.histories.is_followed) names.emplace_back("history");
  if (!judgement.switchings.is_complete) names.emplace_back("switching");
  return names;
}

}  // namespace

ToldJunction told(JudgedSubject const& judged) {
  auto const& [subject, judgement, of_findings, of_expectations] = judged;
  ToldJunction told;
  told.name = subject.map.junction.name;
  told.spot = spot_of(subject.text, subject.map.junction.span);
  told.combinations = static_cast<Count>(judgement.combinations.reachable.count());
  told.left_out = left_out(judgement);
  told.open = open_questions(subject, judgement);
  for (auto i : telling_order(judgement.findings)) told.findings.push_back(told_finding(judged, i));
  for (std::size_t i = 0; i < judgement.expectations.size(); ++i)
    told.expectations.push_back(told_expectation(judged, i));
  return told;
}

ToldFault told(diagnostics::Diagnostic const& found, source::SourceText const& text) {
  ToldFault told;
  told.name = found.name;
  told.spot = spot_of(text, found.primary.span);
  for (auto const& label : found.others)
    told.elsewhere.push_back({spot_of(text, label.span), label.place, label.text});
  told.headline = found.headline;
  told.remedy = found.remedy;
  return told;
}

}  // namespace leat::render
