#pragma once
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "lang/render/told.hpp"

// The outcome of `leat check` for programs and for pages, each format from the same values. The
// same run gives the same bytes.
namespace leat::render {

// leat-findings, as docs/schemas has it.
std::string findings_document(ToldRun const&);
// One record for each thing that is told, after a heading (RFC 4180).
std::string findings_csv(ToldRun const&);
// A table of the files, then what is told of each.
std::string findings_markdown(ToldRun const&);
// SARIF 2.1.0 (OASIS): a rule for each kind of finding and of verdict, a result for each thing that
// is told, an example as the flow that leads to it, an accepted finding as suppressed.
std::string findings_sarif(ToldRun const&);
// The common form of test reports: a suite for each junction, a case for each expectation and one
// for all findings.
std::string findings_junit(ToldRun const&);

// How many files came to each verdict; every verdict is named.
std::vector<std::pair<std::string_view, std::size_t>> verdict_counts(ToldRun const&);
// "12 files: 9 hold, 2 violated, 1 unusable; 3 others draw no junction", and whether it was
// interrupted.
std::string run_line(ToldRun const&);

// Where a spot is: "yard.leat:11:40".
std::string spot_words(Spot const&);

}  // namespace leat::render
