#include "lang/check/wire_loops.hpp"

#include <algorithm>
#include <queue>

#include "lang/check/signals.hpp"

namespace leat::check {

namespace {

using model::SignalId;

// A wire that takes time breaks a loop: its value is its input's some ticks ago.
bool is_wire(Names const& names, SignalId signal) {
  auto const& declaration = *names.signals.all[signal];
  return declaration.kind == syntax::SignalKind::wire && !declaration.duration;
}

// What each wire uses, once each, and who uses it.
struct Links {
  std::vector<std::vector<SignalId>> uses, used_by;
};

Links link(Names const& names) {
  auto const count = names.signals.all.size();
  Links links{std::vector<std::vector<SignalId>>(count), std::vector<std::vector<SignalId>>(count)};
  for (SignalId wire = 0; wire < count; ++wire) {
    auto const& signal = *names.signals.all[wire];
    if (!is_wire(names, wire) || !signal.on) continue;
    auto& uses = links.uses[wire];
    for_each_name(*signal.on, [&](syntax::Expression const& name) {
      auto const used = names.signals.find(name.name);
      if (used && is_wire(names, *used)) uses.push_back(*used);
    });
    std::sort(uses.begin(), uses.end());
    uses.erase(std::unique(uses.begin(), uses.end()), uses.end());
    for (auto const used : uses) links.used_by[used].push_back(wire);
  }
  return links;
}

// Takes wires of which every used wire has been taken, lowest id first, until there is none.
// Invariant: `waiting_` counts the used wires not yet taken, so every wire then left uses a wire
// that is left.
class Peeling {
 public:
  explicit Peeling(std::vector<std::vector<SignalId>> const& uses,
                   std::vector<std::vector<SignalId>> const& used_by)
      : used_by_(used_by), waiting_(uses.size()) {
    for (SignalId wire = 0; wire < uses.size(); ++wire) waiting_[wire] = uses[wire].size();
  }
  void take(SignalId wire, std::vector<char>& is_left, std::vector<SignalId>& taken) {
    if (!is_left[wire]) return;
    is_left[wire] = 0;
    taken.push_back(wire);
    for (auto const next : used_by_[wire]) {
      if (--waiting_[next] == 0 && is_left[next]) ready_.push(next);
    }
  }
  void run(std::vector<char>& is_left, std::vector<SignalId>& taken) {
    while (!ready_.empty()) {
      auto const wire = ready_.top();
      ready_.pop();
      take(wire, is_left, taken);
    }
  }
  void begin(std::vector<char> const& is_left) {
    for (SignalId wire = 0; wire < waiting_.size(); ++wire) {
      if (is_left[wire] && waiting_[wire] == 0) ready_.push(wire);
    }
  }

 private:
  std::vector<std::vector<SignalId>> const& used_by_;
  std::vector<std::size_t> waiting_;
  std::priority_queue<SignalId, std::vector<SignalId>, std::greater<>> ready_;
};

// From the first wire left, always on to the first used one that is left: every wire left uses one
// that is left, so the walk comes back to a wire it has seen.
std::vector<SignalId> find_loop(SignalId from, Links const& links,
                                std::vector<char> const& is_left) {
  std::vector<SignalId> walk;
  std::vector<char> is_met(is_left.size());
  auto wire = from;
  while (!is_met[wire]) {
    is_met[wire] = 1;
    walk.push_back(wire);
    auto const& uses = links.uses[wire];
    wire = *std::find_if(uses.begin(), uses.end(), [&](SignalId used) { return is_left[used]; });
  }
  walk.erase(walk.begin(), std::find(walk.begin(), walk.end(), wire));
  std::rotate(walk.begin(), std::min_element(walk.begin(), walk.end()), walk.end());
  return walk;
}

}  // namespace

// Kahn's topological sort (Kahn 1962), lowest id first. Where it stops, every wire left uses a wire
// left, so a walk along what they use ends in a loop. The loop is reported and taken out, and with
// it whatever only waited for it; then the sort goes on, so that each loop is reported once and
// what merely hangs on it is not. Cost: linear in the uses for the sort, and in the wires for each
// loop; loops past `most_loops` are left unreported, since the first ones have to be repaired
// anyway.
WireOrder order_wires(Names const& names) {
  constexpr std::size_t most_loops = 16;
  auto const links = link(names);
  std::vector<char> is_left(names.signals.all.size());
  for (SignalId signal = 0; signal < is_left.size(); ++signal)
    is_left[signal] = is_wire(names, signal) ? 1 : 0;
  WireOrder found;
  Peeling peeling(links.uses, links.used_by);
  peeling.begin(is_left);
  peeling.run(is_left, found.order);
  while (found.loops.size() < most_loops) {
    auto const first = std::find(is_left.begin(), is_left.end(), 1);
    if (first == is_left.end()) break;
    found.loops.push_back(
        find_loop(static_cast<SignalId>(first - is_left.begin()), links, is_left));
    for (auto const wire : found.loops.back()) peeling.take(wire, is_left, found.order);
    peeling.run(is_left, found.order);
  }
  return found;
}

}  // namespace leat::check
