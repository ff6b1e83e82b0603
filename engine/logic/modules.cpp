#include "engine/logic/modules.hpp"

#include <algorithm>
#include <limits>
#include <unordered_map>
#include <utility>

namespace leat::logic {

using model::Circuit;
using model::Operator;
using model::Signal;
using model::SignalId;
using model::SignalKind;

namespace {

// Expressions, then signals.
using Node = std::uint32_t;
using Date = std::uint32_t;

class Search {
 public:
  explicit Search(Cone const& cone)
      : cone_(cone), circuit_(cone.circuit), nodes_(expressions() + circuit_.signals.size()) {}

  std::vector<Lever> run() {
    auto const roots = all_roots();
    for (auto root : roots) walk_from(root);
    for (auto node : in_order_) sum_up(node);
    std::vector<Lever> found;
    std::vector<bool> is_met(nodes_.size(), false);
    std::vector<Node> open(roots.rbegin(), roots.rend());
    while (!open.empty()) {
      auto const node = open.back();
      open.pop_back();
      if (is_met[node]) continue;
      is_met[node] = true;
      if (is_wire(node) && is_module(node))
        found.push_back({cone_.signals[signal_of(node)], nodes_[node].is_on});
      else
        for_each_below(node, [&](Node below) { open.push_back(below); });
    }
    return found;
  }

 private:
  struct Known {
    Date first = 0, closed = 0, last = 0;  // 0: not yet
    // The earliest and the latest of all below it.
    Date first_below = std::numeric_limits<Date>::max(), last_below = 0;
    bool is_pure = true;    // levers and constants below it, and nothing else
    bool is_on = false;     // as built, where it is pure
    bool is_fixed = false;  // it has this value always, as plain as constants make it
  };

  Node expressions() const { return static_cast<Node>(circuit_.expressions.size()); }
  Node node_of(SignalId signal) const { return expressions() + signal; }
  bool is_signal(Node node) const { return node >= expressions(); }
  SignalId signal_of(Node node) const { return node - expressions(); }
  Signal const& signal(Node node) const { return circuit_.signals[signal_of(node)]; }
  bool is_wire(Node node) const { return is_signal(node) && signal(node).kind == SignalKind::wire; }
  bool is_lever(Node node) const {
    return is_signal(node) && signal(node).kind == SignalKind::lever;
  }

  std::vector<Node> all_roots() const {
    std::vector<Node> roots(cone_.roots.begin(), cone_.roots.end());
    roots.insert(roots.end(), circuit_.nevers.begin(), circuit_.nevers.end());
    for (auto const& signal : circuit_.signals) {
      if (signal.is_memory()) roots.push_back(signal.definition);
      if (signal.kind == SignalKind::latch) roots.push_back(signal.reset);
    }
    return roots;
  }

  template <class Visit>
  void for_each_below(Node node, Visit visit) const {
    if (is_signal(node)) {
      if (is_wire(node)) visit(signal(node).definition);
      return;
    }
    auto const& expression = circuit_.expressions[node];
    if (expression.op == Operator::signal) visit(node_of(expression.left));
    if (expression.op >= Operator::negation) visit(expression.left);
    if (expression.op > Operator::negation) visit(expression.right);
  }

  // A stack of its own: chains can be longer than any call stack. A node that is open stands in it
  // until all below it is met, and once more for each further meeting.
  void walk_from(Node root) {
    std::vector<Node> open{root};
    while (!open.empty()) {
      auto const node = open.back();
      auto& known = nodes_[node];
      ++now_;
      if (known.first == 0) {
        known.first = now_;
        for_each_below(node, [&](Node below) { open.push_back(below); });
        continue;
      }
      open.pop_back();
      known.last = now_;
      if (known.closed != 0) continue;
      known.closed = now_;
      in_order_.push_back(node);
    }
  }

  // Once all dates are known, and all below it is summed up.
  void sum_up(Node node) {
    auto& known = nodes_[node];
    for_each_below(node, [&](Node below) {
      auto const& other = nodes_[below];
      known.first_below = std::min({known.first_below, other.first, other.first_below});
      known.last_below = std::max({known.last_below, other.last, other.last_below});
      known.is_pure = known.is_pure && other.is_pure;
    });
    if (is_signal(node) && !is_wire(node)) known.is_pure = is_lever(node);
    known.is_on = value_of(node);
    known.is_fixed = is_fixed(node);
  }

