#pragma once
#include <memory>
#include <vector>

#include "engine/works/network.hpp"

namespace leat::works {

// What can become of a body from an inlet on.
enum class Prospect : std::uint8_t {
  arrival,   // an outlet of the plant can be reached
  parting,   // it can come to where several outlets are open: without that it has one end at most
  trapped,   // some place on its way has no way out
  spilled,   // it can leave the drawing
  unsure,    // it hangs on unsure moves
  barred,    // it does not get in, here or further on
  unknown,   // it comes into an island that could not be solved
  round,     // whatever it does, joins lead it on and on
  circling,  // it can come to where that is so
};
inline constexpr std::size_t prospect_count = 9;

// When each of these is so, from every inlet on: one question at a time, for all inlets together.
//
// Idea: backward along the joins. What can come about from an inlet is the union, over its ways, of
// what happens on the way and of what can come about from the inlets that it leads to, where the
// way is open. Inlets are taken against the order of the joins, so that without a cycle of joins
// each is taken once; in a cycle conditions only grow, until nothing is new. A body is trapped
// where it can arrive at an inlet from which no outlet of the plant can be reached any more (model
// section 3, Fairness: a cycle with a way out is left). Cost: two operations of the diagram for
// each way, a question; each question is answered once for a profile, when it is first asked.
class Prospects {
 public:
  // Both must outlive it.
  Prospects(Network const&, logic::Diagram&);
  ~Prospects();

  Function of(Prospect, model::InletId, model::ProfileId);

 private:
  class Answers;
  std::unique_ptr<Answers> answers_;
  std::vector<std::vector<Function>>
      known_;  // profile * prospects + prospect; empty: not asked yet
};

}  // namespace leat::works
