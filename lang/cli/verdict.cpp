#include "lang/cli/verdict.hpp"

#include <algorithm>

namespace leat::cli {

using verdicts::Truthfulness;

Exit exit_of(Truthfulness verdict) {
  switch (verdict) {
    case Truthfulness::holds:
      return Exit::holds;
    case Truthfulness::violated:
    case Truthfulness::empty:
      return Exit::violated;
    case Truthfulness::holds_within_bounds:
    case Truthfulness::undecided:
      return Exit::undecided;
  }
  return Exit::fault;
}

Exit exit_of(std::vector<findings::Finding> const& findings, model::Severity fail_on) {
  bool const fails = std::any_of(findings.begin(), findings.end(), [&](auto const& finding) {
    return !finding.accepted_by && finding.severity >= fail_on;
  });
  return fails ? Exit::violated : Exit::holds;
}

Exit exit_of(Judgement const& judgement, model::Severity fail_on) {
  auto exit = judgement.is_decided ? Exit::holds : Exit::undecided;
  exit = worst(exit, exit_of(judgement.findings, fail_on));
  for (auto const& expectation : judgement.expectations)
    exit = worst(exit, exit_of(expectation.verdict));
  return exit;
}

Exit exit_of(works::WorksJudgement const& judged, model::Severity fail_on) {
  auto const fail = [&](std::vector<model::FindingKind> const& kinds) {
    return std::any_of(kinds.begin(), kinds.end(),
                       [&](auto kind) { return findings::finding_of(kind).severity >= fail_on; });
  };
  bool const is_open = works::is_incomplete(judged) || judged.conditions->has_too_many_states() ||
                       fail(judged.kinds_left_out) || fail(judged.kinds_in_doubt);
  auto exit = is_open ? Exit::undecided : Exit::holds;
  for (auto const& piece : works::pieces_of(judged))
    exit = worst(exit, exit_of(piece.judged->findings, fail_on));
  for (auto const& [finding, condition, is_proved, can_be_parted] : judged.findings) {
    auto const one = exit_of({finding}, fail_on);
    exit = worst(exit, one == Exit::violated && !is_proved ? Exit::undecided : one);
  }
  for (auto const& claim : judged.expectations) exit = worst(exit, exit_of(claim.verdict));
  return exit;
}

}  // namespace leat::cli
