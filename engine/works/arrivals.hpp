#pragma once
#include <vector>

#include "engine/model/joins.hpp"
#include "engine/works/passages.hpp"

namespace leat::works {

// When a body of some profile comes to an inlet of the plant: wherever bodies enter from outside,
// always; else where one comes to an outlet that is joined to it. Cost: nothing for the former; for
// the first of the latter that of all conditions of outlets (Passages::everything_reached).
class Arrivals {
 public:
  Arrivals() = default;  // of no plant
  explicit Arrivals(model::Design const& plant);

  bool is_entrance(model::InletId inlet) const { return joins_.is_entrance(inlet); }
  // More where the diagram has run out.
  Function at(model::InletId, model::ProfileId, Passages const&, logic::Diagram&);

 private:
  model::Joins joins_;
  std::vector<std::vector<Function>> arriving_;  // by profile, then inlet; if known
};

}  // namespace leat::works
