#pragma once
#include <algorithm>
#include <cstdint>
#include <utility>
#include <vector>

#include "engine/logic/computed.hpp"

namespace leat::logic {

// Boolean functions as one reduced ordered decision diagram that they share.
//
// Idea: R. E. Bryant, "Graph-based algorithms for Boolean function manipulation" (1986): along
// every path variables are tested in one order, no two nodes are equal and none has equal branches,
// so that a function has one form and equal functions are the same edge. Edges can be complemented
// (K. S. Brace, R. L. Rudell, R. E. Bryant, 1990), so negation is free; the branch for "on" never
// is. Cost: each operation visits each pair of nodes once, as far as remembered results last.
//
// Nodes are never given back: a diagram belongs to one question and has a budget of nodes. Nor are
// its functions deeper than a bound, so that whoever follows them down calls himself no more often
// than his stack allows. When either is used up, has_run_out() holds, and whatever is computed then
// or later means nothing.
class Diagram {
 public:
  using Level = std::uint32_t;  // place of a variable in the order, 0 first
  static constexpr Level below_all = 0xffffffffu;

  struct Function {
    std::uint32_t edge = 0;
    bool operator==(Function const&) const = default;
    Function operator!() const { return {edge ^ 1u}; }
  };
  static constexpr Function always{0}, never{1};

  // How many variables a path may test, also where operands are followed down together. An
  // operation takes up to 144 bytes of stack a step: so 3.5 of the 8 MiB that main programs and
  // threads are given. Where sanitizers look on it takes more than twice that.
#ifdef LEAT_SANITIZED
  static constexpr std::uint32_t most_depth = 8192;
#else
  static constexpr std::uint32_t most_depth = 24576;
#endif

  // Contract: at most 2^30 nodes; no deeper than most_depth.
  explicit Diagram(std::size_t most_nodes, std::uint32_t deepest = most_depth);

  Function variable(Level level) { return node(level, never, always); }
  // The function that is `off` where the variable is off, else `on`. Contract: both lie below it.
  Function node(Level, Function off, Function on);

  Function both(Function, Function);
  Function either(Function f, Function g) { return !both(!f, !g); }
  Function differ(Function, Function);
  Function choice(Function condition, Function if_on, Function if_off);

  // The first variable tested; below_all for constants.
  Level level(Function f) const { return nodes_[f.edge >> 1].level; }
  // What is left when the variable of that level is off, or on. Contract: none is tested before.
  std::pair<Function, Function> branches(Function f, Level at) const {
    auto const& tested = nodes_[f.edge >> 1];
    if (tested.level != at) return {f, f};
    auto const flip = f.edge & 1u;
    return {{tested.off ^ flip}, {tested.on ^ flip}};
  }
  // The most variables that are tested one after the other.
  std::uint32_t depth(Function f) const { return nodes_[f.edge >> 1].depth; }
  // Whether following these down together is within the bound on depth; where not, it has run out.
  // No level comes twice on the way, so it is no longer than both together, nor than there are
  // levels below.
  bool can_follow(Function f, Function g) {
    return can_follow(std::min(depth(f) + depth(g), levels_ - std::min(level(f), level(g))));
  }
  // The value where variable v is on exactly if is_on[v].
  bool is_true(Function, std::vector<bool> const& is_on) const;
  // The share of all assignments in which it is true.
  long double share(Function) const;

  bool has_run_out() const { return has_run_out_; }
  // Nodes made so far, and nodes of one function, the constant among them.
  std::size_t node_count() const { return nodes_.size(); }
  std::size_t size(Function) const;

 private:
  struct Node {
    Level level = below_all;
    std::uint32_t off = 0, on = 0, depth = 0;
  };
  bool can_follow(std::uint32_t depth) {
    has_run_out_ = has_run_out_ || depth > deepest_;
    return !has_run_out_;
  }
  std::size_t place_of(Node const&) const;
  void double_places();
  std::vector<std::uint32_t> below(Function) const;
  Function both_of_nodes(Function, Function);

  std::size_t most_nodes_;
  std::uint32_t deepest_, levels_ = 0;  // that are tested somewhere
  std::vector<Node> nodes_;
  std::vector<std::uint32_t> places_;  // hash table of nodes; 0: free
  Computed computed_;
  bool has_run_out_ = false;
};

}  // namespace leat::logic
