#pragma once
#include <vector>

#include "engine/works/judge_works.hpp"
#include "lang/cli/exit_table.hpp"

// What a judgement means for the exit code.
namespace leat::cli {

Exit exit_of(verdicts::Truthfulness);
// Findings that nobody accepted fail from a severity on.
Exit exit_of(std::vector<findings::Finding> const&, model::Severity fail_on);
Exit exit_of(Judgement const&, model::Severity fail_on);
Exit exit_of(works::WorksJudgement const&, model::Severity fail_on);

}  // namespace leat::cli
