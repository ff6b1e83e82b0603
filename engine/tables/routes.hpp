#pragma once
#include <vector>

#include "engine/body/outcome.hpp"
#include "engine/explore/combinations.hpp"
#include "engine/logic/cover.hpp"

namespace leat::tables {

// Where one body goes from one inlet under one setting.
struct Route {
  body::Verdict verdict = body::Verdict::lost;
  std::vector<model::OutletId> outlets;  // reached, ascending
  std::vector<model::Cell> trapped;      // feet cells, ascending
  bool spills = false;
  bool is_unsure = false;  // some position has only unsure moves
  bool operator==(Route const&) const = default;
};

// One route for each setting, inlet and profile.
class RouteTable {
 public:
  RouteTable() = default;
  RouteTable(std::size_t settings, std::size_t inlets, std::size_t profiles)
      : inlets_(inlets), profiles_(profiles), routes_(settings * inlets * profiles) {}

  std::size_t inlets() const { return inlets_; }
  std::size_t profiles() const { return profiles_; }
  Route& at(std::size_t setting, model::InletId inlet, model::ProfileId profile) {
    return routes_[(setting * inlets_ + inlet) * profiles_ + profile];
  }
  Route const& at(std::size_t setting, model::InletId inlet, model::ProfileId profile) const {
    return routes_[(setting * inlets_ + inlet) * profiles_ + profile];
  }

 private:
  std::size_t inlets_ = 0, profiles_ = 0;
  std::vector<Route> routes_;
};

// All rows in which an inlet's bodies have the same destination, and these rows as an irredundant
// sum.
struct Destination {
  body::Verdict verdict = body::Verdict::lost;
  std::vector<model::OutletId> outlets;
  logic::RowSet rows;
  std::vector<logic::Cube> condition;
};

// The condensed truth table of one inlet and profile: destinations in the order of their first row.
// Together they hold every row exactly once.
std::vector<Destination> destinations(explore::Combinations const&, RouteTable const&,
                                      model::InletId, model::ProfileId);

}  // namespace leat::tables
