#include "lang/render/condition.hpp"
#include "lang/render/documents.hpp"
#include "lang/render/example.hpp"
#include "lang/render/finding_sentences.hpp"
#include "lang/render/json.hpp"
#include "lang/render/words.hpp"
#include "lang/render/works_condition.hpp"
#include "lang/render/works_report.hpp"

namespace leat::render {

namespace {

using Judged = FindingsPart::Judged;

// The names of what is flipped, one after the other, from as built.
Json flips_json(Subject const& subject, explore::Example const& example) {
  return names_of(subject.map.signals, example.flips);
}

Json ways_json(Subject const& subject, findings::Finding const& finding) {
  auto ways = Json::array();
  for (auto const& example : finding.examples) ways.push_back(flips_json(subject, example));
  return ways;
}

// Where it stands: the file is named where it is not the one of the run.
void put_place(Json& into, source::SourceText const& text, std::size_t offset) {
  auto const at = text.position(offset);
  if (at.file != 0) into["file"] = text.name(at.file);
  into["line"] = at.line;
  into["column"] = at.column;
}

Json finding_json(Judged const& judged, findings::Finding const& finding) {
  auto const& [subject, judgement] = judged;
  auto const& map = subject.map;
  auto const sentences = sentences_of(subject, finding);
  auto const signals = names_of(map.signals, judgement.variables);
  Json document{
      {"name", model::row_of(finding.kind).name},
      {"severity", word_of(finding.severity)},
      {"cells", places_json(subject.design.grid, finding.cells)},
      {"inlets", names_of(map.inlets, finding.inlets)},
      {"outlets", names_of(map.outlets, finding.outlets)},
      {"bodies", names_of(map.profiles, finding.profiles)},
      {"signals", names_of(map.signals, finding.signals)},
      {"condition", condition_expression(finding.rows, judgement.combinations.reachable, signals)},
      {"combinations", finding.rows.count()},
      {"event", finding.event ? Json(map.signals[*finding.event].name) : Json(nullptr)},
      {"ticks", finding.ticks ? Json(*finding.ticks) : Json(nullptr)},
      {"ways", ways_json(subject, finding)},
      {"headline", sentences.headline},
      {"reason", sentences.reason},
      {"remedy", sentences.remedy}};
  put_place(document, subject.text, span_of(subject, finding).begin);
  document["accepted"] =
      finding.accepted_by ? Json(map.acceptances[*finding.accepted_by].reason) : Json(nullptr);
  return document;
}

Json example_json(Judged const& judged, verdicts::JudgedExpectation const& expectation) {
  if (!expectation.example) return nullptr;
  auto assignment = Json::object();
  for (auto [signal, is_on] : assignment_of(judged.judgement, expectation.example->row))
    assignment[judged.subject.map.signals[signal].name] = is_on;
  return assignment;
}

Json way_of(Judged const& judged, verdicts::JudgedExpectation const& expectation) {
  return expectation.example ? flips_json(judged.subject, *expectation.example) : Json(nullptr);
}

Json dealt_json(Judged const& judged, verdicts::JudgedExpectation const& expectation) {
  auto dealt = Json::array();
  for (auto outlet : expectation.dealt)
    dealt.push_back(outlet ? Json(judged.subject.map.outlets[*outlet].name) : Json(nullptr));
  return dealt;
}

// What was not looked for, because it would have been too much.
Json left_out_json(Judgement const& judgement) {
  auto left_out = Json::array();
  if (!judgement.is_decided) return Json::array({"combinations"});
  if (!judgement.histories.is_followed) left_out.push_back("history");
  if (!judgement.switchings.is_complete) left_out.push_back("switching");
  return left_out;
}

Json expectation_json(Judged const& judged, std::size_t index) {
  auto const& expectation = judged.judgement.expectations[index];
  auto const& words = judged.subject.map.expectations[index];
  Json document{
      {"title", words.title}, {"clause", words.clause}, {"verdict", word_of(expectation.verdict)}};
  put_place(document, judged.subject.text, words.span.begin);
  document["example"] = example_json(judged, expectation);
  document["way"] = way_of(judged, expectation);
  document["ticks"] = expectation.measured ? Json(*expectation.measured) : Json(nullptr);
  document["dealt"] = dealt_json(judged, expectation);
  return document;
}

Json claim_json(JudgedWorks const& works, std::size_t index) {
  auto const& [subject, judged] = works;
  auto const& claim = judged.expectations[index];
  auto const& words = subject.map.expectations[index];
  auto const at = subject.text.position(words.span.begin);
  Json example = nullptr;
  if (claim.instance) {
    example = Json::object();
    auto const& variables = judged.conditions->variables();
    for (std::size_t level = 0; level < variables.size(); ++level)
      example[subject.map.signals[variables[level]].name] = bool{(*claim.instance)[level]};
  }
  return {{"title", words.title},
          {"clause", words.clause},
          {"verdict", word_of(claim.verdict)},
          {"line", at.line},
          {"column", at.column},
          {"example", std::move(example)},
          {"way", nullptr},
          {"ticks", nullptr},
          {"dealt", Json::array()}};
}

Json junction_json(Judged const& judged) {
  auto findings = Json::array(), expectations = Json::array();
  for (auto i : telling_order(judged.judgement.findings)) {
    findings.push_back(finding_json(judged, judged.judgement.findings[i]));
  }
  for (std::size_t i = 0; i < judged.judgement.expectations.size(); ++i) {
    expectations.push_back(expectation_json(judged, i));
  }
  return {{"name", judged.subject.map.junction.name},
          {"combinations", judged.judgement.combinations.reachable.count()},
          {"left_out", left_out_json(judged.judgement)},
          {"findings", std::move(findings)},
          {"expectations", std::move(expectations)}};
}

// A works has the same keys; what is true of several places is said of the first of them.
Json works_json(JudgedWorks const& works) {
  auto const& [subject, judged] = works;
  auto findings = Json::array(), expectations = Json::array();
  for (auto const& piece : works::pieces_of(judged)) {
    for (auto i : telling_order(piece.judged->findings))
      findings.push_back(finding_json({subject, *piece.judged}, piece.judged->findings[i]));
  }
  auto const whole = whole_of(judged);
  for (auto const& finding : whole.findings)
    findings.push_back(finding_json({subject, whole}, finding));
  for (std::size_t i = 0; i < judged.expectations.size(); ++i)
    expectations.push_back(claim_json(works, i));
  auto left_out = Json::array();
  if (works::is_incomplete(judged)) left_out.push_back("combinations");
  if (!works::are_findings_complete(judged)) left_out.push_back("switching");
  auto const& conditions = *judged.conditions;
  return {{"name", subject.map.junction.name},
          {"combinations", count_json(combinations_of(conditions, conditions.reachable()))},
          {"left_out", std::move(left_out)},
          {"findings", std::move(findings)},
          {"expectations", std::move(expectations)}};
}

Json diagnostic_json(source::SourceText const& text, diagnostics::Diagnostic const& found) {
  Json document{{"name", found.name}};
  put_place(document, text, found.primary.span.begin);
  document["headline"] = found.headline;
  document["remedy"] = found.remedy;
  return document;
}

Json file_json(FindingsPart const& part) {
  auto diagnostics = Json::array(), junctions = Json::array();
  if (!part.fault.empty()) {
    diagnostics.push_back({{"name", "file-not-read"},
                           {"line", 0},
                           {"column", 0},
                           {"headline", part.fault},
                           {"remedy", part.remedy}});
  }
  for (auto const& found : part.diagnostics) {
    diagnostics.push_back(diagnostic_json(*part.text, found));
  }
  for (auto const& judged : part.junctions) junctions.push_back(junction_json(judged));
  for (auto const& works : part.works) junctions.push_back(works_json(works));
  return {{"file", part.file},
          {"diagnostics", std::move(diagnostics)},
          {"junctions", std::move(junctions)}};
}

}  // namespace

std::string findings_document(std::vector<FindingsPart> const& parts, int exit) {
  auto document = document_head("leat-findings");
  document["files"] = Json::array();
  for (auto const& part : parts) document["files"].push_back(file_json(part));
  document["exit"] = exit;
  return printed(document);
}

}  // namespace leat::render
