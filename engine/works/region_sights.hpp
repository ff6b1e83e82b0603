#pragma once
#include <cstdint>
#include <set>
#include <vector>

#include "engine/findings/sighting.hpp"

namespace leat::works {

struct RegionWalk;
class RegionWaters;
struct RegionView;

// A body comes into a region at this spot while the region has this water.
struct Coming {
  std::uint32_t spot = 0, water = 0;
  bool enters = false;      // the part, and comes from no other region
  bool has_fallen = false;  // through the air of another region
};

// What bodies meet in the regions of a part, wherever they come from.
struct RegionSights {
  // Whether a finding hangs on the way before the comings, so that it may show in fewer
  // combinations than they tell: of a fall how long it was, of a lift whether a body rose into it.
  bool hangs_on_the_way(findings::Finding const&) const;

  std::vector<Coming> comings;
  // In the part's cells, of no inlets; `waters` counts the comings in which they show.
  std::vector<findings::Finding> findings;
  // A run with the head under water may go on from one region into the next: then it was measured
  // in pieces.
  bool may_miss_head_runs = false;
};

// Follows bodies through one region after the other, in each water of it.
//
// Idea: from each spot at which a body can come into a region it goes on by the region's water
// alone, until it comes into another; so this stretch is looked at by itself
// (findings::families_of_stretches), and what it shows there comes about exactly when a body comes
// to its first spot while the region has that water. Of the way before only how far it fell
// matters: the longest fall over all regions (Descent), so that a long drop may be told where the
// body came from less far up. Cost: for each water the stretches from each such spot.
class RegionSurvey {
 public:
  // Both must outlive it; every spot of the walk is known.
  RegionSurvey(model::Design const& part, RegionWalk const& walk);
  // In each water of a region.
  void look(std::uint32_t region, model::ProfileId, RegionWaters const&);
  RegionSights sights() const;

 private:
  // Where bodies of one profile come into a region, and where their stretches end.
  struct Border {
    std::vector<std::uint32_t> spots;
    std::set<model::Cell> ends;  // of other regions
  };
  void find_borders();
  void find_descents();
  void find_head_runs();
  void look(Border const&, body::OutletCells const& own_ends, std::uint32_t water, model::ProfileId,
            RegionView const&);
  bool lies_beyond(Border const&, findings::Sighting const&) const;

  model::Design const& part_;
  RegionWalk const& walk_;
  body::OutletCells outlets_;
  model::OutletId beyond_;                   // of the cells of other regions
  std::vector<Border> borders_;              // region * profiles + profile
  std::vector<findings::Descent> descents_;  // by spot
  std::vector<bool> is_entered_;             // by spot: bodies come into the part there
  findings::Sightings sightings_;
  std::vector<Coming> comings_;
  bool may_miss_head_runs_ = false;
};

}  // namespace leat::works
