#pragma once
#include <array>
#include <cstddef>
#include <string_view>

// Every number of the model, each with its provenance, in one table. A design's `practice` block
// sets them; nothing else in the engine writes such a number down.
namespace leat::model {

enum class Provenance { practice, memory, choice };

enum class Rule : std::size_t {
  source_strength,
  source_makers,
  eager_makers,
  hole_search,
  step_ticks,
  falling_slope,
  drift_after,
  sink_cells,
  longest_drop,
  cushion,
  cushion_advised,
  pit_width,
  head_run,
  lift_sources,
  edge_drop,
  swimmer_pool,
  ticks_per_second,
  gravity,
  air_drag,
  water_drag,
  water_gravity,
  upward_stroke,
  stroke_chance,
  water_push,
  body_width,
  body_height,
  count
};

// The name is the word a design file uses; it is an identifier of the model, not a sentence.
struct RuleRow {
  Rule rule;
  std::string_view name;
  int standard, least, most;
  std::string_view unit;
  Provenance provenance;
};

inline constexpr std::array<RuleRow, static_cast<std::size_t>(Rule::count)> rule_table{{
    // strength of a source and of falling water; a flow is 1 to one less
    {Rule::source_strength, "source_strength", 8, 2, 100, "strength", Provenance::practice},
    // side neighbours that are sources, needed to form another
    {Rule::source_makers, "source_makers", 2, 1, 5, "cells", Provenance::memory},
    // side neighbours that are sources, from which a source spreads though water pours down below
    // it
    {Rule::eager_makers, "eager_makers", 3, 1, 5, "cells", Provenance::memory},
    // side steps over which water seeks a hole
    {Rule::hole_search, "hole_search", 4, 0, 8, "cells", Provenance::memory},
    // ticks between two steps of the water
    {Rule::step_ticks, "step_ticks", 5, 1, 1000, "ticks", Provenance::memory},
    // falling water beside a wall pushes by 1 / sqrt(this)
    {Rule::falling_slope, "falling_slope", 37, 1, 10000, "ratio", Provenance::memory},
    // cells fallen from which a body drifts sideways, and in water remembers its side
    {Rule::drift_after, "drift_after", 2, 1, 3, "cells", Provenance::practice},
    // deepest a falling body sinks below the surface
    {Rule::sink_cells, "sink_cells", 3, 0, 3, "cells", Provenance::memory},
    // longest harmless fall onto something dry, of a body that does not say its own
    {Rule::longest_drop, "longest_drop", 3, 0, 1000, "cells", Provenance::practice},
    // depth of water under a longer drop: below the first figure unsafe, below the second tight
    {Rule::cushion, "cushion", 2, 0, 1000, "cells", Provenance::practice},
    {Rule::cushion_advised, "cushion_advised", 3, 0, 1000, "cells", Provenance::practice},
    // width of a pit along the side to which a falling body was carried
    {Rule::pit_width, "pit_width", 2, 1, 100, "cells", Provenance::practice},
    // longest run with the water at head level
    {Rule::head_run, "head_run", 2, 0, 1000, "cells", Provenance::practice},
    // most sources on top of each other in a lift
    {Rule::lift_sources, "lift_sources", 1, 1, 100, "cells", Provenance::practice},
    // fall at the end of a flow from which a sign should stop the water
    {Rule::edge_drop, "edge_drop", 2, 1, 1000, "cells", Provenance::choice},
    // joined still cells from which swimmers may appear
    {Rule::swimmer_pool, "swimmer_pool", 16, 1, 1000000, "cells", Provenance::memory},
    // ticks in a second
    {Rule::ticks_per_second, "ticks_per_second", 20, 1, 1000, "ticks", Provenance::memory},
    // speed lost each tick in air, in thousandths of a cell a tick
    {Rule::gravity, "gravity", 80, 1, 1000, "mcells/tick", Provenance::memory},
    // share of its speed a body keeps each tick in air, and in water
    {Rule::air_drag, "air_drag", 980, 1, 999, "thousandths", Provenance::memory},
    {Rule::water_drag, "water_drag", 800, 1, 999, "thousandths", Provenance::memory},
    // speed lost each tick in water
    {Rule::water_gravity, "water_gravity", 20, 1, 1000, "mcells/tick", Provenance::memory},
    // speed won by one stroke upward in water, and how often a stroke is made
    {Rule::upward_stroke, "upward_stroke", 40, 1, 1000, "mcells/tick", Provenance::memory},
    {Rule::stroke_chance, "stroke_chance", 800, 1, 1000, "thousandths", Provenance::memory},
    // speed won each tick along the current
    {Rule::water_push, "water_push", 14, 1, 1000, "mcells/tick", Provenance::memory},
    // how wide a body is in one cell, and how tall in two; each further cell adds a whole one
    {Rule::body_width, "body_width", 600, 1, 1000, "mcells", Provenance::memory},
    {Rule::body_height, "body_height", 1950, 1001, 2000, "mcells", Provenance::memory},
}};

class Practice {
 public:
  constexpr Practice() {
    for (auto const& row : rule_table) values_[static_cast<std::size_t>(row.rule)] = row.standard;
  }
  constexpr int operator[](Rule rule) const { return values_[static_cast<std::size_t>(rule)]; }
  // Contract: the value lies within the row's bounds (the language checks it first).
  void set(Rule rule, int value);
  bool operator==(Practice const&) const = default;

 private:
  std::array<int, static_cast<std::size_t>(Rule::count)> values_{};
};

}  // namespace leat::model
