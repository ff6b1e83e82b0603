#pragma once
#include <vector>

#include "engine/works/network.hpp"

namespace leat::works {

// What becomes of one body that enters the plant by one inlet, whichever islands it comes through.
struct Passage {
  struct End {
    model::OutletId outlet = 0;
    Function condition = logic::Diagram::never;
  };
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  std::vector<End> ends;  // the outlets of the plant that can ever be reached, ascending
  // When some place on its way has no way out; it can leave the drawing; it hangs on unsure moves;
  // it does not get in, here or further on.
  Function trapped = logic::Diagram::never, spilled = logic::Diagram::never,
           unsure = logic::Diagram::never, barred = logic::Diagram::never;
  // When it comes into an island that could not be solved: then nothing else is sure.
  Function unknown = logic::Diagram::never;

  Function reaching(model::OutletId) const;
};

// The passages from every entrance, for every profile.
//
// Idea: the condition under which a body arrives at an inlet is the union, over the ways that lead
// there, of arriving at their inlet and the way being open. Inlets are taken in the order of the
// joins, so that without a cycle of joins each is taken once; in a cycle conditions only grow,
// until nothing is new. A body is trapped where it can arrive at an inlet from which no outlet of
// the plant can be reached any more (model section 3, Fairness: a cycle with a way out is left).
// Cost: two operations of the diagram for each way that can be come by, from each entrance.
std::vector<Passage> passages(Network const&, Conditions&);

}  // namespace leat::works
