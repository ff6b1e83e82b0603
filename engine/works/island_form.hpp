#pragma once
#include <limits>
#include <utility>
#include <vector>

#include "engine/logic/cone.hpp"
#include "engine/works/islands.hpp"

// What an island looks like in each of its eight postures.
namespace leat::works {

inline constexpr std::uint32_t no_island = std::numeric_limits<std::uint32_t>::max();

// The least and the greatest place of an island, on each axis.
struct Box {
  model::Place least, most;
  void include(model::Place);
};

// A symmetry of the square: mirrored or not (west and east change places), then turned by so many
// quarters to the left.
struct Posture {
  bool is_mirrored = false;
  int quarters = 0;
  bool operator==(Posture const&) const = default;
};

// Two islands are alike exactly if they have one form, word by word.
struct Form {
  model::Design design;  // without its drawing, which `fills_drawn` holds
  int width = 1, depth = 1, height = 1;
  std::vector<model::FillId> fills_drawn;  // by cell: west to east, north to south, upward
  Copy copy;
  std::vector<std::uint32_t> key() const;
};

// The forms of a plant's islands. Cost of one: linear in its box and in the cone of its controls.
class Forms {
 public:
  // `island_of`: by cell. Both must outlive it.
  Forms(model::Design const& plant, std::vector<std::uint32_t> const& island_of);
  Form of(std::uint32_t island, Box const&, Posture);

 private:
  class Reader;
  using Marked = std::vector<std::pair<model::Cell, std::uint32_t>>;  // ascending
  static Marked marked(std::vector<model::Port> const&);
  void note_marked_cells();

  model::Design const* plant_;
  std::vector<std::uint32_t> const* island_of_;
  logic::Cones cones_;
  // Of each fill of the plant the first one that is filled alike: materials and control.
  std::vector<model::FillId> alike_;
  std::size_t solid_;  // one that never changes and lets nothing in, or one past the last
  std::vector<std::uint32_t> number_;  // by such a fill, while a form is read; none outside it
  Marked inlets_, outlets_, plates_, acceptances_;
  std::vector<bool> is_marked_;  // by cell: whether one of these has it
};

// The design of a part, drawn.
model::Design drawn(Form);

}  // namespace leat::works
