#include "lang/render/findings_formats.hpp"
#include "lang/render/json.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

template <class Value>
Json or_null(std::optional<Value> const& value) {
  return value ? Json(*value) : Json(nullptr);
}

// Where it stands: the file is named where it is not the one of the run.
void put_spot(Json& into, ToldFile const& file, Spot const& spot) {
  if (spot.file != file.name) into["file"] = spot.file;
  into["line"] = spot.line;
  into["column"] = spot.column;
}

Json finding_json(ToldFile const& file, ToldFinding const& finding) {
  auto cells = Json::array(), ways = Json::array(), switched_by = Json::array(),
       also = Json::array();
  for (auto const& at : finding.cells) cells.push_back(place_json(at));
  for (auto const& way : finding.ways) {
    ways.push_back(way.flips);
    if (way.switched_by) switched_by.push_back(*way.switched_by);
  }
  for (auto const& again : finding.also)
    also.push_back(
        {{"place", again.place}, {"condition", again.condition}, {"event", or_null(again.event)}});
  Json document{{"name", finding.name},
                {"severity", word_of(finding.severity)},
                {"proved", finding.is_proved},
                {"cells", std::move(cells)},
                {"inlets", finding.inlets},
                {"outlets", finding.outlets},
                {"bodies", finding.bodies},
                {"signals", finding.signals},
                {"condition", finding.condition},
                {"combinations", count_json(finding.combinations)},
                {"event", or_null(finding.event)},
                {"ticks", or_null(finding.ticks)},
                {"ways", std::move(ways)},
                {"switched_by", std::move(switched_by)},
                {"also", std::move(also)},
                {"headline", finding.headline},
                {"reason", finding.reason},
                {"remedy", finding.remedy}};
  put_spot(document, file, finding.spot);
  document["accepted"] = finding.accepted ? Json(finding.accepted->reason) : Json(nullptr);
  return document;
}

Json example_json(ToldExpectation const& expectation) {
  if (!expectation.example) return nullptr;
  auto assignment = Json::object();
  for (auto const& [signal, is_on] : *expectation.example) assignment[signal] = is_on;
  return assignment;
}

Json expectation_json(ToldFile const& file, ToldExpectation const& expectation) {
  auto dealt = Json::array();
  for (auto const& outlet : expectation.dealt) dealt.push_back(or_null(outlet));
  Json document{{"title", expectation.title},
                {"clause", expectation.clause},
                {"verdict", word_of(expectation.verdict)}};
  put_spot(document, file, expectation.spot);
  document["example"] = example_json(expectation);
  document["way"] = expectation.way ? Json(expectation.way->flips) : Json(nullptr);
  document["ticks"] = or_null(expectation.ticks);
  document["dealt"] = std::move(dealt);
  return document;
}

Json junction_json(ToldFile const& file, ToldJunction const& junction) {
  auto findings = Json::array(), expectations = Json::array();
  auto open = Json::array();
  for (auto const& question : junction.open)
    open.push_back({{"headline", question.headline}, {"remedy", question.remedy}});
  for (auto const& finding : junction.findings) findings.push_back(finding_json(file, finding));
  for (auto const& expectation : junction.expectations)
    expectations.push_back(expectation_json(file, expectation));
  return {{"name", junction.name},
          {"combinations", count_json(junction.combinations)},
          {"left_out", junction.left_out},
          {"kinds_left_out", junction.kinds_left_out},
          {"open", std::move(open)},
          {"findings", std::move(findings)},
          {"expectations", std::move(expectations)}};
}

Json file_json(ToldFile const& file) {
  auto faults = Json::array(), junctions = Json::array();
  for (auto const& fault : file.faults) {
    Json document{{"name", fault.name}};
    put_spot(document, file, fault.spot);
    document["headline"] = fault.headline;
    document["remedy"] = fault.remedy;
    faults.push_back(std::move(document));
  }
  for (auto const& junction : file.junctions) junctions.push_back(junction_json(file, junction));
  return {{"file", file.name},
          {"verdict", file.verdict},
          {"diagnostics", std::move(faults)},
          {"junctions", std::move(junctions)}};
}

Json counts_json(ToldRun const& run) {
  Json counts{{"files", run.files.size()}};
  for (auto const& [verdict, count] : verdict_counts(run)) counts[verdict] = count;
  counts["without_junctions"] = run.without_junctions;
  return counts;
}

}  // namespace

std::string findings_document(ToldRun const& run) {
  auto document = document_head("leat-findings");
  document["interrupted"] = run.is_interrupted;
  document["files"] = Json::array();
  for (auto const& file : run.files) document["files"].push_back(file_json(file));
  document["summary"] = counts_json(run);
  document["exit"] = run.exit;
  return printed(document);
}

}  // namespace leat::render
