#include <fmt/format.h>

#include "engine/works/knowledge.hpp"
#include "lang/render/example.hpp"
#include "lang/render/finding_sentences.hpp"
#include "lang/render/found_again.hpp"
#include "lang/render/spots.hpp"
#include "lang/render/telling.hpp"
#include "lang/render/words.hpp"
#include "lang/render/works_condition.hpp"
#include "lang/render/works_questions.hpp"
#include "lang/render/works_report.hpp"

namespace leat::render {

namespace {

// What a part has several copies of is found in each of them.
void tell_copies(JudgedWorks const& works, works::Piece const& piece,
                 findings::Finding const& finding, ToldFinding& told) {
  auto found = found_again(works, piece, finding);
  if (found.empty()) return;
  auto const words = also_words(found);
  for (auto& again : found)
    told.also.push_back(
        {std::move(again.place), std::move(again.condition), std::move(again.event)});
  told.elsewhere.push_back(
      {spot_of(works.subject.text, works.subject.map.junction.span), std::nullopt,
       fmt::format("It shows in {} too", listed(words, "and", most_elsewhere))});
}

std::vector<ToldFinding> told_parts(JudgedWorks const& works) {
  std::vector<ToldFinding> findings;
  for (auto const& piece : works::pieces_of(works.judgement)) {
    auto here = told(JudgedSubject{works.subject, *piece.judged, {}, {}}).findings;
    auto const order = telling_order(piece.judged->findings);
    for (std::size_t i = 0; i < here.size(); ++i) {
      tell_copies(works, piece, piece.judged->findings[order[i]], here[i]);
      findings.push_back(std::move(here[i]));
    }
  }
  return findings;
}

std::vector<ToldFinding> told_whole(JudgedWorks const& works) {
  auto const& [subject, judged] = works;
  auto const whole = whole_of(judged);
  auto findings = told(JudgedSubject{subject, whole, {}, {}}).findings;
  auto const order = telling_order(whole.findings);
  auto const inputs = names_of(subject.map.signals, judged.conditions->variables());
  for (std::size_t i = 0; i < order.size(); ++i) {
    findings[i].is_proved = judged.findings[order[i]].is_proved;
    auto const condition = judged.findings[order[i]].condition;
    findings[i].condition = condition_expression(*judged.conditions, condition, inputs);
    findings[i].combinations = combinations_of(*judged.conditions, condition);
    if (!inputs.empty()) findings[i].when = where_words(*judged.conditions, condition, inputs);
  }
  return findings;
}

void tell_instance(JudgedWorks const& works, works::Instance const& instance,
                   ToldExpectation& told) {
  auto const& [subject, judged] = works;
  auto const& variables = judged.conditions->variables();
  told.example.emplace();
  for (std::size_t level = 0; level < variables.size(); ++level)
    told.example->emplace_back(subject.map.signals[variables[level]].name, bool{instance[level]});
  auto const flips = flips_to(works, instance);
  if (!flips) return;
  auto const steps = step_words(subject, *flips);
  told.way.emplace();
  told.way->flips = names_of(subject.map.signals, *flips);
  for (std::size_t i = 0; i < flips->size(); ++i)
    told.way->deeds.push_back(
        {spot_of(subject.text, subject.map.signals[(*flips)[i]].span), {}, steps[i]});
}

ToldExpectation told_claim(JudgedWorks const& works, std::size_t index) {
  auto const& claim = works.judgement.expectations[index];
  auto const& text = works.subject.map.expectations[index];
  auto words = claim_words(works, index);
  ToldExpectation told;
  told.title = text.title;
  told.clause = text.clause;
  told.verdict = claim.verdict;
  told.spot = spot_of(works.subject.text, text.span);
  told.when = std::move(words.when);
  told.outcome = std::move(words.outcome);
  told.remedy = words.remedy;
  told.command = std::move(words.command);
  if (claim.instance) tell_instance(works, *claim.instance, told);
  return told;
}

}  // namespace

ToldJunction told(JudgedWorks const& works) {
  auto const& [subject, judged] = works;
  auto const& conditions = *judged.conditions;
  ToldJunction told;
  told.name = subject.map.junction.name;
  told.spot = spot_of(subject.text, subject.map.junction.span);
  told.combinations = combinations_of(conditions, conditions.reachable());
  if (works::is_incomplete(judged)) told.left_out.emplace_back("combinations");
  if (!works::is_history_known(judged)) told.left_out.emplace_back("history");
  if (!works::are_findings_complete(judged) || !works::is_switching_known(judged))
    told.left_out.emplace_back("switching");
  if (conditions.has_too_many_states()) told.left_out.emplace_back("states");
  if (!judged.kinds_in_doubt.empty()) told.left_out.emplace_back("promised");
  for (auto kind : works::kinds_left_out(judged))
    told.kinds_left_out.emplace_back(model::row_of(kind).name);
  told.open = open_questions(works);
  told.findings = told_parts(works);
  for (auto& finding : told_whole(works)) told.findings.push_back(std::move(finding));
  for (std::size_t i = 0; i < judged.expectations.size(); ++i)
    told.expectations.push_back(told_claim(works, i));
  return told;
}

}  // namespace leat::render
