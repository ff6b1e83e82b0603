#include "engine/body/feel.hpp"

#include <algorithm>
#include <bit>
#include <utility>

#include "engine/contract.hpp"

namespace leat::body {

Feel::Feel(std::span<Surroundings const> waters) : waters_(waters) {
  require(!waters.empty() && waters.size() <= water::word_bits, "Feel: 1 to 64 waters");
  auto const* design = &waters.front().moment().arrangement.design();
  require(std::all_of(waters.begin(), waters.end(),
                      [&](Surroundings const& one) {
                        return &one.moment().arrangement.design() == design &&
                               one.profile() == waters.front().profile();
                      }),
          "Feel: waters of one design, and one body");
  list_offsets();
  find_differences();
  divided_.resize(differs_.size());
}

Surroundings const& Feel::in(Word group) const {
  return waters_[static_cast<std::size_t>(std::countr_zero(group))];
}

// What is asked for (moves.cpp): the body's own columns and those beside them by a face. Upward the
// cell over the head, which is the highest where a body climbs or rises to, too. Downward what
// carries a body one cell lower, and where it falls into water what carries it where it stops
// sinking.
void Feel::list_offsets() {
  auto const& profile = waters_.front().profile();
  auto const sinks =
      std::clamp(waters_.front().practice()[model::Rule::sink_cells], 0, most_fallen - 1);
  auto const is_own = [&](int at) { return at >= 0 && at < profile.footprint; };
  auto const lowest = -std::max(2, 1 + sinks);
  for (int z = lowest; z <= profile.height; ++z) {
    for (int y = -1; y <= profile.footprint; ++y) {
      for (int x = -1; x <= profile.footprint; ++x) {
        if (is_own(x) || is_own(y)) offsets_.push_back({x, y, z});
      }
    }
  }
}

void Feel::find_differences() {
  auto const& first = waters_.front().moment();
  auto const& design = first.arrangement.design();
  differs_.assign(design.grid.size(), 0);
  std::vector<std::uint8_t> is_switched(design.fills.size(), 0);
  for (auto const& one : waters_.subspan(1)) {
    auto const& [arrangement, field] = one.moment();
    for (std::size_t c = 0; c < differs_.size(); ++c)
      differs_[c] = static_cast<std::uint8_t>(differs_[c] | (field[c] ^ first.field[c]));
    for (std::size_t f = 0; f < is_switched.size(); ++f) {
      auto const fill = static_cast<model::FillId>(f);
      if (arrangement.made_of(fill) != first.arrangement.made_of(fill)) is_switched[f] = 1;
    }
  }
  if (std::find(is_switched.begin(), is_switched.end(), 1) == is_switched.end()) return;
  for (std::size_t c = 0; c < differs_.size(); ++c)
    differs_[c] = static_cast<std::uint8_t>(differs_[c] | is_switched[design.fill_of[c]]);
}

// Waters with the same water and the same material at one cell.
std::vector<Word> const& Feel::groups_of_cell(Cell c) {
  if (divided_[c] > 0) return cell_groups_[divided_[c] - 1];
  auto const fill = waters_.front().moment().arrangement.design().fill_of[c];
  std::vector<std::pair<water::Moment const*, Word>> found;
  for (std::size_t lane = 0; lane < waters_.size(); ++lane) {
    auto const& now = waters_[lane].moment();
    auto const same = std::find_if(found.begin(), found.end(), [&](auto const& known) {
      return known.first->field[c] == now.field[c] &&
             known.first->arrangement.made_of(fill) == now.arrangement.made_of(fill);
    });
    if (same == found.end()) {
      found.emplace_back(&now, Word{1} << lane);
    } else {
      same->second |= Word{1} << lane;
    }
  }
  auto& groups = cell_groups_.emplace_back();
  for (auto const& [now, group] : found) groups.push_back(group);
  divided_[c] = static_cast<std::uint32_t>(cell_groups_.size());
  return groups;
}

std::vector<Word> Feel::groups(Cell feet) {
  std::vector<Word> groups{all()}, finer;
  auto const& grid = waters_.front().grid();
  auto const at = grid.place(feet);
  for (auto const& [x, y, z] : offsets_) {
    model::Place const place{at.x + x, at.y + y, at.z + z};
    if (!grid.is_inside(place)) continue;  // the rim is alike in all waters
    auto const c = grid.cell(place);
    if (differs_[c] == 0) continue;
    finer.clear();
    for (auto group : groups) {
      for (auto part : groups_of_cell(c)) {
        if (group & part) finer.push_back(group & part);
      }
    }
    groups.swap(finer);
  }
  return groups;
}

}  // namespace leat::body
