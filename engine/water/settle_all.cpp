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

namespace {

// The first one alone, to see how wet it gets.
template <class Question, class Alone, class InLanes>
std::vector<Settled> all(std::span<Question const> questions, Alone alone, InLanes in_lanes) {
  std::vector<Settled> settled;
  settled.reserve(questions.size());
  if (questions.empty()) return settled;
  settled.push_back(alone(questions.front()));
  auto const rest = questions.subspan(1);
  if (prefers_lanes(rest.size(), settled.front().field)) {
    for (auto& one : in_lanes(rest)) settled.push_back(std::move(one));
  } else {
    for (auto const& question : rest) settled.push_back(alone(question));
  }
  return settled;
}

}  // namespace

std::vector<Settled> settle_all(std::span<model::Arrangement const> arrangements) {
  return all(arrangements, settle_fresh, settle_fresh_lanes);
}

std::vector<Settled> settle_all(std::span<Switching const> switchings) {
  auto const alone = [](Switching const& switching) {
    return settle_switched(*switching.before, *switching.field, *switching.after,
                           switching.was_settled);
  };
  return all(switchings, alone, settle_switched_lanes);
}

}  // namespace leat::water
