#pragma once
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "engine/model/finding_kind.hpp"
#include "engine/model/grid.hpp"
#include "engine/verdicts/expectations.hpp"
#include "lang/render/count.hpp"

// The outcome of a run of `leat check` as words and places: what every format for programs is
// written from, so that all of them say the same. It holds neither designs nor waters.
namespace leat::render {

// A place in a file, in one row of it: line and columns count from 1, columns in code points, the
// end is one past the last. Line 0: the file as a whole.
struct Spot {
  std::string file;
  std::size_t line = 0, column = 0, end_column = 0;
  bool operator==(Spot const&) const = default;
};

// A spot and what is said of it.
struct Remark {
  Spot spot;
  std::optional<model::Place> cell;
  std::string words;
};

// How to bring something about: what a player does, and the way of the body then.
struct ToldWay {
  std::vector<std::string> flips;  // names of what is flipped, from as built, before any event
  std::optional<std::string> switched_by{};  // where there is an event: what is flipped then
  std::vector<Remark> deeds, trail;
};

struct ToldAcceptance {
  std::string reason;
  Spot spot;
};

// Another place of a works at which the same is found, when, and what changes then.
struct ToldAgain {
  std::string place, condition;
  std::optional<std::string> event;
};

struct ToldFinding {
  std::string name;
  model::Severity severity = model::Severity::note;
  bool is_proved = true;  // false: perhaps no body comes to it
  Spot spot;
  std::vector<model::Place> cells;
  std::vector<Remark> elsewhere;  // the nearest of its other cells
  std::vector<std::string> inlets, outlets, bodies, signals;
  std::string condition, when;  // as an expression of the language; in words, with a count
  Count combinations = 0;
  std::optional<std::string> event;
  std::optional<int> ticks;
  std::vector<ToldWay> ways;
  std::vector<ToldAgain> also;
  std::string headline, reason, remedy, command;
  std::optional<ToldAcceptance> accepted;
};

struct ToldExpectation {
  std::string title, clause;
  verdicts::Truthfulness verdict = verdicts::Truthfulness::undecided;
  Spot spot;
  std::vector<Remark> elsewhere;
  std::string when, outcome, remedy, command;  // outcome: what happens in the example, or why not
  // The combination of the example, and the way to it where one is known.
  std::optional<std::vector<std::pair<std::string, bool>>> example;
  std::optional<ToldWay> way;
  std::optional<int> ticks;
  std::vector<std::optional<std::string>> dealt;
};

// A fault of a file: nothing in it was judged.
struct ToldFault {
  std::string name;
  Spot spot;
  std::vector<Remark> elsewhere;
  std::string headline, remedy;
};

// Why it is not known of a junction or a works whether it is all right, and how grave that may be.
struct ToldOpen {
  std::string headline, remedy;
  model::Severity severity = model::Severity::error;
};

// Of a junction or a works.
struct ToldJunction {
  std::string name;
  Spot spot;
  Count combinations = 0;
  std::vector<std::string> left_out;  // what was too much to look for, or cannot be told apart
  std::vector<std::string> kinds_left_out;  // of findings, not looked for in all combinations
  std::vector<ToldOpen> open;
  std::vector<ToldFinding> findings;  // worst first
  std::vector<ToldExpectation> expectations;
};

struct ToldFile {
  std::string name;
  std::string verdict;  // "interrupted" where it was not judged to its end
  bool is_finished = true;
  std::vector<ToldFault> faults;
  std::size_t faults_left_out = 0;
  std::vector<ToldJunction> junctions;
};

struct ToldRun {
  std::vector<ToldFile> files;
  std::size_t without_junctions = 0;  // files of a folder that draw nothing
  model::Severity fail_on = model::Severity::warning;
  bool is_interrupted = false;
  int exit = 0;
  std::string exit_meaning, version;
};

// Whether a finding makes the run fail.
inline bool is_failing(ToldFinding const& finding, model::Severity fail_on) {
  return finding.is_proved && !finding.accepted && finding.severity >= fail_on;
}

// Whether what is not known may be such a finding.
inline bool is_failing(ToldOpen const& open, model::Severity fail_on) {
  return open.severity >= fail_on;
}

}  // namespace leat::render
