#pragma once
#include <map>
#include <optional>
#include <vector>

#include "engine/works/judge_works.hpp"
#include "engine/works/wire_flips.hpp"

namespace leat::works {

struct LongestTime {
  std::optional<int> ticks = 0;  // none without a bound
  bool is_known = true;          // false: something that it hangs on was not followed
};

// By inlet, then profile: how long a body that enters there takes at most until it leaves the
// plant, in ticks, whatever stands how on its way: the longest trips of the islands that some way
// leads it through, one after the other, and the joins between them; joins whose time is not told
// take none. Without a bound where it may stay, or where joins lead it round. An upper estimate: no
// combination need bring all of them together. Cost: the ways of the plant, once.
std::vector<LongestTime> longest_trips(model::Design const& plant, WorksJudgement const&);

// What every change of an input asks for, over all copies that it switches, by itself or through a
// wire. Of islands whose switching was not followed it is not known what any of their inputs asks
// for; changes that are missing move no cell. An upper estimate, as a flip does not change the wire
// wherever it can.
struct LongestGuard {
  LongestTime wait, clearing;
};
std::map<Change, LongestGuard> longest_guards(model::Design const& plant, WorksJudgement const&);

}  // namespace leat::works
