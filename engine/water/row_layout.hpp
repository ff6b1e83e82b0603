#pragma once
#include <algorithm>
#include <array>
#include <bit>
#include <cstring>
#include <vector>

#include "engine/model/arrangement.hpp"
#include "engine/water/field.hpp"
#include "engine/water/patch.hpp"
#include "engine/water/zeroed.hpp"

namespace leat::water {

using PatchId = std::uint32_t;

// How the rows of a grid are cut into patches of 64 cells: each row begins a patch with the cell
// before it, so that every row has a dry cell before it and one after it. Rows, levels and patches
// of the rim are numbered too, one on each side.
struct RowNumbers {
  int patches_a_row, rows_a_level;
  PatchId north, level;  // how much further on the patches to the south and above lie
  explicit RowNumbers(model::Grid const& grid)
      : patches_a_row((grid.width() + 2 + word_bits - 1) / word_bits),
        rows_a_level(grid.depth() + 2),
        north(static_cast<PatchId>(patches_a_row)),
        level(static_cast<PatchId>(patches_a_row * rows_a_level)) {}
  std::size_t all(model::Grid const& grid) const {
    return std::size_t{level} * static_cast<std::size_t>(grid.height() + 2);
  }
};

// The words beside the places of a patch: each place's own neighbour at its own bit.
template <class Part>
class RowSides {
 public:
  // In this order: a part of the patch itself, and of those it touches.
  RowSides(Part const& own, Part const& east, Part const& south, Part const& west,
           Part const& north)
      : own_(own), east_(east), south_(south), west_(west), north_(north) {}

  template <class Get>
  std::array<Word, 4> on_sides(Get get) const {
    auto const own = get(own_);
    return {from_east(own, get(east_)), get(south_), from_west(own, get(west_)), get(north_)};
  }
  template <class Get>
  Word on_side(std::size_t side, Get get) const {
    return on_sides(get)[side];
  }
  Word on_any_side(std::size_t k) const {
    auto const own = own_.strong[k];
    return from_east(own, east_.strong[k]) | south_.strong[k] | from_west(own, west_.strong[k]) |
           north_.strong[k];
  }

 private:
  static Word from_east(Word own, Word next) { return own >> 1 | next << (word_bits - 1); }
  static Word from_west(Word own, Word next) { return own << 1 | next >> (word_bits - 1); }
  Part const &own_, &east_, &south_, &west_, &north_;
};

// The cells of one arrangement, 64 of a row in a patch (see Flow).
template <int Most>
class RowLayout {
 public:
  using Patch = water::Patch<Most>;
  using Id = PatchId;

  explicit RowLayout(model::Arrangement const& arrangement)
      : arrangement_(&arrangement),
        numbers_(arrangement.grid()),
        patches_(numbers_.all(arrangement.grid())),
        beds_(numbers_.all(arrangement.grid())),
        marks_(numbers_.all(arrangement.grid())) {}

  std::size_t size() const { return numbers_.all(arrangement_->grid()); }
  Patch& at(Id id) { return patches_[id]; }
  Patch const& at(Id id) const { return patches_[id]; }
  Bed& bed(Id id) { return beds_[id]; }
  Bed const& bed(Id id) const { return beds_[id]; }
  Marks& marks(Id id) { return marks_[id]; }
  Patch& made(Id id) {
    if (!marks_[id].is_made) {
      make(patches_[id], beds_[id], marks_[id], ground(id));
      made_.push_back(id);
    }
    return patches_[id];
  }

  Id above(Id id) const { return id + numbers_.level; }
  Id below(Id id) const { return id - numbers_.level; }
  RowSides<Patch> around(Id id) const { return sides<Patch>(patches_, id); }
  RowSides<Bed> beds_around(Id id) const { return sides<Bed>(beds_, id); }
  template <class Visit>
  void for_each_beside(Id id, Visit visit) const {
    for (auto n : {id, id + 1, id + numbers_.north, id - 1, id - numbers_.north}) visit(n);
  }
  template <class Visit>
  void for_each_on_side(Id id, std::size_t side, Visit visit) const {
    if (model::sides[side] == model::Side::south) return visit(id + numbers_.north);
    if (model::sides[side] == model::Side::north) return visit(id - numbers_.north);
    visit(id);
    visit(model::sides[side] == model::Side::east ? id + 1 : id - 1);
  }
  template <class Visit>
  void outward(Id id, std::array<Word, 4> const& places, Visit visit) const;
  template <class Visit>
  void for_each_near(Id id, int reach, Visit visit) const;

  // Where a cell lies, and the first cell of a patch.
  std::pair<Id, Word> spot(Cell) const;
  Cell first_cell(Id) const;
  int cells_in(Id) const;
  std::vector<Id> const& all_made() const { return made_; }
  model::Arrangement const& arrangement() const { return *arrangement_; }

 private:
  template <class Part>
  RowSides<Part> sides(Zeroed<Part> const& parts, Id id) const {
    return {parts[id], parts[id + 1], parts[id + numbers_.north], parts[id - 1],
            parts[id - numbers_.north]};
  }
  Ground ground(Id) const;
  model::Place place(Id) const;

