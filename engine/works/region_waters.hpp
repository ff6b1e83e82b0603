#pragma once
#include <memory>
#include <vector>

#include "engine/body/surroundings.hpp"
#include "engine/judge.hpp"
#include "engine/water/settle.hpp"
#include "engine/works/excerpt.hpp"

namespace leat::works {

// A region with what was found of it: every water that its own signals bring about.
struct SolvedRegion {
  Region region;
  Judgement judged;                            // told of the design's cells; fields are not kept
  std::vector<model::SignalId> signals;        // of the judgement, as the design's
  std::vector<model::SignalId> own_variables;  // its variables, as the design's
  std::size_t promises = 0;                    // that it keeps
  // Its waters are followed through all histories and rest. Without it nothing is known of a body
  // that comes into the region.
  bool is_solved = false;
  bool is_met = false;  // some body comes into it
  // Regions of one number are alike, up to the symmetries of the square, and were judged once.
  std::uint32_t drawing = 0;
};

// One water of a region as a body sees it, and where its drawing lies in the design.
struct RegionView {
  body::Surroundings here;
  Frame const& frame;
};

// Judges regions of one design, alike ones once, and keeps their waters.
//
// Why an excerpt may stand for the held design (regions.hpp): cells that are closed under the
// grounds of their water change by themselves. So from equal waters as built on they change alike
// in both, as long as the water around them keeps within the bounds that decided what is left out.
// Both are looked at, for each region: its drawing's own bounds, and its water as built. Where they
// differ, or where what was cut off makes waters of its own, the held design is judged as a whole.
// Limit: as for the held design, what is fresh in other combinations than as built is its own.
class RegionWaters {
 public:
  // All must outlive it. The budget is for all regions together. Contract: as built is known.
  RegionWaters(model::Design const&, Supports const&, AsBuilt&, Budget const&, Progress const&);

  // Contract: each region once, one after the other; a region's number is its place in this order.
  SolvedRegion judge(Region const&);
  // Each water of a region that is solved: visit(water, RegionView).
  template <class Visit>
  void for_each_water(std::uint32_t region, model::ProfileId profile, Visit visit) const {
    auto const& [number, frame] = lying_[region];
    auto const& [design, judged, arrangements] = *drawings_[number];
    auto const& waters = judged.histories.waters;
    for (std::uint32_t w = 0; w < waters.size(); ++w)
      visit(w, RegionView{{arrangements[w], waters[w].field, design.profiles[profile]}, frame});
  }
  Frame const& frame(std::uint32_t region) const { return lying_[region].frame; }

 private:
  struct Drawing {
    model::Design design;
    Judgement judged;
    std::vector<model::Arrangement> arrangements;  // by water
  };
  struct Lying {
    std::uint32_t drawing = 0;
    Frame frame;
  };
  std::uint32_t add_drawing(model::Design);
  bool stands_for(Drawing const&, Excerpt const&, Frame const&) const;
  bool is_as_built(Drawing const&, Excerpt const&, Frame const&) const;
  SolvedRegion solved(Region const&, Copy const& where, Held const&);

  model::Design const& design_;
  Supports const& supports_;
  AsBuilt& as_built_;
  Budget budget_;
  Progress const& progress_;
  water::Settled built_;
  Excerpts excerpts_;
  Cuttings cuttings_;
  std::vector<std::uint32_t> drawing_of_form_;  // by its number among the cuttings
  std::vector<std::unique_ptr<Drawing>> drawings_;
  std::vector<Lying> lying_;  // by region
};

}  // namespace leat::works
