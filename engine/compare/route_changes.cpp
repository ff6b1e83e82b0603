#include <algorithm>

#include "engine/compare/changes.hpp"

namespace leat::compare {

using logic::Diagram;
using works::Fate;
using works::Passage;

namespace {

// Groups told of one inlet and body.
constexpr std::size_t most_groups = 32;

// What can go wrong with a body, as bits.
unsigned troubles_of(Fate const& fate) {
  unsigned troubles = 0;
  if (fate.outlets.empty()) troubles |= 1u;
  if (fate.outlets.size() > 1) troubles |= 2u;
  if (fate.is_trapped) troubles |= 4u;
  if (fate.spills) troubles |= 8u;
  if (fate.is_unsure) troubles |= 16u;
  if (fate.is_barred) troubles |= 32u;
  return troubles;
}

// One question about a body with its answer on both sides.
struct Pair {
  Function before, after;
};

class Lane {
 public:
  Lane(Passage const& before, Passage const& after, Sides const& sides)
      : before_(before), after_(after), sides_(sides), diagram_(sides.ground.diagram()) {
    std::vector<bool> is_asked(after.ends.size(), false);
    for (auto const& end : before.ends) {
      auto const same = sides.matching.outlets[end.outlet];
      pairs_.push_back({end.condition, same ? after.reaching(*same) : Diagram::never});
    }
    for (auto const& end : after.ends) {
      bool const is_known = std::any_of(before.ends.begin(), before.ends.end(), [&](auto const& b) {
        return sides.matching.outlets[b.outlet] == end.outlet;
      });
      if (!is_known) pairs_.push_back({Diagram::never, end.condition});
    }
    for (auto part : {&Passage::trapped, &Passage::spilled, &Passage::unsure, &Passage::barred,
                      &Passage::unknown})
      pairs_.push_back({before.*part, after.*part});
  }

  // When anything differs, and something of it is known.
  Function difference() {
    auto differing = Diagram::never;
    for (auto const& pair : pairs_)
      differing = diagram_.either(differing, diagram_.differ(pair.before, pair.after));
    auto const is_open = diagram_.both(before_.unknown, after_.unknown);
    return diagram_.both(diagram_.both(differing, !is_open),
                         sides_.ground.conditions().reachable());
  }

  // Everything that is as it is in one combination, before and after.
  Function alike(works::Instance const& instance) {
    auto alike = Diagram::always;
    auto const take = [&](Function f) {
      alike = diagram_.both(alike, diagram_.is_true(f, instance) ? f : !f);
    };
    for (auto const& pair : pairs_) {
      take(pair.before);
      take(pair.after);
    }
    return alike;
  }

  void tell(Comparison& comparison) {
    auto rest = difference();
    for (std::size_t told = 0; rest != Diagram::never; ++told) {
      comparison.is_cut = comparison.is_cut || told == most_groups;
      if (told == most_groups || diagram_.has_run_out()) return;
      auto const example = sides_.ground.nearest(rest);
      if (!example) return;
      auto const group = diagram_.both(rest, alike(example->instance));
      RouteChange change{Change::other,
                         after_.inlet,
                         after_.profile,
                         fate(before_, diagram_, example->instance),
                         fate(after_, diagram_, example->instance),
                         sides_.ground.widest(group),
                         example,
                         !diagram_.is_true(before_.unknown, example->instance),
                         !diagram_.is_true(after_.unknown, example->instance)};
      if (change.is_known_before && change.is_known_after)
        change.change = change_of(change.before, change.after, sides_.matching.outlets);
      comparison.routes.push_back(std::move(change));
      rest = diagram_.both(rest, !group);
    }
  }

 private:
  Passage const& before_;
  Passage const& after_;
  Sides const& sides_;
  Diagram& diagram_;
  std::vector<Pair> pairs_;
};

}  // namespace

Change change_of(Fate const& before, Fate const& after,
                 Counterparts<model::OutletId> const& outlets) {
  auto const troubles_before = troubles_of(before), troubles_after = troubles_of(after);
  if ((troubles_after & ~troubles_before) != 0) return Change::worse;
  std::vector<model::OutletId> expected;
  for (auto outlet : before.outlets) {
    if (outlets[outlet]) expected.push_back(*outlets[outlet]);
  }
  std::sort(expected.begin(), expected.end());
  bool const keeps_some =
      before.outlets.empty() || std::any_of(expected.begin(), expected.end(), [&](auto outlet) {
        return std::binary_search(after.outlets.begin(), after.outlets.end(), outlet);
      });
  if (!keeps_some) return Change::other;
  if (troubles_before != troubles_after) return Change::better;
  return Change::other;
}

void compare_routes(Sides const& sides, Comparison& comparison) {
  for (auto const& after : sides.after.passages) {
    auto const before = std::find_if(sides.before.passages.begin(), sides.before.passages.end(),
                                     [&](Passage const& b) {
                                       return sides.matching.inlets[b.inlet] == after.inlet &&
                                              sides.matching.profiles[b.profile] == after.profile;
                                     });
    if (before == sides.before.passages.end()) continue;
    auto const told = comparison.routes.size();
    Lane(*before, after, sides).tell(comparison);
    ++comparison.lanes;
    comparison.lanes_changed += comparison.routes.size() > told ? 1u : 0u;
  }
  std::stable_sort(comparison.routes.begin(), comparison.routes.end(),
                   [](auto const& a, auto const& b) {
                     if (a.inlet != b.inlet) return a.inlet < b.inlet;
                     if (a.profile != b.profile) return a.profile < b.profile;
                     return a.change > b.change;
                   });
}

}  // namespace leat::compare
