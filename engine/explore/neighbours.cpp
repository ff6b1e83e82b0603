#include "engine/explore/neighbours.hpp"

#include <algorithm>
#include <bit>

#include "engine/contract.hpp"
#include "engine/logic/transpose.hpp"

namespace leat::explore {

using logic::lane_count;

namespace {

enum class Share { none, some, all };

Share share(logic::SideBySide::Plane const& lanes, logic::SideBySide::Plane const& used) {
  logic::Lanes on = 0, off = 0;
  for (std::size_t w = 0; w < lanes.size(); ++w) {
    on |= lanes[w] & used[w];
    off |= ~lanes[w] & used[w];
  }
  return on == 0 ? Share::none : off == 0 ? Share::all : Share::some;
}

}  // namespace

void Neighbours::load(std::span<logic::Code const> codes, std::span<Key const> keys) {
  require(codes.size() == keys.size(), "Neighbours::load: a key for every state");
  block_.load(codes);
  from_ = keys;
}

Neighbours::Flip Neighbours::flip(std::size_t event, std::span<Key> to) {
  auto const& outcome = block_.flip(event);
  Flip flip{keys_->change(event), logic::Code{1} << event, true, &outcome.unsettled};
  uneven_.clear();
  for (auto const& [variable, lanes] : outcome.changes) {
    auto const part = share(lanes, block_.used());
    if (part == Share::some) uneven_.push_back({keys_->change(variable), &lanes});
    if (part != Share::all) continue;
    flip.key ^= keys_->change(variable);
    flip.code ^= logic::Code{1} << variable;
  }
  if (uneven_.empty()) return flip;
  flip.is_even = false;
  for (std::size_t lane = 0; lane < from_.size(); ++lane) to[lane] = from_[lane] ^ flip.key;
  constexpr std::size_t most_lane_by_lane = 6;
  uneven_.size() <= most_lane_by_lane ? add_lane_by_lane(to) : add_transposed(to);
  return flip;
}

void Neighbours::add_lane_by_lane(std::span<Key> to) const {
  for (auto const& [image, lanes] : uneven_) {
    for (std::size_t lane = 0; lane < from_.size(); ++lane)
      to[lane] ^= (0 - (lanes->at(lane / lane_count) >> lane % lane_count & 1u)) & image;
  }
}

void Neighbours::add_transposed(std::span<Key> to) const {
  for (std::size_t begin = 0; begin < from_.size(); begin += lane_count) {
    std::array<std::uint64_t, lane_count> rows{};
    for (auto const& [image, lanes] : uneven_) {
      for (auto rest = image; rest != 0; rest &= rest - 1)
        rows[static_cast<std::size_t>(std::countr_zero(rest))] ^= (*lanes)[begin / lane_count];
    }
    logic::transpose(rows);
    auto const end = std::min<std::size_t>(begin + lane_count, from_.size());
    for (auto lane = begin; lane < end; ++lane) to[lane] ^= rows[lane - begin];
  }
}

}  // namespace leat::explore
