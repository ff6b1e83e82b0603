#pragma once
#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "engine/works/judge_works.hpp"

namespace leat::works {

// By inlet, then profile: how long a body that enters there takes at most until it leaves the
// plant, in ticks, whatever stands how on its way: the longest trips of the islands that some way
// leads through, one after the other, and the joins between them; joins whose time is not told take
// none. None where it may stay, where joins lead round, or where an island was not followed. An
// upper estimate: no combination need bring all of them together. Cost: the ways of the plant,
// once.
std::vector<std::optional<int>> longest_trips(model::Design const& plant, WorksJudgement const&);

// What every change of a signal asks for, over all copies that it switches: by the plant's signal
// and whether it goes on. Islands whose switching was not followed are left out.
struct LongestGuard {
  std::optional<int> wait = 0, clearing = 0;  // ticks; none without a bound
};
using GuardedChange = std::pair<model::SignalId, bool>;
std::map<GuardedChange, LongestGuard> longest_guards(WorksJudgement const&);

}  // namespace leat::works
