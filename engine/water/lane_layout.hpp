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

// The words of the four cells beside one, in the order of sides.
template <class Part>
class LaneSides {
 public:
  explicit LaneSides(std::array<Part const*, 4> parts) : parts_(parts) {}

  template <class Get>
  std::array<Word, 4> on_sides(Get get) const {
    return {get(*parts_[0]), get(*parts_[1]), get(*parts_[2]), get(*parts_[3])};
  }
  template <class Get>
  Word on_side(std::size_t side, Get get) const {
    return get(*parts_[side]);
  }
  Word on_any_side(std::size_t k) const {
    return parts_[0]->strong[k] | parts_[1]->strong[k] | parts_[2]->strong[k] |
           parts_[3]->strong[k];
  }

 private:
  std::array<Part const*, 4> parts_;
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
  using Bed = water::Bed<Word>;
  using Id = model::Cell;

  explicit LaneLayout(std::vector<model::Arrangement const*> const& arrangements);

  std::size_t size() const { return plots_.size(); }
  Patch& at(Id c) { return plots_[c]->patch; }
  Patch const& at(Id c) const { return plots_[c]->patch; }
  Bed& bed(Id c) { return plots_[c]->bed; }
  Bed const& bed(Id c) const { return plots_[c]->bed; }
  Marks& marks(Id c) { return plots_[c]->marks; }
  Word bears(Id c) const { return plots_[c]->bed.bears; }
  Patch& made(Id c) {
    if (!plots_[c]->marks.is_made) plots_[c] = dig(c);
    return plots_[c]->patch;
  }

  Id span() const { return grid().beside(0, model::Side::south); }
  Id above(Id c) const { return grid().above(c); }
  Id below(Id c) const { return grid().below(c); }
  LaneSides<Patch> around(Id c) const { return sides<Patch>(c, &Plot::patch); }
  LaneSides<Bed> beds_around(Id c) const { return sides<Bed>(c, &Plot::bed); }
  template <class Visit>
  void for_each_beside(Id c, Visit visit) const {
    for (auto side : model::sides) visit(grid().beside(c, side));
  }
  template <class Visit>
  void for_each_on_side(Id c, std::size_t side, Visit visit) const {
    visit(grid().beside(c, model::sides[side]));
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
    Bed bed;
    Marks marks;
  };
  static constexpr std::size_t chunk = 64;

  template <class Part>
  LaneSides<Part> sides(Id c, Part Plot::*part) const {
    auto const of = [&](model::Side side) { return &(plots_[grid().beside(c, side)]->*part); };
    return LaneSides<Part>({of(model::Side::east), of(model::Side::south), of(model::Side::west),
                            of(model::Side::north)});
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
  solid_->marks.is_made = true;
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
  auto& [patch, bed, marks] = *plot;
  bed.passage = passage;
  marks.is_made = true;
  made_.push_back(c);
  if (!is_inside) {
    patch.hole = outside;
    return plot;
  }
  auto const& under = words_of(below(c));
  patch.enter = own.enter;
  patch.hole = under.enter;
  bed.placed = own.placed;
  bed.bears = under.bears;
  marks.has_placed = own.placed != 0;
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
