#pragma once
#include <memory>
#include <vector>

#include "engine/compare/behaviour.hpp"
#include "engine/works/judge_works.hpp"
#include "lang/lower/lower.hpp"

namespace leat::cli {

// What was found out of one junction: of a works the second, as of a junction of too many signals
// to be run as one.
struct Judged {
  Judgement junction;
  std::unique_ptr<works::WorksJudgement> works;

  // The signals that it is told over.
  std::vector<model::SignalId> variables() const;
  // Over how many of these its findings have rows; 0: over none.
  int row_inputs() const { return works ? 0 : static_cast<int>(junction.variables.size()); }
  // On common ground; `signals`: by own id, the joint signal.
  compare::Behaviour behaviour(model::Design const&, std::vector<model::SignalId> const& signals,
                               compare::Ground&) const;
};

Judged judged(lower::Junction const&, Progress const& = {});
// What its progress counts: a works is judged by its parts.
char const* progress_unit(lower::Junction const&);

}  // namespace leat::cli
