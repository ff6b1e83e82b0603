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

// Two islands are alike exactly if they have one form, word by word.
struct Form {
  model::Design design;   // without what its cells are made of, and without what all islands share
  std::vector<Run> runs;  // what its cells are made of
  Copy copy;
  std::vector<std::uint32_t> key() const;
};

// The forms of a plant's islands. Cost of one: linear in its box and in the cone of its controls.
class Forms {
 public:
  // `is_joining`: by fill, whether its cells are of islands; `island_of`: by cell. Plant and
  // islands must outlive it.
  Forms(model::Design const& plant, std::vector<std::uint8_t> const& is_joining,
        std::vector<std::uint32_t> const& island_of);
  Form of(std::uint32_t island, Box const&, Posture);

 private:
  class Reader;
  // What a cell is beside its fill; in this order where a cell is several.
  enum class Role : std::uint8_t { inlet, outlet, plate, acceptance };
  struct Mark {
    model::Cell cell = model::no_cell;
    Role role = Role::inlet;
    std::uint32_t id = 0;  // among the plant's own
  };
  void mark(std::vector<model::Cell> const&, Role, std::uint32_t id);
  // What an island's controls follow from, with wires for levers that stand for all below them.
  logic::Cone cone_of(std::vector<model::ExpressionId> const& roots);

  model::Design const* plant_;
  std::vector<std::uint32_t> const* island_of_;
  logic::Cones cones_;
  // Fills of the plant that are filled alike, materials and control, are of one kind.
  std::vector<std::uint32_t> kind_of_;  // by fill; one past the last is solid
  std::vector<std::vector<model::FillId>> of_kind_;
  model::FillId solid_;  // never changes and lets nothing in
  // By fill: another that never changes and lets nothing in. An island has it where they touch.
  std::vector<bool> is_other_solid_;
  bool has_other_solids_ = false;
  std::vector<std::uint32_t> number_;             // by fill, while a form is read; none outside it
  std::vector<std::vector<Mark>> marks_;          // by island
  std::vector<std::uint32_t> accepted_anywhere_;  // acceptances that name no cell
};

// The part of the plant that has this form; of no copies yet.
Part part_of(Form, model::Design const& plant);

// By fill, whether its cells are of islands: water or bodies can be in them, or a slope is seen
// through them, or they change.
std::vector<std::uint8_t> joining_fills(model::Design const& plant);

}  // namespace leat::works
