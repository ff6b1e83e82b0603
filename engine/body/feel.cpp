#include "engine/body/feel.hpp"

#include <algorithm>
#include <array>
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
  find_switched();
  differs_.resize(waters.front().grid().size());
  is_read_.resize((differs_.size() + stretch - 1) / stretch);
}

Surroundings const& Feel::in(Word group) const {
  return waters_[static_cast<std::size_t>(std::countr_zero(group))];
}

// What is asked for (moves.cpp): the body's own columns and those beside them by a face. Upward the
// cell over the head, which is the highest that a body climbs or rises into, too. Downward what
// carries a body that fell one cell, or the water in which it sinks on.
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

void Feel::find_switched() {
  auto const& first = waters_.front().moment().arrangement;
  is_switched_.resize(first.design().fills.size());
  for (std::size_t f = 0; f < is_switched_.size(); ++f) {
    auto const fill = static_cast<model::FillId>(f);
    if (!first.design().fills[f].is_switched()) continue;
    is_switched_[f] = std::any_of(waters_.begin(), waters_.end(), [&](Surroundings const& one) {
      return one.moment().arrangement.made_of(fill) != first.made_of(fill);
    });
  }
}

bool Feel::differs(Cell c) {
  auto const number = c / stretch;
  if (!std::exchange(is_read_[number], std::uint8_t{1})) read(number);
  return differs_[c] != 0;
}

void Feel::read(std::size_t stretch_number) {
  auto const begin = stretch_number * stretch;
  auto const count = std::min(stretch, differs_.size() - begin);
  auto const& now = waters_.front().moment();
  auto const* const first = &now.field[begin];
  std::array<water::State, stretch> unlike{};
  for (auto const& one : waters_) {
    auto const* const other = &one.moment().field[begin];
    for (std::size_t i = 0; i < count; ++i)
      unlike[i] = static_cast<water::State>(unlike[i] | (first[i] ^ other[i]));
  }
  auto const& fill_of = now.arrangement.design().fill_of;
  for (std::size_t i = 0; i < count; ++i)
    differs_[begin + i] = static_cast<std::uint8_t>(unlike[i] | is_switched_[fill_of[begin + i]]);
}

// Waters with the same water and the same material at one cell.
std::vector<Word> const& Feel::groups_of_cell(Cell c) {
  auto& groups = cell_groups_[c];
  if (!groups.empty()) return groups;
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
  for (auto const& [now, group] : found) groups.push_back(group);
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
    if (!differs(c)) continue;
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
