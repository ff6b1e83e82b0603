#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/compare/comparison.hpp"
#include "lang/render/count.hpp"
#include "lang/render/look.hpp"
#include "lang/render/subject.hpp"

// What two revisions of a junction do differently, put into words once for every format.
namespace leat::render {

// One junction of two revisions, compared.
struct ComparedJunction {
  Subject before, after;
  compare::Behaviour const& was;
  compare::Behaviour const& is;
  compare::Matching const& matching;
  compare::Comparison const& comparison;
  compare::Ground& ground;
  std::optional<model::Place> shift;  // by which the drawing has moved
  bool is_recorded = false;           // before: as it was recorded of this same design
};

// One difference. What does not apply is empty.
struct ComparisonEntry {
  compare::Change change = compare::Change::other;
  std::string_view topic;  // route, finding, expected, time, declared, signal
  std::string name;        // what it is about: an inlet, a finding's kind, a signal ...
  std::string body;        // route, time: whose
  std::string headline;
  std::string condition;  // an expression of the design language
  std::string share;      // "1 of 4 combinations"
  std::string before, after;
  std::string steps;                // the smallest example, as a player does it
  std::vector<std::string> replay;  // commands that show it, before and after
};

struct ComparisonSheet {
  std::string junction_before, junction_after;
  std::vector<ComparisonEntry> entries;  // by topic, then the gravest first
  compare::Change gravest = compare::Change::same;
  std::size_t routes = 0, routes_same = 0;  // pairs of inlet and body on both sides
  Count combinations = 0;                   // that can come about
  std::optional<model::Place> shift;
  bool is_proved = false, is_cut = false;
};

ComparisonSheet comparison_sheet(ComparedJunction const&);

// A junction that only one revision has.
ComparisonSheet missing_sheet(std::string const& junction, bool is_gone);

// "the same", "better", "changed", "worse".
std::string_view word_of(compare::Change);

// The whole comparison of two files: `before` and `after` are their names.
struct FileComparison {
  std::string before, after;
  std::vector<ComparisonSheet> sheets;
  std::string verdict;  // chosen by the caller
};
std::string comparison_text(FileComparison const&, Look);
// leat-comparison.
std::string comparison_document(FileComparison const&, int exit);

}  // namespace leat::render
