#pragma once
#include "engine/body/moves.hpp"
#include "tests/support/draw.hpp"

// One moment of water and a body in it, drawn by hand, so that a single rule is asked about a
// single cell without anything having settled before.
namespace leat::drawn {

// The glyphs of `draw`, and for open cells that hold water: S a source, F falling, 1 to 7 a flow.
class Poured {
 public:
  explicit Poured(std::vector<Level> const& levels, model::Profile profile = {});
  Poured(Poured const&) = delete;

  model::Design design;
  model::Arrangement arrangement;
  water::Field field;

  water::Moment now() const { return {arrangement, field}; }
  body::Surroundings here() const { return {arrangement, field, design.profiles[0]}; }
  model::Cell at(model::Place place) const { return design.grid.cell(place); }
  void practise(model::Rule rule, int value) { design.practice.set(rule, value); }

  // The moves from a place, each as text: rule, place, side and cells fallen, and `unsure` if so:
  // "push 3 0 1 east 0".
  std::vector<std::string> moves(model::Place, model::Side = model::Side::none,
                                 int fallen = 0) const;
};

std::string side_name(model::Side);
std::string rule_name(body::MoveRule);

// The rim of the drawing becomes open: what leaves is a spill.
void open_the_outside(model::Design&);

}  // namespace leat::drawn
