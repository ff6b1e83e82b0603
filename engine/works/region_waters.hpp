#pragma once
#include <memory>
#include <optional>
#include <vector>

#include "engine/body/surroundings.hpp"
#include "engine/water/settle.hpp"
#include "engine/works/excerpt.hpp"
#include "engine/works/solved_region.hpp"

namespace leat::works {

// One water of a region as a body sees it, and where its drawing lies in the design.
struct RegionView {
  body::Surroundings here;
  Frame const& frame;
};

// Judges regions of one design, alike ones once, and keeps their waters.
//
// Why an excerpt may stand for the held design (regions.hpp): its cells change by themselves in the
// design, by the bounds there, and in the drawing, by its own; all that either reads is in both. So
// from equal waters as built on they change alike. That is looked at for each region, and where it
// is not so the held design is judged as a whole. Cost: the excerpts of all regions, and one
// judgement for each kind of them.
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
    auto const& drawing = *drawings_[number];
    auto const& waters = drawing.judged.histories.waters;
    for (std::uint32_t w = 0; w < waters.size(); ++w)
      visit(w, RegionView{{drawing.arrangements[w], waters[w].field, design_.profiles[profile]},
                          frame});
  }
  Frame const& frame(std::uint32_t region) const { return lying_[region].frame; }

 private:
  struct Drawing {
    model::Design design;
    Judgement judged;
    std::vector<model::Arrangement> arrangements;  // by water
    std::optional<water::Bounds> bounds;           // of an excerpt's
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
