#pragma once
#include <vector>

#include "engine/works/region_sights.hpp"
#include "engine/works/solved_region.hpp"

namespace leat::works {

// What a body does at one position: in these waters of its region, so.
struct Branch {
  std::vector<std::uint32_t> waters;     // ascending
  std::vector<std::uint32_t> next;       // spots, ascending
  std::vector<std::uint32_t> falls_to;   // those of them that it comes to through the air
  std::vector<model::OutletId> outlets;  // ascending
  bool spills = false, is_unsure = false;
  // Its head is in water in some of these waters; bodies one cell high have none.
  bool is_under = false;
};

// A position at which some body can be.
struct WalkedSpot {
  body::Position at;
  model::ProfileId profile = 0;
  std::uint32_t region = 0;
  std::vector<Branch> branches;  // each water in one; none where the region is not solved
};

// A cell of an inlet: a body gets in where it fits.
struct Entry {
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  std::uint32_t region = 0;
  std::vector<std::uint32_t> waters;  // of the region, in which it fits
  std::uint32_t spot = 0;
};

// Every position to which any water of any region leads, and how it is left: the route graphs of
// all combinations in one, each step under the waters of one region.
//
// Idea: the moves at a position follow from the water of its region alone, so they are found once
// for each of these, and not for each combination of all signals. Cost: positions times waters of
// their regions, and the waters themselves: for each kind of region one settling of its drawing for
// each change of its own.
struct RegionWalk {
  std::vector<SolvedRegion> regions;
  std::vector<WalkedSpot> spots;
  std::vector<Entry> entries;
  RegionSights sights;
  // Some cell's water was not looked at in all combinations; a pool reaches over several regions;
  // sources form, and fresh water may have them, too, where others do not stand as built.
  bool may_miss_waters = false, may_miss_pools = false, may_miss_sources = false;
  // By region, then water: waters with one number are alike in all that was asked of them; or in
  // where bodies go.
  std::vector<std::vector<std::uint32_t>> likeness, likeness_of_routes;

  // The regions in which a body can go unlike ways in one combination; or meet unlike things.
  std::size_t remembering() const { return remembering_by(likeness_of_routes); }
  std::size_t remembering_sights() const { return remembering_by(likeness); }

 private:
  std::size_t remembering_by(std::vector<std::vector<std::uint32_t>> const&) const;
};

// None where the controls as built are not known. Progress is told while a region is judged, and
// means that judgement.
std::optional<RegionWalk> walk_regions(model::Design const&, Budget const& of_region,
                                       Progress const& = {});

}  // namespace leat::works
