#pragma once
#include <cstdint>
#include <span>
#include <unordered_map>
#include <vector>

#include "engine/body/feel.hpp"
#include "engine/body/outcome.hpp"

namespace leat::body {

// The ways of one body from all inlets in up to 64 waters at once, one bit a water: what
// route_graph and outcome_of give for each water and inlet.
//
// Idea: a position has a word that says in which waters it is reached. The waters in which a body
// arrives are divided by what it feels there (Feel); its moves are worked out once for each such
// group, and the word goes along them until nothing new is reached. Whether an outlet can still be
// reached goes the same ways back, and is the same whatever the inlet, so that one pass serves all
// of them. Invariant: the moves are those of moves_from in each of the waters, so every word is
// the set of waters in which the plain way finds the same. Cost: one working out of moves for each
// position and group, and a few instructions for each move whenever waters arrive by it, at most
// as often as there are waters and in practice once or twice.
class RouteLanes {
 public:
  static constexpr std::size_t most = water::word_bits;

  // Contract: as of Feel.
  RouteLanes(std::span<Surroundings const> waters, std::vector<model::Port> const& inlets,
             OutletCells const&);

  // All positions reached from any inlet in any water, outside ones included.
  std::vector<Position> const& positions() const { return positions_; }

  // From an inlet: the waters in which a position is reached; in which no outlet can be reached
  // from it, nor is it outside; in which none of its moves is sure, though it has some.
  Word reached(model::InletId inlet, std::size_t position) const {
    return reached_[inlet][position];
  }
  Word trapped(model::InletId inlet, std::size_t position) const {
    return spots_[position].is_outside ? 0 : reached(inlet, position) & ~leads_[position];
  }
  Word hanging(model::InletId inlet, std::size_t position) const {
    return reached(inlet, position) & spots_[position].hangs;
  }

  // From an inlet: the waters in which a body comes to an outlet, leaves the drawing.
  Word delivered(model::InletId inlet, model::OutletId outlet) const {
    return told_[inlet].outlets[outlet];
  }
  Word spills(model::InletId inlet) const { return told_[inlet].spills; }
  Verdict verdict(model::InletId inlet, std::size_t lane) const;

  // The waters in groups: in those of a group the route graph from an inlet is the same, and so is
  // what the body feels at each of its positions.
  std::vector<Word> alike(model::InletId inlet) const;

 private:
  // Waters in which a body feels the same at a position, and where its moves lead to.
  struct Branch {
    Word waters = 0;
    bool is_known = false;
    std::uint32_t first_target = 0, target_count = 0;
  };
  struct Spot {
    bool is_outside = false;
    model::OutletId outlet = no_outlet;
    Word hangs = 0;
    std::uint32_t first_branch = 0, branch_count = 0;  // none outside
  };
  struct Told {  // of one inlet, each a word of waters
    std::vector<Word> outlets;
    Word spills = 0, delivered = 0, split = 0, is_unclean = 0;
  };

  std::uint32_t number(Position, OutletCells const&);
  void follow(model::InletId, std::vector<Cell> const& cells, OutletCells const&);
  void know(std::uint32_t position, std::uint32_t branch, OutletCells const&);
  void lead_back();
  void tell(model::InletId, std::size_t outlets);

  Feel feel_;
  std::vector<Position> positions_;
  std::vector<Spot> spots_;  // by position
  std::vector<Branch> branches_;
  std::vector<std::uint32_t> targets_;
  std::unordered_map<std::uint64_t, std::uint32_t> numbers_;
  std::vector<std::vector<Word>> reached_;  // by inlet and position
  std::vector<Word> leads_;                 // by position, told only of waters that reach it
  std::vector<Told> told_;                  // by inlet
};

}  // namespace leat::body
