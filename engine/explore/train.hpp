#pragma once
#include <optional>
#include <vector>

#include "engine/body/position.hpp"
#include "engine/logic/machine.hpp"
#include "engine/logic/timed.hpp"
#include "engine/model/design.hpp"

namespace leat::explore {

// A train of bodies sent into an inlet: the closed loop, in which the bodies press the plates, the
// plates drive the logic, the logic arranges the cells, and the cells and their water move the
// bodies.
struct TrainOrder {
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  int count = 1;
  int interval = 20;                   // ticks between two bodies, at least 1
  std::vector<model::SignalId> flips;  // what is flipped before, from as built (explore::walk)
  int most_ticks = 72'000;  // an hour after the last has entered; what is not delivered by then is
                            // told as it stands
};

// Whether the whole train enters within what is run at most.
inline constexpr long longest_entry = 1'000'000;  // ticks
inline bool is_runnable(TrainOrder const& order) {
  return static_cast<long>(order.count) * order.interval <= longest_entry;
}

struct Arrival {
  int entered = 0;                  // tick
  int ended = 0;                    // tick; the last one run where it has not ended
  body::End end = body::End::none;  // none: still on its way
  std::optional<model::OutletId> outlet;
  model::Cell cell = model::no_cell;  // its feet cell at the end; no_cell if it never fitted in
};

struct TrainRun {
  std::vector<Arrival> bodies;           // in the order in which they entered
  std::vector<std::uint32_t> delivered;  // indices, in the order of delivery
  int ticks = 0;
  // Where a body had a choice of moves it took the first sure one, or it took one that may fail:
  // this is one run, others are possible.
  bool had_choice = false;
  // False: the logic or the water did not come to rest before the train, which then has no bodies,
  // or the logic not within some tick of it. What such a run shows is not known to be so.
  bool is_quiet = true;
};

// Bodies do not push each other: how close they may follow is not judged here. A move takes the
// ticks of body::ticks_of; a body whose way has closed when the ticks are over stays and chooses
// again. Water moves every Rule::step_ticks. Cost: one pass over the bodies each tick, settling
// where the arrangement changes.
TrainRun run_train(model::Design const&, logic::Machine const&, TrainOrder const&);

}  // namespace leat::explore
