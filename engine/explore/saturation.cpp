#include "engine/explore/saturation.hpp"

#include <algorithm>

namespace leat::explore {

using logic::Diagram;
using Function = Diagram::Function;

namespace {

class Saturation {
 public:
  Saturation(Diagram& diagram, std::vector<Transitions> transitions)
      : diagram_(diagram), transitions_(std::move(transitions)) {
    std::stable_sort(transitions_.begin(), transitions_.end(),
                     [&](auto const& a, auto const& b) { return top(a) < top(b); });
  }

  // The set closed under the transitions from number `first` on, which are those that touch nothing
  // above the first one's top.
  Function closed(Function set, std::size_t first) {
    if (set == Diagram::never || set == Diagram::always || first == transitions_.size()) return set;
    if (diagram_.has_run_out()) return set;
    auto const number = static_cast<std::uint32_t>(first);
    if (auto const known = computed_.find(set.edge, number, of_closed)) return {*known};
    auto const at = diagram_.level(set);
    auto result = set;
    if (at < top(transitions_[first])) {
      auto const [off, on] = diagram_.branches(set, at);
      auto const closed_off = closed(off, first), closed_on = closed(on, first);
      result = diagram_.node(at, closed_off, closed_on);
    } else {
      result = closed_at_top(set, first);
    }
    remember(set, number, of_closed, result);
    return result;
  }

 private:
  static constexpr std::uint32_t of_closed = 0, of_image = 1;

  // As many places as the diagram has nodes.
  void remember(Function set, std::uint32_t by, std::uint32_t what, Function result) {
    if (computed_.places() < diagram_.node_count()) computed_.grow();
    computed_.remember(set.edge, by, what, result.edge);
  }

  // Before and after of a variable count as one level.
  Diagram::Level top(Transitions const& transitions) const {
    return diagram_.level(transitions.relation) & ~Diagram::Level{1};
  }

  // The number of the first transitions that touch nothing above the level.
  std::size_t first_from(Diagram::Level level) const {
    auto const found = std::lower_bound(
        transitions_.begin(), transitions_.end(), level,
        [&](Transitions const& one, Diagram::Level other) { return top(one) < other; });
    return static_cast<std::size_t>(found - transitions_.begin());
  }

  // What an image adds is closed under the lower transitions already, and so is the union of two
  // closed sets: a transition starts from one state.
  Function closed_at_top(Function set, std::size_t first) {
    auto const at = top(transitions_[first]);
    auto const lower = first_from(at + 1);
    set = closed(set, lower);
    auto before = Diagram::never;
    while (set != before && !diagram_.has_run_out()) {
      before = set;
      for (auto i = first; i < lower; ++i)
        set = diagram_.either(set, image_at(at, set, transitions_[i].relation));
    }
    return set;
  }

  // Where the relation leads from the set, and from there the transitions below its top. Contract:
  // the set is closed under those.
  Function image(Function set, Function relation) {
    if (set == Diagram::never || relation == Diagram::never) return Diagram::never;
    if (relation == Diagram::always) return set;
    if (diagram_.has_run_out()) return Diagram::never;
    if (auto const known = computed_.find(set.edge, relation.edge, of_image)) return {*known};
    auto const at = std::min(diagram_.level(set), diagram_.level(relation) & ~Diagram::Level{1});
    auto const result = closed(image_at(at, set, relation), first_from(at));
    remember(set, relation.edge, of_image, result);
    return result;
  }

  // The same without closing at this level. The level after is tested right below the level before
  // or, by the contract of Transitions, the variable stays.
  Function image_at(Diagram::Level at, Function set, Function relation) {
    auto const [set_off, set_on] = diagram_.branches(set, at);
    auto const [relation_off, relation_on] = diagram_.branches(relation, at);
    Function off = Diagram::never, on = Diagram::never;
    auto const go = [&](Function from, Function by, Function& stays) {
      if (diagram_.level(by) != at + 1) {
        stays = diagram_.either(stays, image(from, by));
        return;
      }
      auto const [to_off, to_on] = diagram_.branches(by, at + 1);
      off = diagram_.either(off, image(from, to_off));
      on = diagram_.either(on, image(from, to_on));
    };
    go(set_off, relation_off, off);
    go(set_on, relation_on, on);
    return diagram_.node(at, off, on);
  }

  Diagram& diagram_;
  std::vector<Transitions> transitions_;
  logic::Computed computed_{4096};
};

}  // namespace

Function saturated(Diagram& diagram, Function start, std::vector<Transitions> transitions) {
  return Saturation(diagram, std::move(transitions)).closed(start, 0);
}

}  // namespace leat::explore
