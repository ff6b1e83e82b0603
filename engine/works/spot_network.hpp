#pragma once
#include <memory>
#include <vector>

#include "engine/works/passages.hpp"

namespace leat::works {

// One copy of a part that was solved by regions, as bodies go through it.
//
// Idea: a position that a body can reach is an inlet, and each step to it a joined outlet; so the
// whole is a network like that of a plant, and is followed by the same rules (passages.hpp), which
// hold position by position what body/outcome.hpp says of one water. Where a region has several
// waters in one combination, further variables choose among them, the same one for all of a body's
// way; what holds for some choice can happen. Regions choose for themselves, so that where water
// remembers more may be said to happen than does, and never less. Cost: two operations of the
// diagram for each step, from each inlet.
class SpotNetwork {
 public:
  // All must outlive it.
  SpotNetwork(Copy const&, model::Design const& part, RegionWalk const&, Conditions&);
  ~SpotNetwork();

  // Entrances are counted by the part's inlet * profiles + profile.
  std::size_t entrance_count() const { return entrance_count_; }
  // What can become of bodies from each entrance: one way for each such thing, in the plant's ids.
  std::vector<std::vector<Way>> ways() const;

  // What follows still has the choices in it.
  Passage const& passage(std::size_t entrance) const { return passages_[entrance]; }
  // While it hangs on the choice among a region's waters what becomes of bodies from the entrance.
  Function parting(std::size_t entrance, std::uint32_t region) const;
  // By spot: when bodies from the entrance come to it.
  std::vector<Function> coming(std::size_t entrance) const;
  // While the spot's region has this water.
  Function during(std::uint32_t region, std::uint32_t water) const;
  // By spot: when it lies on a closed loop, for those that are `met`. Cost: what is reached from
  // each spot from which bodies can go on and on, and two operations for each such pair.
  std::vector<Function> on_closed_loops(std::vector<bool> const& is_met) const;
  bool has_cycles() const { return passages_.has_cycles(); }
  // Of an end of a passage; in the plant's ids.
  model::OutletId outlet(Passage::End const&) const;

  // What holds for some choice.
  Function possible(Function) const;

 private:
  class RegionConditions;
  Network network();
  void add_entrance(model::InletId, model::ProfileId, std::vector<std::vector<Way>>&);
  void add_spot(std::uint32_t number, std::vector<Way>&);
  std::vector<Way> ways_of(Passage const&) const;

  Copy const& copy_;
  model::Design const& part_;
  RegionWalk const& walk_;
  logic::Diagram& diagram_;
  std::vector<logic::Diagram::Level> choices_;
  mutable std::vector<RegionConditions> regions_;
  std::size_t entrance_count_ = 0;
  Passages passages_;
};

}  // namespace leat::works
