#include <algorithm>

#include "engine/water/lanes.hpp"

namespace leat::water {

// Lanes pay once for each cell that is wet in any of them, the single way for each stretch of a row
// that holds water, in each arrangement anew. Measured on floors from dry to flooded, channels one
// cell wide and falls (tests/bench): a cell in lanes takes 0.25 to 0.45 of the time of such a
// stretch, everything with it; half is asked for, so that lanes win where they are taken. So they
// are for many arrangements, and for few where water is narrow or scattered or there is none; a
// floor flooded in whole rows wants about 30.
bool prefers_lanes(std::size_t arrangements, Field const& typical) {
  std::size_t wet = 0, stretches = 0;
  for (std::size_t first = 0; first < typical.size(); first += word_bits) {
    auto const end = std::min<std::size_t>(first + word_bits, typical.size());
    auto const here = static_cast<std::size_t>(
        std::count_if(typical.begin() + static_cast<std::ptrdiff_t>(first),
                      typical.begin() + static_cast<std::ptrdiff_t>(end), is_wet));
    wet += here;
    stretches += here > 0 ? 1u : 0u;
  }
  return wet <= 2 * stretches * std::min(arrangements, Lanes::most);
}

// The first one alone, to see how wet it gets.
std::vector<Settled> settle_all(std::span<model::Arrangement const> arrangements) {
  std::vector<Settled> settled;
  settled.reserve(arrangements.size());
  if (arrangements.empty()) return settled;
  settled.push_back(settle_fresh(arrangements.front()));
  auto const rest = arrangements.subspan(1);
  if (prefers_lanes(rest.size(), settled.front().field)) {
    for (auto& one : settle_fresh_lanes(rest)) settled.push_back(std::move(one));
  } else {
    for (auto const& arrangement : rest) settled.push_back(settle_fresh(arrangement));
  }
  return settled;
}

// A switch changes little, so most of its cost is to read the drawing and the field, which lanes do
// once for all. Measured on floors from dry to flooded, each gate flipped alone, from one field or
// several (tests/bench): lanes are never slower from 6 on, and 3 to 5 times quicker from 30 on.
std::vector<Settled> settle_all(std::span<Switching const> switchings) {
  constexpr std::size_t fewest_in_lanes = 8;
  if (switchings.size() >= fewest_in_lanes) return settle_switched_lanes(switchings);
  std::vector<Settled> settled;
  for (auto const& [before, field, after, was_settled] : switchings)
    settled.push_back(settle_switched(*before, *field, *after, was_settled));
  return settled;
}

}  // namespace leat::water
