#include "tests/bench/plain_search.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

namespace leat::bench {

namespace {

using model::Cell;
using model::Rule;
using water::State;

constexpr std::uint8_t far = 255;

class Search {
 public:
  explicit Search(model::Arrangement const& arrangement)
      : arrangement_(arrangement),
        grid_(arrangement.grid()),
        practice_(arrangement.practice()),
        field_(grid_.size()),
        is_inside_(grid_.size(), 0),
        is_enterable_(grid_.size(), 0),
        is_listed_(grid_.size(), 0) {
    for (int z = 0; z < grid_.height(); ++z) {
      for (int y = 0; y < grid_.depth(); ++y) {
        auto const first = grid_.cell({0, y, z});
        std::fill_n(is_inside_.begin() + first, grid_.width(), std::uint8_t{1});
      }
    }
    for (Cell c = 0; c < field_.size(); ++c) {
      is_enterable_[c] = arrangement[c].water_enters ? 1 : 0;
      if (is_inside_[c] && arrangement[c].is_source) list(c);
    }
    find_distances();
  }

  water::Settled settled() {
    water::Settled result;
    while (step()) ++result.steps;
    result.field = std::move(field_);
    return result;
  }

 private:
  bool is_passage(Cell c) const { return is_enterable_[c] && field_[c] != water::source; }
  bool is_hole(Cell c) const {
    return is_inside_[c] ? is_enterable_[grid_.below(c)] != 0 : arrangement_.outside_is_open();
  }
  int strength(Cell c) const { return water::strength(field_[c], practice_); }
  int sources(Cell c) const {
    return static_cast<int>(std::count_if(model::sides.begin(), model::sides.end(), [&](auto side) {
      return field_[grid_.beside(c, side)] == water::source;
    }));
  }

  void find_distances() {
    distance_.assign(field_.size(), far);
    std::vector<Cell> ring, next;
    for (Cell c = 0; c < field_.size(); ++c) {
      if (!is_passage(c) || !is_hole(c)) continue;
      distance_[c] = 0;
      ring.push_back(c);
    }
    for (int steps = 1; steps <= practice_[Rule::hole_search]; ++steps) {
      for (auto c : ring) {
        for (auto side : model::sides) {
          auto const n = grid_.beside(c, side);
          if (n >= field_.size() || !is_inside_[n] || distance_[n] != far || !is_passage(n))
            continue;
          distance_[n] = static_cast<std::uint8_t>(steps);
          next.push_back(n);
        }
      }
      ring = std::exchange(next, {});
    }
  }

  void list(Cell c) {
    if (!is_inside_[c] || is_listed_[c]) return;
    is_listed_[c] = 1;
    listed_.push_back(c);
  }

  bool spreads(Cell n) const {
    auto const below = grid_.below(n);
    if (field_[n] != water::source) return !is_enterable_[below];
    return !is_enterable_[below] || water::is_wet(field_[below]) ||
           sources(n) >= practice_[Rule::eager_makers];
  }
  bool is_offered(Cell c) const {
    for (std::size_t side = 0; side < 4; ++side) {
      auto const n = grid_.beside(c, model::sides[side]);
      if (strength(n) < 2 || !spreads(n)) continue;
      bool is_least = true;
      for (auto other : model::sides) {
        auto const rival = grid_.beside(n, other);
        is_least = is_least && (!is_passage(rival) || distance_[rival] >= distance_[c]);
      }
      if (is_least) return true;
    }
    return false;
  }
  State intrinsic(Cell c) const {
    auto const below = grid_.below(c);
    if (sources(c) >= practice_[Rule::source_makers] &&
        (arrangement_[below].bears_sources || field_[below] == water::source)) {
      return water::source;
    }
    if (water::is_wet(field_[grid_.above(c)])) return water::falling;
    int most = 0;
    for (auto side : model::sides) most = std::max(most, strength(grid_.beside(c, side)));
    return static_cast<State>(std::max(0, most - 1));
  }
  State next(Cell c) const {
    if (!is_enterable_[c]) return water::dry;
    if (arrangement_[c].is_source || field_[c] == water::source) return water::source;
    bool const is_reached =
        water::is_wet(field_[c]) || water::is_wet(field_[grid_.above(c)]) || is_offered(c);
    return is_reached ? intrinsic(c) : State{water::dry};
  }

  bool step() {
    std::vector<std::pair<Cell, State>> changes;
    for (auto c : std::exchange(listed_, {})) {
      is_listed_[c] = 0;
      if (auto const after = next(c); after != field_[c]) changes.emplace_back(c, after);
    }
    bool forms_source = false;
    for (auto [c, after] : changes) {
      field_[c] = after;
      forms_source = forms_source || (after == water::source && distance_[c] != far);
    }
    if (forms_source) find_distances();  // it may close ways: the plainest repair
    for (auto [c, after] : changes) {
      list_around(c, forms_source && after == water::source ? practice_[Rule::hole_search] + 2 : 1);
    }
    return !changes.empty();
  }

  void list_around(Cell c, int reach) {
    list(c);
    list(grid_.above(c));
    list(grid_.below(c));
    for (auto side : model::sides) list(grid_.beside(grid_.above(c), side));
    auto const at = grid_.place(c);
    for (int y = -reach; y <= reach; ++y) {
      for (int x = -reach; x <= reach; ++x) {
        model::Place const near{at.x + x, at.y + y, at.z};
        if ((reach > 1 || x == 0 || y == 0) && grid_.is_inside(near)) list(grid_.cell(near));
      }
    }
  }

  model::Arrangement const& arrangement_;
  model::Grid const& grid_;
  model::Practice const& practice_;
  water::Field field_;
  std::vector<std::uint8_t> is_inside_, is_enterable_, is_listed_, distance_;
  std::vector<Cell> listed_;
};

}  // namespace

water::Settled plain_search(model::Arrangement const& arrangement) {
  return Search(arrangement).settled();
}

}  // namespace leat::bench
