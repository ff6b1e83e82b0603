#include "engine/logic/settled_circuit.hpp"

#include <algorithm>
#include <functional>
#include <queue>

#include "engine/logic/truth.hpp"

namespace leat::logic {

using model::Circuit;
using model::SignalId;
using model::SignalKind;

namespace {

bool follows(model::Signal const& signal) {
  return signal.kind == SignalKind::wire || signal.kind == SignalKind::delay;
}

// Orders wires and delays so that each comes after those it uses (Kahn 1962, lowest id first).
// Where every one left waits for another, a walk along what they use ends in a loop; a delay of it
// is taken out as memory, and the sort goes on. Loops of wires alone are refused before.
class Ordering {
 public:
  explicit Ordering(Circuit const& circuit)
      : circuit_(circuit),
        uses_(circuit.signals.size()),
        used_by_(circuit.signals.size()),
        waits_for_(circuit.signals.size()),
        seen_for_(circuit.expressions.size()),
        is_left_(circuit.signals.size()) {
    for (SignalId s = 0; s < circuit.signals.size(); ++s) {
      is_left_[s] = follows(circuit.signals[s]);
      if (is_left_[s]) uses_[s] = followers_used_by(s);
      for (auto used : uses_[s]) used_by_[used].push_back(s);
      waits_for_[s] = uses_[s].size();
      if (is_left_[s] && uses_[s].empty()) ready_.push(s);
    }
  }

  // The order; delays that stay memory are not in it.
  std::vector<SignalId> run() {
    std::vector<SignalId> order;
    while (true) {
      while (!ready_.empty()) {
        auto const next = ready_.top();
        ready_.pop();
        if (!is_left_[next]) continue;
        order.push_back(next);
        take(next);
      }
      auto const stuck = std::find(is_left_.begin(), is_left_.end(), true);
      if (stuck == is_left_.end()) return order;
      take(delay_in_loop(static_cast<SignalId>(stuck - is_left_.begin())));
    }
  }

 private:
  std::vector<SignalId> followers_used_by(SignalId s) {
    std::vector<SignalId> found;
    std::vector<model::ExpressionId> open{circuit_.signals[s].definition};
    while (!open.empty()) {
      auto const id = open.back();
      open.pop_back();
      if (seen_for_[id] == s + 1) continue;
      seen_for_[id] = s + 1;
      auto const& node = circuit_.expressions[id];
      if (node.op == model::Operator::constant) continue;
      if (node.op == model::Operator::signal) {
        if (follows(circuit_.signals[node.left])) found.push_back(node.left);
        continue;
      }
      open.push_back(node.left);
      if (node.op != model::Operator::negation) open.push_back(node.right);
    }
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
  }

  void take(SignalId s) {
    is_left_[s] = false;
    for (auto user : used_by_[s]) {
      if (--waits_for_[user] == 0 && is_left_[user]) ready_.push(user);
    }
  }

  SignalId delay_in_loop(SignalId from) const {
    std::vector<SignalId> walk;
    while (std::find(walk.begin(), walk.end(), from) == walk.end()) {
      walk.push_back(from);
      from = *std::find_if(uses_[from].begin(), uses_[from].end(),
                           [&](SignalId used) { return is_left_[used]; });
    }
    return *std::find_if(std::find(walk.begin(), walk.end(), from), walk.end(),
                         [&](SignalId s) { return circuit_.signals[s].kind == SignalKind::delay; });
  }

  Circuit const& circuit_;
  std::vector<std::vector<SignalId>> uses_, used_by_;
  std::vector<std::size_t> waits_for_;
  std::vector<SignalId> seen_for_;  // by expression: the last signal, plus one, it was met for
  std::vector<bool> is_left_;
  std::priority_queue<SignalId, std::vector<SignalId>, std::greater<>> ready_;
};

}  // namespace

Circuit settled_circuit(Circuit const& circuit) {
  auto settled = circuit;
  settled.wire_order = Ordering(circuit).run();
  for (auto s : settled.wire_order) settled.signals[s].kind = SignalKind::wire;
  return settled;
}

Circuit holding_unused(Circuit circuit, std::vector<bool> const& is_used) {
  std::vector<SignalId> held;
  for (SignalId s = 0; s < circuit.signals.size(); ++s) {
    auto& signal = circuit.signals[s];
    if (is_used[s] || signal.kind == SignalKind::wire) continue;
    auto const value = circuit.add({model::Operator::constant, signal.starts_on ? 1u : 0u, 0});
    signal = {SignalKind::wire, signal.starts_on, value, 0, 0};
    held.push_back(s);
  }
  circuit.wire_order.insert(circuit.wire_order.begin(), held.begin(), held.end());
  return circuit;
}

std::vector<SignalId> variables_of(Circuit const& circuit) {
  std::vector<SignalId> variables;
  for (SignalId s = 0; s < circuit.signals.size(); ++s) {
    if (circuit.signals[s].is_input()) variables.push_back(s);
  }
  for (SignalId s = 0; s < circuit.signals.size(); ++s) {
    if (circuit.signals[s].is_memory()) variables.push_back(s);
  }
  return variables;
}

}  // namespace leat::logic
