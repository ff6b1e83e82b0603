#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/judge.hpp"
#include "lang/render/count.hpp"
#include "lang/render/level_picture.hpp"
#include "lang/render/look.hpp"
#include "lang/render/subject.hpp"
#include "lang/render/told.hpp"

// The outcome of `leat check` for people: findings, then expectations that do not hold, then a
// summary. Worst first; nothing depends on time or on the machine.
namespace leat::render {

// One judged junction. `sights` holds, by finding, the junction in the nearest combination in which
// it shows; a finding without a picture has none. `conditions`: by finding, when it shows, where
// that is not told by its rows.
struct JudgedJunction {
  Subject subject;
  Judgement const& judgement;
  std::vector<Scene const*> sights;
  std::vector<std::string> conditions{};
};

std::string finding_text(JudgedJunction const&, std::size_t finding, Look);
std::string expectation_text(JudgedJunction const&, std::size_t expectation, Look);

// Findings and unkept expectations of a junction, one paragraph each.
std::string junction_report(JudgedJunction const&, Look);
// The same, one line each: `file:line:column: severity: short-name: headline`.
std::string junction_lines(JudgedJunction const&);

// "stranding-switch (2), open-edge".
std::string kinds_words(std::vector<model::FindingKind> const&);
// Why an expectation has its verdict, where no example shows it.
std::string_view reason_of(verdicts::Truthfulness);
// What to do about a verdict; empty where there is nothing general to say.
std::string_view remedy_of(verdicts::Truthfulness);
// What happens in an expectation's example, or else why it has its verdict.
std::string outcome_words(JudgedJunction const&, std::size_t expectation);

// One expectation that was not found to hold, in a line.
std::string expectation_line(Subject const&, std::size_t expectation, verdicts::Truthfulness);

// Why nothing is known of a junction; nothing where it is known.
std::vector<ToldOpen> open_questions(Subject const&, Judgement const&);
// What is not known of a junction or a works, one line each.
std::string open_lines(Subject const&, std::vector<ToldOpen> const&);

// Counts by severity and verdict, and the word for the whole.
struct Summary {
  std::string file;
  std::size_t faults = 0, faults_left_out = 0;  // of the design file
  std::size_t errors = 0, warnings = 0, notes = 0, accepted = 0;
  std::size_t held = 0, held_within_bounds = 0, violated = 0, empty = 0, undecided = 0;
  std::size_t junctions = 0;
  Count combinations = 0;
  std::string too_many;                     // signals that were too many to run
  std::optional<explore::Unended> unended;  // it is not known whether they come to rest
  bool has_signals = false, has_memory = false;
  bool has_restless = false;  // after some events they never do
  bool is_restless = false;   // the signals never come to rest as built
  bool is_history_left_out = false, is_switching_left_out = false;
  std::vector<model::FindingKind> kinds_left_out;  // not looked for in all combinations
  bool is_in_doubt = false;    // some findings may be promised away
  bool is_by_regions = false;  // so that bodies inside while cells change were not looked at
  std::string verdict;         // chosen by the caller, who knows which findings fail
};
void add(Summary&, model::Design const&, Judgement const&);
void count_findings(Summary&, std::vector<findings::Finding> const&);
void count_verdict(Summary&, verdicts::Truthfulness);
std::string summary_text(Summary const&, Look);
// "yard.leat: violated; 1 error, 2 warnings; 5 expectations hold, 1 is violated"
std::string summary_line(Summary const&);

}  // namespace leat::render
