#pragma once
#include <vector>

#include "engine/model/arrangement.hpp"

// When water can be let in while a design is being built.
namespace leat::building {

using model::Cell;

// Sources whose waters touch, so that they are let in together.
struct Pool {
  std::vector<Cell> sources;  // placed ones, ascending: the order in which they are placed
  std::vector<Cell> wet;      // cells that hold its water then, or while the sources are placed
  std::vector<Cell>
      holders;             // beside or below these: cells that water may not enter, in the drawing
  std::size_t around = 0;  // and those outside it
  int highest = 0;         // the highest level that has to be built before
};

struct Pools {
  std::vector<Pool> pools;    // by highest, then by first source
  bool is_each_tried = true;  // false: some water on the way to the last one may be missing
};

// The pools of a design in one setting.
//
// Idea: the settled water of all sources falls into pieces that touch over faces; the cells beside
// and below a piece that water may not enter hold it. Water does not rise, so what is above need
// not be there. Where the sources of a piece are placed one after the other, water may on the way
// run where it later does not (a source that is still missing can be a way to a hole), so the
// water of each number of sources, in the order of the pools, is settled too and counted in; where
// that changes the order, once more, up to four times. Cost: as many settlings as sources, as long
// as sources times cells stay below `most_work`; past that one in all.
Pools pools_of(model::Arrangement const&, std::size_t most_work = 200'000'000);

}  // namespace leat::building
