#include "lang/render/page/page_notes.hpp"

#include <fmt/format.h>

#include "lang/render/diagnostic_text.hpp"
#include "lang/render/example.hpp"
#include "lang/render/finding_sentences.hpp"
#include "lang/render/found_again.hpp"
#include "lang/render/words.hpp"
#include "lang/render/works_condition.hpp"
#include "lang/render/works_report.hpp"

namespace leat::render {

namespace {

std::string place_of(Subject const& subject, findings::Finding const& finding) {
  auto words = location(subject.text, span_of(subject, finding).begin);
  if (finding.cells.empty()) return words;
  words += ", " + place_words(subject.design.grid.place(finding.cells.front()));
  auto const more = finding.cells.size() - 1;
  return more == 0 ? words : words + fmt::format(" and {}", counted(more, "more cell"));
}

std::string steps_of(Subject const& subject, findings::Finding const& finding) {
  if (finding.examples.empty()) return {};
  auto const& flips = finding.examples.front().flips;
  return finding.event ? steps_then(subject, flips, *finding.event) : player_steps(subject, flips);
}

PageNote note_of(Subject const& subject, Judgement const& judged,
                 findings::Finding const& finding) {
  auto const sentences = sentences_of(subject, finding);
  PageNote note;
  note.severity = word_of(finding.severity);
  note.name = model::row_of(finding.kind).name;
  note.headline = sentences.headline;
  note.place = place_of(subject, finding);
  if (!judged.variables.empty() && !finding.rows.is_empty())
    note.when = where_words(subject, judged, finding.rows);
  note.steps = steps_of(subject, finding);
  note.reason = sentences.reason;
  note.remedy = sentences.remedy;
  if (finding.accepted_by) note.accepted = subject.map.acceptances[*finding.accepted_by].reason;
  note.cells = finding.cells;
  if (!finding.examples.empty()) note.flips = finding.examples.front().flips;
  return note;
}

PageClaim claim_of(Subject const& subject, std::size_t index, verdicts::Truthfulness verdict) {
  auto const& words = subject.map.expectations[index];
  return {words.title,
          words.clause,
          std::string(word_of(verdict)),
          location(subject.text, words.span.begin),
          {}};
}

}  // namespace

std::vector<PageNote> notes_of(Subject const& subject, Judgement const& judged) {
  std::vector<PageNote> notes;
  for (auto i : telling_order(judged.findings))
    notes.push_back(note_of(subject, judged, judged.findings[i]));
  return notes;
}

std::vector<PageNote> notes_of(JudgedWorks const& works) {
  std::vector<PageNote> notes;
  for (auto const& piece : works::pieces_of(works.judgement)) {
    if (piece.region) continue;
    auto const& findings = piece.judged->findings;
    for (auto i : telling_order(findings)) {
      notes.push_back(note_of(works.subject, *piece.judged, findings[i]));
      notes.back().also = listed(also_words(found_again(works, piece, findings[i])));
    }
  }
  for (auto& note : notes_of(works.subject, whole_of(works.judgement)))
    notes.push_back(std::move(note));
  return notes;
}

std::vector<PageClaim> claims_of(Subject const& subject, Judgement const& judged) {
  std::vector<PageClaim> claims;
  for (std::size_t i = 0; i < judged.expectations.size(); ++i) {
    auto const& expectation = judged.expectations[i];
    claims.push_back(claim_of(subject, i, expectation.verdict));
    if (!expectation.condition.empty() && !judged.variables.empty())
      claims.back().when = "fails " + where_words(subject, judged, expectation.failing);
  }
  return claims;
}

std::vector<PageClaim> claims_of(JudgedWorks const& works) {
  auto const& [subject, judged] = works;
  std::vector<PageClaim> claims;
  auto& conditions = *judged.conditions;
  auto const inputs = names_of(subject.map.signals, conditions.variables());
  for (std::size_t i = 0; i < judged.expectations.size(); ++i) {
    auto const& claim = judged.expectations[i];
    claims.push_back(claim_of(subject, i, claim.verdict));
    if (claim.failing != logic::Diagram::never && !inputs.empty())
      claims.back().when = "fails " + where_words(conditions, claim.failing, inputs);
  }
  return claims;
}

}  // namespace leat::render
