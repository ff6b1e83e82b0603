#pragma once
#include <utility>
#include <vector>

#include "engine/water/flow.hpp"

// Where water that spreads prefers to go: the part of Flow that seeks holes.
namespace leat::water {

// Model section 2, "Preferred sides of n": those with the least D, all of them if none has a D.
template <class Layout>
void Flow<Layout>::prefer(Id id) {
  if (layout_.marks(id).knows_sides) return;
  knows_ways_ = true;
  layout_.for_each_beside(id, [&](Id n) {
    if (layout_.marks(n).known_near <= rules_.reach) know_near(n, rules_.reach);
  });
  std::array<Places, 4> preferred;
  preferred.fill(~Places{});
  for (int d = rules_.reach; d >= 0; --d) {
    auto const near = layout_.near_around(id, d);
    auto const some = any(near);
    if (!some) break;  // nor is any nearer
    for (std::size_t side = 0; side < 4; ++side) preferred[side] &= ~some | near[side];
  }
  layout_.made(id).preferred = preferred;
  layout_.marks(id).knows_sides = true;
}

// Makes sure that `near` is known up to a distance. D of a place through others stops at sources
// and where water may not enter; an open outside is all hole, so no way leads on from there.
template <class Layout>
void Flow<Layout>::know_near(Id id, int distance) {
  if (layout_.marks(id).known_near > distance) return;
  auto const free = ~layout_.made(id).sources & layout_.passage(id);
  int const known = layout_.marks(id).known_near;
  auto near = known > 0 ? layout_.near(id, known - 1) : free & layout_.hole(id);
  for (int d = known; d <= distance; ++d) {
    if (d > 0 && (free & ~near)) {
      layout_.for_each_beside(id, [&](Id n) {
        if (layout_.marks(n).known_near < d) know_near(n, d - 1);
      });
      near |= free & any(layout_.near_around(id, d - 1));
    }
    layout_.near(id, d) = near;
    layout_.marks(id).known_near = static_cast<std::uint8_t>(d + 1);
  }
}

// Forgets D and the preferred sides wherever a way may have led through a new source, and lists
// what is newly offered without it.
template <class Layout>
void Flow<Layout>::forget_ways() {
  std::vector<Id> doubtful;
  for (auto id : closed_) {
    layout_.for_each_near(id, rules_.reach + 1, [&](Id near) {
      auto& marks = layout_.marks(near);
      marks.known_near = 0;
      if (std::exchange(marks.knows_sides, false) && layout_.at(near).spreading) {
        doubtful.push_back(near);
      }
    });
  }
  for (auto id : doubtful) {
    auto const was = layout_.at(id).preferred;
    prefer(id);
    auto const& patch = layout_.at(id);
    std::array<Places, 4> gained;
    for (std::size_t side = 0; side < 4; ++side) gained[side] = patch.spreading & ~was[side];
    announce(id, gained);
  }
}

template <class Layout>
void Flow<Layout>::find_closed_ways() {
  closed_.clear();
  if (!knows_ways_) return;
  for (auto const& [id, sources] : formed_) {
    know_near(id, rules_.reach);
    if (sources & layout_.near(id, rules_.reach)) {
      closed_.push_back(id);
    }
  }
}

}  // namespace leat::water
