#pragma once
#include <cstdint>
#include <functional>
#include <vector>

#include "engine/explore/setting.hpp"
#include "engine/explore/states.hpp"
#include "engine/model/design.hpp"
#include "engine/water/field.hpp"

namespace leat::explore {

// One settled water that can come about: a setting of the cells and the field in it. Equal ones are
// kept once.
struct Water {
  std::uint32_t setting = 0;  // index into Histories::settings
  water::Field field;         // empty where waters are not kept: field_of makes it again
  bool is_settled = true;     // false: it still moved when the bound on its steps was reached
  bool is_fresh = true;       // it is the one that comes from dry in its setting
};

// Everything the machine and its water can be in together, reached by events from as built with
// fresh water. Cells go straight into the setting of the quiet logic: what delays arrange on the
// way is followed by switching alone. What the water remembers of earlier combinations is in its
// field, so one logic state can come with several waters.
struct Histories {
  static constexpr std::uint32_t none = 0xffffffffu;

  // A logic state with one water; breadth first, so `parent` leads back along a shortest event
  // sequence.
  struct Node {
    std::uint32_t state = 0, water = 0;
    std::uint32_t parent = none;
    std::uint8_t event = 0;  // from the parent
  };

  std::vector<Setting> settings;
  std::vector<std::uint32_t> setting_of_state;
  std::vector<Water> waters;
  std::vector<Node> nodes;
  std::size_t changes = 0;   // settled: from one water into one setting, each once
  bool is_complete = false;  // false: the budget ran out
  bool is_followed = true;   // false: each state has the fresh water of its setting, and no more

  // The events from as built to a node, a shortest list.
  std::vector<std::size_t> events_to(std::uint32_t node) const;
};

// How far the waters are followed.
struct HistoryBudget {
  std::size_t most_changes = 60'000;
  std::size_t most_nodes = 2'000'000;
  std::size_t most_cells = 400'000'000;  // of all fields and arrangements kept
};

// Breadth first over (state, water). Each pair of a water and a next setting is settled once.
// Cost: one settling for each change, many of them together.
Histories trace(model::Design const&, logic::Machine const&, States const&, HistoryBudget const&,
                std::function<void(std::size_t done)> const& progress = {});

// Every state with the fresh water of its setting, as if it had been built so; no field is kept.
Histories fresh(model::Design const&, logic::Machine const&, States const&);

// Whether every water came to rest.
bool do_rest(Histories const&);

// The field of a water, settled again where it is not kept.
water::Field field_of(model::Design const&, Histories const&, std::uint32_t water);

}  // namespace leat::explore
