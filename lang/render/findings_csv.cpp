#include <fmt/format.h>

#include "lang/render/csv.hpp"
#include "lang/render/findings_formats.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

// The fields of one record, in the order of the heading.
struct Record {
  std::string what, name, verdict, junction;
  Spot spot;
  std::vector<model::Place> cells{};
  std::string headline{}, when{}, reason{}, remedy{}, accepted{};
  std::vector<std::string> inlets{}, outlets{}, bodies{}, signals{};
};

std::string joined(std::vector<std::string> const& parts) {
  return fmt::format("{}", fmt::join(parts, ";"));
}

std::string written(Record const& record) {
  std::vector<std::string> cells;
  for (auto const& at : record.cells) cells.push_back(place_code(at));
  bool const is_placed = record.spot.line > 0;
  return csv_record({record.spot.file, is_placed ? std::to_string(record.spot.line) : "",
                     is_placed ? std::to_string(record.spot.column) : "", record.junction,
                     record.what, record.name, record.verdict, record.headline, record.when,
                     record.reason, record.remedy, record.accepted, joined(cells),
                     joined(record.inlets), joined(record.outlets), joined(record.bodies),
                     joined(record.signals)});
}

std::string finding_record(ToldJunction const& junction, ToldFinding const& finding) {
  return written({"finding", finding.name,
                  finding.accepted ? "accepted" : std::string(word_of(finding.severity)),
                  junction.name, finding.spot, finding.cells, finding.headline, finding.when,
                  finding.reason, finding.remedy,
                  finding.accepted ? finding.accepted->reason : std::string(), finding.inlets,
                  finding.outlets, finding.bodies, finding.signals});
}

std::string expectation_record(ToldJunction const& junction, ToldExpectation const& expectation) {
  return written({"expectation",
                  expectation.title,
                  std::string(word_of(expectation.verdict)),
                  junction.name,
                  expectation.spot,
                  {},
                  expectation.clause,
                  expectation.when,
                  expectation.outcome,
                  expectation.remedy});
}

std::string open_record(ToldJunction const& junction, ToldOpen const& open) {
  Record record{"junction", {}, "undecided", junction.name, junction.spot};
  record.headline = open.headline;
  record.remedy = open.remedy;
  return written(record);
}

std::string plain_record(std::string what, std::string name, std::string verdict, Spot spot,
                         std::string headline, std::string remedy) {
  Record record{std::move(what), std::move(name), std::move(verdict), {}, std::move(spot)};
  record.headline = std::move(headline);
  record.remedy = std::move(remedy);
  return written(record);
}

}  // namespace

std::string findings_csv(ToldRun const& run) {
  auto text = csv_record({"file", "line", "column", "junction", "what", "name", "verdict",
                          "headline", "when", "reason", "remedy", "accepted", "cells", "inlets",
                          "outlets", "bodies", "signals"});
  for (auto const& file : run.files) {
    for (auto const& fault : file.faults)
      text += plain_record("fault", fault.name, "error", fault.spot, fault.headline, fault.remedy);
    for (auto const& junction : file.junctions) {
      for (auto const& open : junction.open) text += open_record(junction, open);
      for (auto const& finding : junction.findings) text += finding_record(junction, finding);
      for (auto const& expectation : junction.expectations)
        text += expectation_record(junction, expectation);
    }
    if (!file.is_finished)
      text += plain_record("run", {}, "interrupted", {file.name}, "Not judged to its end", {});
  }
  return text;
}

}  // namespace leat::render
