#pragma once
#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "engine/model/arrangement.hpp"
#include "engine/water/field.hpp"
#include "engine/water/patch.hpp"
#include "engine/water/widely.hpp"
#include "engine/water/zeroed.hpp"

namespace leat::water {

using PatchId = std::uint32_t;

// How a grid is cut into patches of 64 cells in each of four rows. The rim has no patches of its
// own: a row of patches ends with one cell outside the drawing at least, which lies before the next
// row too, and a level with one row outside, which lies before the next level too. Nothing is asked
// of cells outside but whether the outside is open, so they may be shared. A level and a row of
// patches more lie before the drawing, and after it.
struct PatchNumbers {
  int patches_a_row, rows_a_level;  // rows of patches
  PatchId south, level;             // how much further on the patches to the south and above lie
  explicit PatchNumbers(model::Grid const& grid)
      : patches_a_row(grid.width() / word_bits + 1),
        rows_a_level(grid.depth() / static_cast<int>(Block::height) + 1),
        south(static_cast<PatchId>(patches_a_row)),
        level(static_cast<PatchId>(patches_a_row * rows_a_level)) {}
  std::size_t all(model::Grid const& grid) const {
    return std::size_t{level} * static_cast<std::size_t>(grid.height() + 2) + 2 * south;
  }
};

// A patch and those it touches: each place's own neighbour at its own bit.
template <class Part>
class RowSides {
 public:
  RowSides(Part const& own, Part const& east, Part const& south, Part const& west,
           Part const& north)
      : own_(own), east_(east), south_(south), west_(west), north_(north) {}

  // get(part, side) is a block; of its places those to that side of each place.
  template <class Get>
  std::array<Block, 4> on_each_side(Get get) const {
    return {from_east(get(own_, 0), get(east_, 0)), from_south(get(own_, 1), get(south_, 1)),
            from_west(get(own_, 2), get(west_, 2)), from_north(get(own_, 3), get(north_, 3))};
  }
  Block on_any_side(std::size_t k) const {
    return any(on_each_side(
        [k](Part const& part, std::size_t) -> Block const& { return part.strong[k]; }));
  }

 private:
  static Block from_east(Block const& own, Block const& next) {
    return own >> 1 | next << (word_bits - 1);
  }
  static Block from_west(Block const& own, Block const& next) {
    return own << 1 | next >> (word_bits - 1);
  }
  static Block from_south(Block const& own, Block const& next) {
    return Block(__builtin_shufflevector(own.rows, next.rows, 1, 2, 3, 4));
  }
  static Block from_north(Block const& own, Block const& next) {
    return Block(__builtin_shufflevector(next.rows, own.rows, 3, 4, 5, 6));
  }
  Part const &own_, &east_, &south_, &west_, &north_;
};

// The cells of one arrangement, 64 of each of four rows in a patch (see Flow).
template <int Most>
class RowLayout {
 public:
  using Patch = water::Patch<Block, Most>;
  using Id = PatchId;

  explicit RowLayout(model::Arrangement const& arrangement);

  std::size_t size() const { return size_; }
  Patch& at(Id id) { return patches_[id]; }
  Patch const& at(Id id) const { return patches_[id]; }
  Patch& made(Id id) { return patches_[id]; }
  Marks& marks(Id id) { return marks_[id]; }
  Block const& enter(Id id) const { return entered_[id]; }
  Block passage(Id id) const { return is_open_ ? entered_[id] | outside_[id] : entered_[id]; }
  Block hole(Id id) const { return passage(below(id)); }
  Block const& placed(Id id) const { return placed_[id]; }
  Block const& bears(Id);
  Block& near(Id id, int d) { return near_[near_at(id, d)]; }

  // The patches of a step lie too far apart for a machine to fetch them unasked. A patch is asked
  // first by the one to its north.
  void fetch(Id id) const {
    fetch_lines(&patches_[above(id)], 64);
    fetch_lines(&patches_[id + numbers_.south], sizeof(Patch));
  }
  // Neighbours have numbers at most so far away, on their level; those above have higher ones.
  Id span() const { return numbers_.south; }
  Id above(Id id) const { return id + numbers_.level; }
  Id below(Id id) const { return id - numbers_.level; }
  RowSides<Patch> around(Id id) const {
    auto const south = numbers_.south;
    return {patches_[id], patches_[id + 1], patches_[id + south], patches_[id - 1],
            patches_[id - south]};
  }
  std::array<Block, 4> near_around(Id id, int d) const {
    auto const of = [&](Id n) -> Block const& { return near_[near_at(n, d)]; };
    auto const south = numbers_.south;
    RowSides<Block> const sides(of(id), of(id + 1), of(id + south), of(id - 1), of(id - south));
    return sides.on_each_side(
        [](Block const& block, std::size_t) -> Block const& { return block; });
  }
  template <class Visit>
  void for_each_beside(Id id, Visit visit) const {
    for (auto n : {id, id + 1, id + numbers_.south, id - 1, id - numbers_.south}) visit(n);
  }
  template <class Visit>
  void outward(Id id, std::array<Block, 4> const& places, Visit visit) const;
  template <class Visit>
  void for_each_near(Id id, int reach, Visit visit) const;

