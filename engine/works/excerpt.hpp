#pragma once
#include <optional>
#include <vector>

#include "engine/works/frame.hpp"
#include "engine/works/likeness.hpp"
#include "engine/works/regions.hpp"

namespace leat::works {

// What a region is judged in: the cells that are looked at in its waters, with all that their water
// follows from. What else there is of the design is solid there.
struct Excerpt {
  std::vector<model::Cell> water;     // of the design, ascending: it is there as in the whole
  std::vector<model::Cell> material;  // what these are made of is, too
};

// Excerpts of a design, one after the other.
//
// Idea: from the cells that moves, families of findings and claims of water look at, cells are led
// on to the grounds of their water (water/influence.hpp), which end at sources, at walls, and where
// a current does. So what a region costs hangs on its own size, and regions that are drawn alike
// have one form. Cost of one: the grounds of its cells.
class Excerpts {
 public:
  // Both must outlive it.
  Excerpts(model::Design const&, Supports const&);
  Excerpt of(Region const&);

 private:
  void add_material(model::Cell);
  void add_water(model::Cell);
  void add_body(model::Cell feet, model::Profile const&);
  void add_surroundings(model::Cell);
  void add_drop(model::Cell);
  void add_cushion(model::Cell);
  void add_pit(model::Cell);
  void add_stack(model::Cell);
  void add_pool(model::Cell);
  void add_grounds();
  Excerpt taken();

  model::Design const& design_;
  Supports const& supports_;
  water::Bounds const& bounds_;
  std::vector<std::uint8_t> is_joining_;  // by fill
  // By cell, of the excerpt that is being found; `is_pool_`: led on from as a source, too.
  std::vector<bool> is_water_, is_material_, is_pool_;
  std::vector<model::Cell> open_;
  Excerpt found_;
};

// Cuts a held design down to an excerpt of it.
class Cuttings {
 public:
  explicit Cuttings(model::Design const&);
  // The form in the posture of the first one like it.
  Likeness::Known cut(model::Design const& held, Excerpt const&);

 private:
  std::vector<std::uint8_t> is_joining_;  // by fill
  std::vector<std::uint32_t> island_of_;  // by cell: what is looked at is one island, else another
  Likeness likeness_;
};

// How many kinds there are of some regions of a design: those of one kind are drawn alike, up to
// the 8 symmetries of the square. Contract: as built is known.
std::size_t kinds_of(std::vector<Region> const&, model::Design const&, Supports const&, AsBuilt&);

// Whether the excerpt's water changes by itself in its own drawing, too: by the drawing's own
// bounds it reads nothing else, and is as surely there as in the whole. Contract: the frame is that
// of the drawing.
bool changes_by_itself(Excerpt const&, water::Bounds const& whole, water::Bounds const& own,
                       Frame const&);

}  // namespace leat::works
