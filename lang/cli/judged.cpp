#include "lang/cli/judged.hpp"

namespace leat::cli {

Judged judged(lower::Junction const& junction, Progress const& progress) {
  if (junction.map.is_works())
    return {
        {},
        std::make_unique<works::WorksJudgement>(works::judge_works(junction.design, {}, progress))};
  Judged judged{judge(junction.design, {}, progress), nullptr};
  if (has_too_many_variables(judged.junction))
    judged.works =
        std::make_unique<works::WorksJudgement>(works::judge_works(junction.design, {}, progress));
  return judged;
}

char const* progress_unit(lower::Junction const& junction) {
  return junction.map.is_works() ? "parts" : "settings";
}

std::vector<model::SignalId> Judged::variables() const {
  if (!works) return junction.variables;
  auto variables = works->conditions->variables();
  for (auto const& piece : works::pieces_of(*works)) {
    auto const& own = piece.judged->variables;
    variables.insert(variables.end(), own.begin(), own.end());
  }
  return variables;
}

compare::Behaviour Judged::behaviour(model::Design const& design,
                                     std::vector<model::SignalId> const& signals,
                                     compare::Ground& ground) const {
  return works ? compare::behaviour_of(design, *works, signals, ground)
               : compare::behaviour_of(design, junction, signals, ground);
}

}  // namespace leat::cli