  model::Arrangement const* arrangement_;
  RowNumbers numbers_;
  Zeroed<Patch> patches_;
  Zeroed<Bed> beds_;
  Zeroed<Marks> marks_;
  std::vector<Id> made_;
};

template <int Most>
template <class Visit>
void RowLayout<Most>::outward(Id id, std::array<Word, 4> const& places, Visit visit) const {
  auto const& [east, south, west, north] = places;
  if (auto const own = east << 1 | west >> 1) visit(id, own);
  if (south) visit(id + numbers_.north, south);
  if (north) visit(id - numbers_.north, north);
  if (auto const next = east >> (word_bits - 1)) visit(id + 1, next);
  if (auto const last = west << (word_bits - 1)) visit(id - 1, last);
}

// The place of the first cell of a patch.
template <int Most>
model::Place RowLayout<Most>::place(Id id) const {
  auto const row = id / numbers_.north;
  auto const rows = static_cast<Id>(numbers_.rows_a_level);
  return {static_cast<int>(id % numbers_.north) * word_bits - 1, static_cast<int>(row % rows) - 1,
          static_cast<int>(row / rows) - 1};
}

template <int Most>
template <class Visit>
void RowLayout<Most>::for_each_near(Id id, int reach, Visit visit) const {
  auto const& grid = arrangement_->grid();
  auto const at = place(id);
  if (at.z < 0 || at.z >= grid.height()) return;
  auto const column = at.x / word_bits;
  auto const first = std::max(0, column - 1);
  auto const last = std::min(numbers_.patches_a_row - 1, column + 1);
  for (int y = std::max(0, at.y - reach); y <= std::min(grid.depth() - 1, at.y + reach); ++y) {
    auto const own = static_cast<Id>(static_cast<int>(id) + (y - at.y) * numbers_.patches_a_row);
    for (int x = first; x <= last; ++x) {
      visit(static_cast<Id>(static_cast<int>(own) + x - column));
    }
  }
}

template <int Most>
Cell RowLayout<Most>::first_cell(Id id) const {
  auto const at = place(id);
  return arrangement_->grid().cell({-1, at.y, at.z}) + static_cast<Cell>(at.x + 1);
}

template <int Most>
int RowLayout<Most>::cells_in(Id id) const {
  return std::min(word_bits, arrangement_->grid().width() + 1 - place(id).x);
}

template <int Most>
std::pair<PatchId, Word> RowLayout<Most>::spot(Cell c) const {
  auto const at = arrangement_->grid().place(c);
  auto const row = static_cast<Id>((at.z + 1) * numbers_.rows_a_level + at.y + 1);
  auto const x = static_cast<Id>(at.x + 1);
  return {row * numbers_.north + x / word_bits, Word{1} << x % word_bits};
}

// Runs of equal fills are read eight bytes at a time.
template <class Visit>
void for_each_run(model::FillId const* fills, int count, Visit visit) {
  constexpr int together = sizeof(std::uint64_t) / sizeof(model::FillId);
  for (int i = 0; i < count;) {
    std::array<model::FillId, together> alike;
    alike.fill(fills[i]);
    auto const wanted = std::bit_cast<std::uint64_t>(alike);
    int end = i + 1;
    for (std::uint64_t next; end + together <= count; end += together) {
      std::memcpy(&next, fills + end, sizeof next);
      if (next != wanted) break;
    }
    while (end < count && fills[end] == fills[i]) ++end;
    visit(fills[i], low_bits(end - i) << i);
    i = end;
  }
}

template <int Most>
Ground RowLayout<Most>::ground(Id id) const {
  auto const& grid = arrangement_->grid();
  auto const at = place(id);
  auto const first = first_cell(id);
  auto const count = cells_in(id);
  auto const& fills = arrangement_->design().fill_of;
  bool const is_row_inside = grid.is_inside(model::Place{0, at.y, at.z});
  // Cells of the drawing are those from x = 0 on.
  auto const end = std::min(count, grid.width() - at.x);
  auto const inside = is_row_inside ? low_bits(end) & ~low_bits(at.x < 0 ? 1 : 0) : 0;
  Ground found;
  for_each_run(&fills[first], count, [&](model::FillId fill, Word cells) {
    auto const& made_of = arrangement_->made_of(fill);
    if (made_of.water_enters) found.passage |= cells;
    if (made_of.water_enters && made_of.is_source) found.placed |= cells & inside;
  });
  if (!arrangement_->outside_is_open()) found.passage &= inside;
  found.enter = found.passage & inside;
  found.hole = arrangement_->outside_is_open() ? ~inside : 0;
  if (!is_row_inside) return found;
  for_each_run(&fills[grid.below(first)], count, [&](model::FillId fill, Word cells) {
    auto const& made_of = arrangement_->made_of(fill);
    if (made_of.water_enters) found.hole |= cells & inside;
    if (made_of.bears_sources) found.bears |= cells & inside;
  });
  return found;
}

}  // namespace leat::water
