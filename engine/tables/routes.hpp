#pragma once
#include <vector>

#include "engine/body/outcome.hpp"
#include "engine/explore/combinations.hpp"
#include "engine/logic/cover.hpp"

namespace leat::tables {

// Where one body goes from one inlet: in one water, or in a situation, which can have several.
struct Route {
  body::Verdict verdict = body::Verdict::lost;
  std::vector<model::OutletId> outlets;  // reached, ascending
  std::vector<model::Cell> trapped;      // feet cells, ascending
  bool spills = false;
  bool is_unsure = false;  // some position has only unsure moves
  bool operator==(Route const&) const = default;
};

// In some water the body does not get in, and nothing else is wrong with it.
bool is_barred(Route const&);

// What a body does in one water.
Route route_of(body::RouteGraph const&, body::Outcome const&);

// The union of what a body can do in one water and in another. It is certain only where both are,
// of the same outlet.
Route united(Route const&, Route const&);

// One route for each water (or situation), inlet and profile.
class RouteTable {
 public:
  RouteTable() = default;
  RouteTable(std::size_t count, std::size_t inlets, std::size_t profiles)
      : inlets_(inlets), profiles_(profiles), routes_(count * inlets * profiles) {}

  std::size_t inlets() const { return inlets_; }
  std::size_t profiles() const { return profiles_; }
  Route& at(std::size_t which, model::InletId inlet, model::ProfileId profile) {
    return routes_[(which * inlets_ + inlet) * profiles_ + profile];
  }
  Route const& at(std::size_t which, model::InletId inlet, model::ProfileId profile) const {
    return routes_[(which * inlets_ + inlet) * profiles_ + profile];
  }

 private:
  std::size_t inlets_ = 0, profiles_ = 0;
  std::vector<Route> routes_;
};

// The routes of every situation, from those of every water.
RouteTable by_situation(explore::Combinations const&, RouteTable const& by_water);

// All rows in which an inlet's bodies have the same destination, and these rows as a minimal sum.
struct Destination {
  body::Verdict verdict = body::Verdict::lost;
  std::vector<model::OutletId> outlets;
  logic::RowSet rows;
  std::vector<logic::Cube> condition;
};

// The condensed truth table of one inlet and profile: destinations in the order of their first row.
// Together they hold every reachable row exactly once; their conditions are free where no row is
// reachable, and exclude each other there too. `routes` are by situation.
std::vector<Destination> destinations(explore::Combinations const&, RouteTable const& routes,
                                      model::InletId, model::ProfileId);

}  // namespace leat::tables
