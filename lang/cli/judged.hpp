#pragma once
#include <memory>
#include <vector>

#include "engine/compare/behaviour.hpp"
#include "engine/works/judge_works.hpp"
#include "lang/cli/terminal.hpp"
#include "lang/render/subject.hpp"

namespace leat::cli {

// A junction or a works with its judgement, whichever it is.
class Judged {
 public:
  Judged(render::Subject const&, Terminal&);

  // The signals that its results are told over.
  std::vector<model::SignalId> const& variables() const { return variables_; }
  // Over how many of these its findings have rows; 0: over none.
  int row_inputs() const { return works_ ? 0 : static_cast<int>(variables_.size()); }
  // `signals`: by own id, the joint signal.
  compare::Behaviour behaviour(std::vector<model::SignalId> const& signals, compare::Ground&) const;

 private:
  render::Subject subject_;
  Judgement judgement_;
  std::unique_ptr<works::WorksJudgement> works_;  // of a works
  std::vector<model::SignalId> variables_;
};

}  // namespace leat::cli
