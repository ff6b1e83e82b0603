#pragma once
#include <optional>
#include <vector>

#include "engine/works/network.hpp"

namespace leat::works {

// What bodies that enter are seen to reach, each thing by some combination that can come about. It
// proves that something is reached; what it does not see may be reached all the same.
//
// Idea: depth first along the joins with a part of a combination in hand: a way is gone where its
// condition can be met with the values that earlier ways have taken, and takes the values it needs;
// coming back they are given up. Each inlet is gone through once for a profile, under the first
// such part that comes to it. Nothing is added to the diagram. Cost: the ways, each with the nodes
// of its condition; and those of the combinations that can come about, where not every one can.
class Reached {
 public:
  // All must outlive it. `variables`: how many the diagram has.
  Reached(Network const&, logic::Diagram const&, std::size_t variables, Function reachable);

  // Whether some body is seen to reach the outlet.
  bool is_seen(model::OutletId outlet) const { return is_seen_[outlet]; }
  // How many joins lie behind a body that comes to where one of its ways tests the variable; the
  // most of those that were seen.
  std::optional<std::uint32_t> depth(logic::Diagram::Level) const;
  // A combination that can come about, in which a body comes there. Contract: depth() is known.
  std::vector<bool> combination(logic::Diagram::Level);

 private:
  enum class Value : std::uint8_t { open, off, on };
  // An inlet that a body of the profile came to: by which way from where.
  struct Visit {
    model::InletId inlet = 0;
    model::ProfileId profile = 0;
    std::uint32_t from = 0, depth = 0;  // `from`: a visit, itself where the body entered
    Way const* by = nullptr;
  };
  struct Frame;

  void enter(model::InletId, model::ProfileId);
  void come_to(Visit, std::vector<Frame>&);
  void go(Frame&, std::vector<Frame>&);
  void note_tested(std::uint32_t visit);
  bool meet(Function);
  bool meet_below(Function);
  bool can_come_about();
  void give_up(std::size_t taken);

  Network const& network_;
  logic::Diagram const& diagram_;
  Function reachable_;
  std::vector<bool> is_seen_;     // by outlet
  std::vector<bool> is_visited_;  // inlet * profiles + profile
  std::vector<Visit> visits_;
  std::vector<std::optional<std::uint32_t>> tested_at_;  // by level: the deepest such visit
  // By node or edge of the diagram, in which question it was last looked at: told by a number.
  std::vector<std::uint32_t> looked_at_, dead_;
  std::uint32_t looks_ = 0, meetings_ = 0;
  std::vector<Value> values_;                 // by level
  std::vector<logic::Diagram::Level> taken_;  // levels with a value, in the order of taking
};

}  // namespace leat::works
