#pragma once

// A creature as the cell rules see it (model section 3).
namespace leat::model {

struct Profile {
  int footprint = 1;   // cells square, 1 or 2
  int height = 2;      // cells, 1 or 2
  bool floats = true;  // rises in water; otherwise sinks to the lowest wet cell
  int breath = 300;    // ticks under water [memory]
  int safe_fall = 3;   // cells onto something dry [practice]
  bool operator==(Profile const&) const = default;
};

using ProfileId = unsigned;

}  // namespace leat::model