  bool is_fixed(Node node) const {
    if (is_signal(node)) return is_wire(node) && nodes_[signal(node).definition].is_fixed;
    auto const& [op, left, right] = circuit_.expressions[node];
    auto const is = [&](Node operand, bool value) {
      return nodes_[operand].is_fixed && nodes_[operand].is_on == value;
    };
    switch (op) {
      case Operator::constant:
        return true;
      case Operator::signal:
        return nodes_[node_of(left)].is_fixed;
      case Operator::negation:
        return nodes_[left].is_fixed;
      case Operator::conjunction:
        return is(left, false) || is(right, false) || (is(left, true) && is(right, true));
      case Operator::disjunction:
        return is(left, true) || is(right, true) || (is(left, false) && is(right, false));
      case Operator::parity:
        break;
    }
    return nodes_[left].is_fixed && nodes_[right].is_fixed;
  }

  bool value_of(Node node) const {
    if (is_signal(node))
      return is_wire(node) ? nodes_[signal(node).definition].is_on : signal(node).starts_on;
    auto const& [op, left, right] = circuit_.expressions[node];
    switch (op) {
      case Operator::constant:
        return left != 0;
      case Operator::signal:
        return nodes_[node_of(left)].is_on;
      case Operator::negation:
        return !nodes_[left].is_on;
      case Operator::conjunction:
        return nodes_[left].is_on && nodes_[right].is_on;
      case Operator::disjunction:
        return nodes_[left].is_on || nodes_[right].is_on;
      case Operator::parity:
        break;
    }
    return nodes_[left].is_on != nodes_[right].is_on;
  }

  bool is_module(Node wire) {
    auto const& known = nodes_[wire];
    bool const stands_for_all =
        known.is_pure && known.first < known.first_below && known.last_below < known.closed;
    return stands_for_all && is_unate_in_several(wire);
  }

  // Each lever is met below a number of negations that is always even, or always odd. What
  // constants settle is passed over: what is left is on where all its levers favour it, and off
  // where none does.
  bool is_unate_in_several(Node wire) {
    constexpr std::uint8_t is_straight = 1, is_contrary = 2;
    std::unordered_map<Node, std::uint8_t> senses;
    std::size_t levers = 0;
    std::vector<std::pair<Node, std::uint8_t>> open{{wire, is_straight}};
    while (!open.empty()) {
      if (looks_left_ == 0) return false;
      --looks_left_;
      auto const [node, sense] = open.back();
      open.pop_back();
      if (nodes_[node].is_fixed) continue;
      auto& met = senses[node];
      if (is_lever(node)) {
        levers += met == 0 ? 1 : 0;
        if ((met | sense) == (is_straight | is_contrary)) return false;
      }
      if ((met & sense) != 0) continue;
      met |= sense;
      auto const op = is_signal(node) ? Operator::signal : circuit_.expressions[node].op;
      if (op == Operator::parity) return false;
      auto const other = sense == is_straight ? is_contrary : is_straight;
      for_each_below(node, [&, next = op == Operator::negation ? other : sense](Node below) {
        open.emplace_back(below, next);
      });
    }
    return levers > 1;
  }

  Cone const& cone_;
  Circuit const& circuit_;
  std::vector<Known> nodes_;
  std::vector<Node> in_order_;  // as they were closed
  Date now_ = 0;
  // A wire inside of one that was looked at in vain is looked at again.
  std::size_t looks_left_ = 16 * nodes_.size();
};

}  // namespace

std::vector<Lever> modules(Cone const& cone) {
  auto const& signals = cone.circuit.signals;
  auto const levers = std::count_if(signals.begin(), signals.end(), [](Signal const& signal) {
    return signal.kind == SignalKind::lever;
  });
  return levers > 1 ? Search(cone).run() : std::vector<Lever>();
}

}  // namespace leat::logic
