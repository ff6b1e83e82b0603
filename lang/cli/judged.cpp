#include "lang/cli/judged.hpp"

namespace leat::cli {

Judged::Judged(render::Subject const& subject, Terminal& terminal) : subject_(subject) {
  if (!subject.map.is_works()) {
    judgement_ = judge(subject.design, {}, ProgressLines(terminal, subject.map.junction.name));
    variables_ = judgement_.variables;
    return;
  }
  works_ = std::make_unique<works::WorksJudgement>(works::judge_works(subject.design));
  variables_ = works_->conditions->variables();
  for (auto const& part : works_->parts)
    variables_.insert(variables_.end(), part.variables.begin(), part.variables.end());
}

compare::Behaviour Judged::behaviour(std::vector<model::SignalId> const& signals,
                                     compare::Ground& ground) const {
  return works_ ? compare::behaviour_of(subject_.design, *works_, signals, ground)
                : compare::behaviour_of(subject_.design, judgement_, signals, ground);
}

}  // namespace leat::cli