  // Where a cell lies.
  struct Spot {
    Id id;
    std::size_t row;
    int bit;
  };
  Spot spot(Cell) const;
  // Each row of a patch that lies inside the drawing: visit(row, first cell, how many cells).
  template <class Visit>
  void for_each_row(Id, Visit visit) const;
  std::vector<Id> const& with_placed() const { return with_placed_; }

 private:
  static void fetch_lines(void const* begin, std::size_t bytes) {
    auto const* const line = static_cast<char const*>(begin);
    for (std::size_t at = 0; at < bytes; at += 64) __builtin_prefetch(line + at);
  }
  std::size_t near_at(Id id, int d) const { return id * distances_ + static_cast<std::size_t>(d); }
  void read_drawing();
  void read_row(Id, std::size_t row, model::FillId const* fills, int count);
  model::Place place(Id) const;

  model::Arrangement const* arrangement_;
  PatchNumbers numbers_;
  std::size_t size_, distances_;
  bool is_open_;
  Zeroed<Block> entered_;  // inside the drawing, and water may enter
  Zeroed<Block> outside_;  // where the outside is open
  Zeroed<Patch> patches_;
  Zeroed<Marks> marks_;
  Zeroed<Block> near_;  // D is at most 0, 1, ..., patch by patch
  Zeroed<Block> placed_, bears_;
  std::vector<Id> with_placed_;
};

template <int Most>
RowLayout<Most>::RowLayout(model::Arrangement const& arrangement)
    : arrangement_(&arrangement),
      numbers_(arrangement.grid()),
      size_(numbers_.all(arrangement.grid())),
      distances_(static_cast<std::size_t>(arrangement.practice()[model::Rule::hole_search]) + 1),
      is_open_(arrangement.outside_is_open()),
      entered_(size_),
      outside_(is_open_ ? size_ : 0),
      patches_(size_),
      marks_(size_),
      near_(size_ * distances_),
      placed_(size_),
      bears_(size_) {
  for (std::size_t id = 0; is_open_ && id < size_; ++id) outside_[id] = ~Block{};
  widely([&] { read_drawing(); });
}

template <int Most>
template <class Visit>
void RowLayout<Most>::outward(Id id, std::array<Block, 4> const& places, Visit visit) const {
  auto const& [east, south, west, north] = places;
  Block const none;
  auto const own = east << 1 | west >> 1 |
                   Block(__builtin_shufflevector(none.rows, south.rows, 0, 4, 5, 6)) |
                   Block(__builtin_shufflevector(north.rows, none.rows, 1, 2, 3, 4));
  if (own) visit(id, own);
  if (auto const next = east >> (word_bits - 1)) visit(id + 1, next);
  if (auto const last = west << (word_bits - 1)) visit(id - 1, last);
  if (south.rows[3]) visit(id + numbers_.south, Block(south.rows[3], 0, 0, 0));
  if (north.rows[0]) visit(id - numbers_.south, Block(0, 0, 0, north.rows[0]));
}

// The place of the first cell of a patch.
template <int Most>
model::Place RowLayout<Most>::place(Id id) const {
  auto const row = id / numbers_.south - 1;
  auto const rows = static_cast<Id>(numbers_.rows_a_level);
  return {static_cast<int>(id % numbers_.south) * word_bits,
          static_cast<int>(row % rows * Block::height), static_cast<int>(row / rows) - 1};
}

template <int Most>
template <class Visit>
void RowLayout<Most>::for_each_near(Id id, int reach, Visit visit) const {
  auto const& grid = arrangement_->grid();
  auto const at = place(id);
  if (at.z < 0 || at.z >= grid.height()) return;
  constexpr auto height = static_cast<int>(Block::height);
  auto const row = at.y / height, column = at.x / word_bits;
  auto const rows = (reach + height - 1) / height;
  auto const last_row = std::min(numbers_.rows_a_level - 1, row + rows);
  auto const last = std::min(numbers_.patches_a_row - 1, column + 1);
  for (int y = std::max(0, row - rows); y <= last_row; ++y) {
    auto const own = static_cast<int>(id) + (y - row) * numbers_.patches_a_row - column;
    for (int x = std::max(0, column - 1); x <= last; ++x) visit(static_cast<Id>(own + x));
  }
}

template <int Most>
typename RowLayout<Most>::Spot RowLayout<Most>::spot(Cell c) const {
  auto const at = arrangement_->grid().place(c);
  // From 64 cells and four rows further on, so that the rim before the drawing counts from 0 too.
  auto const x = static_cast<Id>(at.x + word_bits);
  auto const y = static_cast<Id>(at.y) + static_cast<Id>(Block::height);
  auto const row = static_cast<Id>((at.z + 1) * numbers_.rows_a_level) + y / Block::height;
  return {static_cast<Id>(row * numbers_.south + x / word_bits - 1), y % Block::height,
          static_cast<int>(x % word_bits)};
}

template <int Most>
template <class Visit>
void RowLayout<Most>::for_each_row(Id id, Visit visit) const {
  auto const& grid = arrangement_->grid();
  auto const at = place(id);
  if (at.z < 0 || at.z >= grid.height()) return;
  auto const count = std::min(word_bits, grid.width() - at.x);
  auto const rows = std::min(static_cast<int>(Block::height), grid.depth() - at.y);
  if (count <= 0 || rows <= 0) return;
  auto first = grid.cell(at);
  for (int row = 0; row < rows; ++row, first = grid.beside(first, model::Side::south)) {
    visit(static_cast<std::size_t>(row), first, count);
  }
}

// The whole drawing in the order of memory, as one bit a cell: patches are looked at in another
// order, and the fills of large drawings are far away; they are fetched some rows of a patch ahead.
// Most of these rows are all of one fill.
template <int Most>
void RowLayout<Most>::read_drawing() {
  auto const& grid = arrangement_->grid();
  auto const* const fills = arrangement_->design().fill_of.data();
  auto const last = static_cast<Cell>(grid.size() - word_bits);
  constexpr Cell ahead = 16 * word_bits;
  for (int z = 0; z < grid.height(); ++z) {
    for (int y = 0; y < grid.depth(); ++y) {
      auto const first = grid.cell({0, y, z});
      auto const [id, row, bit] = spot(first);
      for (int x = 0; x < grid.width(); x += word_bits) {
        auto const count = std::min(word_bits, grid.width() - x);
        auto const here = id + static_cast<Id>(x / word_bits);
        auto const cell = first + static_cast<Cell>(x);
        fetch_lines(fills + std::min(cell + ahead, last), word_bits * sizeof *fills);
        read_row(here, row, fills + cell, count);
        if (is_open_) outside_[here].rows[row] = ~low_bits(count);
      }
    }
  }
}

inline bool are_equal(model::FillId const* fills, int count) {
  model::FillId differs = 0;
  for (int i = 1; i < count; ++i) differs |= fills[i] ^ fills[0];
  return differs == 0;
}

template <int Most>
void RowLayout<Most>::read_row(Id id, std::size_t row, model::FillId const* fills, int count) {
  auto const read = [&](model::FillId fill, Word cells) {
    auto const& made_of = arrangement_->made_of(fill);
    if (!made_of.water_enters) return;
    entered_[id].rows[row] |= cells;
    if (!made_of.is_source) return;
    placed_[id].rows[row] |= cells;
    if (!std::exchange(marks_[id].has_placed, true)) with_placed_.push_back(id);
  };
  if (are_equal(fills, count)) return read(*fills, low_bits(count));
  for (int i = 0; i < count; ++i) read(fills[i], Word{1} << i);
}

template <int Most>
Block const& RowLayout<Most>::bears(Id id) {
  auto& found = bears_[id];
  if (std::exchange(marks_[id].knows_bears, true)) return found;
  for_each_row(id, [&](std::size_t row, Cell first, int count) {
    auto const below = arrangement_->grid().below(first);
    for (int i = 0; i < count; ++i) {
      auto const& under = (*arrangement_)[below + static_cast<Cell>(i)];
      if (under.bears_sources) found.rows[row] |= Word{1} << i;
    }
  });
  return found;
}

}  // namespace leat::water
