#pragma once
#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>
#include <span>
#include <vector>

#include "engine/model/arrangement.hpp"
#include "engine/water/patch.hpp"

namespace leat::water {

// The patches of the four cells beside one, in the order of sides.
template <class Patch>
class LaneSides {
 public:
  LaneSides(Patch const& east, Patch const& south, Patch const& west, Patch const& north)
      : patches_{&east, &south, &west, &north} {}

  // get(patch, side) for each side.
  template <class Get>
  std::array<Word, 4> on_each_side(Get get) const {
    return {get(*patches_[0], 0), get(*patches_[1], 1), get(*patches_[2], 2), get(*patches_[3], 3)};
  }
  Word on_any_side(std::size_t k) const {
    return any(on_each_side([k](Patch const& patch, std::size_t) { return patch.strong[k]; }));
  }

 private:
  std::array<Patch const*, 4> patches_;
};

// What a fill is made of in every lane.
struct FillWords {
  Word enter = 0, placed = 0, bears = 0;
};

// One cell in up to 64 arrangements of a design in a patch (see Flow). Only cells that are looked
// at have a patch; those that nothing may enter in any lane share one.
template <int Most>
class LaneLayout {
 public:
  using Patch = water::Patch<Word, Most>;
  using Id = model::Cell;

  explicit LaneLayout(std::vector<model::Arrangement const*> const& arrangements);

  std::size_t size() const { return plots_.size(); }
  Patch& at(Id c) { return plots_[c]->patch; }
  Patch const& at(Id c) const { return plots_[c]->patch; }
  Marks& marks(Id c) { return plots_[c]->marks; }
  Patch& made(Id c) {
    if (!plots_[c]->is_made) plots_[c] = dig(c);
    return plots_[c]->patch;
  }
  Word enter(Id c) const { return plots_[c]->enter; }
  Word hole(Id c) const { return plots_[c]->hole; }
  Word passage(Id c) const { return plots_[c]->passage; }
  Word placed(Id c) const { return plots_[c]->placed; }
  Word bears(Id c) const { return plots_[c]->bears; }
  Word& near(Id c, int d) { return plots_[c]->near[static_cast<std::size_t>(d)]; }
  void fetch(Id) const {}

  Id span() const { return grid().beside(0, model::Side::south); }
  Id above(Id c) const { return grid().above(c); }
  Id below(Id c) const { return grid().below(c); }
  LaneSides<Patch> around(Id c) const {
    return {beside(c, 0)->patch, beside(c, 1)->patch, beside(c, 2)->patch, beside(c, 3)->patch};
  }
  std::array<Word, 4> near_around(Id c, int distance) const {
    auto const d = static_cast<std::size_t>(distance);
    return {beside(c, 0)->near[d], beside(c, 1)->near[d], beside(c, 2)->near[d],
            beside(c, 3)->near[d]};
  }
  template <class Visit>
  void for_each_beside(Id c, Visit visit) const {
    for (auto side : model::sides) visit(grid().beside(c, side));
  }
  template <class Visit>
  void outward(Id c, std::array<Word, 4> const& places, Visit visit) const {
    for (std::size_t side = 0; side < 4; ++side) {
      if (places[side]) visit(grid().beside(c, model::sides[side]), places[side]);
    }
  }
  template <class Visit>
  void for_each_near(Id c, int reach, Visit visit) const;

  std::vector<Id> const& all_made() const { return made_; }
  std::vector<FillWords> const& words() const { return words_; }
  FillWords const& words_of(Id c) const { return words_[design_->fill_of[c]]; }
  model::Grid const& grid() const { return design_->grid; }

 private:
  struct Plot {
    Patch patch;
    Word enter, hole, passage;  // hole: water may enter below; all of an open outside
    Word placed, bears;
    Marks marks;
    bool is_made;
    std::array<Word, most_hole_search + 1> near;  // near[d]: where D is at most d
  };
  static constexpr std::size_t chunk = 64;

  Plot const* beside(Id c, std::size_t side) const {
    return plots_[grid().beside(c, model::sides[side])];
  }
  Plot* dig(Id c);
  Plot* new_plot();

  model::Design const* design_;
  Word lanes_;
  std::vector<FillWords> words_;  // by fill
  std::vector<std::unique_ptr<Plot[]>> chunks_;
  std::size_t used_ = chunk;  // of the last chunk
  std::vector<Plot*> plots_;  // by cell; never none
  Plot* solid_;
  std::vector<Id> made_;  // the cells with a patch of their own
};

template <int Most>
LaneLayout<Most>::LaneLayout(std::vector<model::Arrangement const*> const& arrangements)
    : design_(&arrangements.front()->design()),
      lanes_(low_bits(static_cast<int>(arrangements.size()))),
      words_(design_->fills.size()),
      plots_(design_->grid.size(), new_plot()),
      solid_(new_plot()) {
  solid_->is_made = true;
  for (std::size_t f = 0; f < words_.size(); ++f) {
    bool const is_switched = design_->fills[f].is_switched();
    for (std::size_t lane = 0; lane < (is_switched ? arrangements.size() : 1); ++lane) {
      auto const& made_of = arrangements[lane]->made_of(static_cast<model::FillId>(f));
      auto const lanes = is_switched ? Word{1} << lane : lanes_;
      if (made_of.water_enters) words_[f].enter |= lanes;
      if (made_of.is_source) words_[f].placed |= lanes;
      if (made_of.bears_sources) words_[f].bears |= lanes;
    }
    words_[f].placed &= words_[f].enter;
  }
}

template <int Most>
typename LaneLayout<Most>::Plot* LaneLayout<Most>::new_plot() {
  if (used_ == chunk) {
    chunks_.push_back(std::make_unique<Plot[]>(chunk));
    used_ = 0;
  }
  return &chunks_.back()[used_++];
}

template <int Most>
typename LaneLayout<Most>::Plot* LaneLayout<Most>::dig(Id c) {
  bool const is_inside = grid().is_inside(c);
  auto const outside = design_->outside_is_open ? lanes_ : 0;
  auto const& own = words_of(c);
  auto const passage = is_inside ? own.enter : own.enter & outside;
  if (!passage) return solid_;
  auto* const plot = new_plot();
  plot->passage = passage;
  plot->is_made = true;
  made_.push_back(c);
  if (!is_inside) {
    plot->hole = outside;
    return plot;
  }
  auto const& under = words_of(below(c));
  plot->enter = own.enter;
  plot->hole = under.enter;
  plot->placed = own.placed;
  plot->bears = under.bears;
  plot->marks.has_placed = own.placed != 0;
  return plot;
}

template <int Most>
template <class Visit>
void LaneLayout<Most>::for_each_near(Id c, int reach, Visit visit) const {
  auto const at = grid().place(c);
  if (at.z < 0 || at.z >= grid().height()) return;
  for (int y = std::max(0, at.y - reach); y <= std::min(grid().depth() - 1, at.y + reach); ++y) {
    auto const width = reach - std::abs(y - at.y);
    auto const last = std::min(grid().width() - 1, at.x + width);
    for (int x = std::max(0, at.x - width); x <= last; ++x) visit(grid().cell({x, y, at.z}));
  }
}

}  // namespace leat::water
