#pragma once
#include <map>
#include <optional>
#include <vector>

#include "engine/judge.hpp"
#include "engine/model/joins.hpp"
#include "engine/tables/route_groups.hpp"
#include "engine/works/conditions.hpp"
#include "engine/works/islands.hpp"
#include "engine/works/region_walk.hpp"

namespace leat::works {

// One thing that can become of a body which enters by an inlet, up to where its island ends.
struct Way {
  Function condition = logic::Diagram::never;  // when it can
  std::vector<model::OutletId> outlets;        // of the plant, ascending
  bool has_trap = false, spills = false, is_unsure = false;
  bool is_barred = false;   // in some water it gets in at none of the inlet's cells
  bool is_unknown = false;  // the island could not be solved: every outlet of it is named
};

// What stands for each of a part's variables where a copy of it stands.
std::vector<Function> inputs_of(Copy const&, std::vector<model::SignalId> const& own_variables,
                                Conditions const&);

// The plant as inlets, the ways from each through its island, and joins from outlets to inlets.
class Network {
 public:
  // `parts`: the judgement of each part. Islands that stand in several places have the ways of
  // their part there, under their own conditions. The plant must outlive it.
  // `by_regions`: for each part its walk, where it was solved by regions.
  Network(model::Design const& plant, Islands const&, std::vector<Judgement> const& parts,
          std::vector<std::optional<RegionWalk>> const& by_regions, Conditions&);
  // Any other network, of one profile: the ways from each inlet, and what outlets lead to.
  Network(std::vector<std::vector<Way>> ways,
          std::vector<std::optional<model::Join>> join_of_outlet);

  std::size_t inlet_count() const { return joins_.inlet_count(); }
  std::size_t outlet_count() const { return joins_.outlet_count(); }
  std::size_t profile_count() const { return profiles_; }
  std::vector<Way> const& ways(model::InletId inlet, model::ProfileId profile) const {
    return ways_[inlet * profiles_ + profile];
  }
  // The join that goes on from an outlet; none where bodies have arrived.
  std::optional<model::Join> const& join_of(model::OutletId outlet) const {
    return joins_.from(outlet);
  }
  // Whether bodies come in here from outside.
  bool is_entrance(model::InletId inlet) const { return joins_.is_entrance(inlet); }
  // Places in an order in which each inlet stands before those that its joins lead to, and inlets
  // that lead to each other stand together.
  std::vector<std::uint32_t> const& places() const { return places_; }
  // Whether some inlet can be come to from itself.
  bool has_cycles() const { return has_cycles_; }

 private:
  // The ways of a part from each inlet, for each profile; what each has is the part's.
  using Groups = std::vector<std::vector<tables::RouteGroup>>;
  Groups groups_of(model::Design const& part, Judgement const&) const;
  void add_ways(Copy const&, Judgement const&, Groups const&, Conditions&);
  void add_ways(Copy const&, model::Design const& part, RegionWalk const&, Conditions&);
  void add_unknown(Copy const&);
  // Of inlets of several islands, by inlet * profiles + profile: when a body gets into none of
  // those that were added so far.
  using Barred = std::map<std::size_t, Function>;
  void take_barred(Copy const&, std::vector<bool> const& is_shared, Barred&, Conditions&);
  void add_barred(Barred const&);
  void put_in_order();

  std::size_t profiles_;
  std::vector<std::vector<Way>> ways_;  // inlet * profiles + profile
  model::Joins joins_;
  std::vector<std::uint32_t> places_;
  bool has_cycles_ = false;
};

}  // namespace leat::works
