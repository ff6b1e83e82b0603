#include "engine/tables/routes.hpp"

#include <algorithm>
#include <iterator>

namespace leat::tables {

namespace {

template <class Id>
std::vector<Id> merged(std::vector<Id> const& a, std::vector<Id> const& b) {
  std::vector<Id> all;
  std::set_union(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(all));
  return all;
}

body::Verdict united_verdict(Route const& a, Route const& b, std::size_t outlets) {
  if (outlets == 0) return body::Verdict::lost;
  if (outlets > 1) return body::Verdict::split;
  bool const is_certain =
      a.verdict == body::Verdict::certain && b.verdict == body::Verdict::certain;
  return is_certain ? body::Verdict::certain : body::Verdict::doubtful;
}

}  // namespace

Route route_of(body::RouteGraph const& graph, body::Outcome const& outcome) {
  Route route{outcome.verdict, outcome.outlets, {}, outcome.spills, !outcome.hanging.empty()};
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (outcome.is_trapped[i]) route.trapped.push_back(graph.positions[i].feet);
  }
  std::sort(route.trapped.begin(), route.trapped.end());
  route.trapped.erase(std::unique(route.trapped.begin(), route.trapped.end()), route.trapped.end());
  return route;
}

Route united(Route const& a, Route const& b) {
  Route route{body::Verdict::lost, merged(a.outlets, b.outlets), merged(a.trapped, b.trapped),
              a.spills || b.spills, a.is_unsure || b.is_unsure};
  route.verdict = united_verdict(a, b, route.outlets.size());
  return route;
}

RouteTable by_situation(explore::Combinations const& combinations, RouteTable const& by_water) {
  RouteTable result(combinations.situations.size(), by_water.inlets(), by_water.profiles());
  for (std::size_t s = 0; s < combinations.situations.size(); ++s) {
    auto const& waters = combinations.situations[s];
    for (model::InletId inlet = 0; inlet < by_water.inlets(); ++inlet) {
      for (model::ProfileId profile = 0; profile < by_water.profiles(); ++profile) {
        auto& route = result.at(s, inlet, profile);
        route = by_water.at(waters.front(), inlet, profile);
        for (auto water : waters) route = united(route, by_water.at(water, inlet, profile));
      }
    }
  }
  return result;
}

std::vector<Destination> destinations(explore::Combinations const& combinations,
                                      RouteTable const& routes, model::InletId inlet,
                                      model::ProfileId profile) {
  std::vector<Destination> result;
  std::vector<std::size_t> destination_of(combinations.situations.size());
  for (std::size_t s = 0; s < combinations.situations.size(); ++s) {
    auto const& route = routes.at(s, inlet, profile);
    auto const same = std::find_if(result.begin(), result.end(), [&](Destination const& d) {
      return d.verdict == route.verdict && d.outlets == route.outlets;
    });
    destination_of[s] = static_cast<std::size_t>(same - result.begin());
    if (same == result.end()) {
      result.push_back(
          {route.verdict, route.outlets, logic::RowSet(combinations.reachable.inputs()), {}});
    }
  }
  for (logic::Row row = 0; row < combinations.situation_of_row.size(); ++row) {
    auto const situation = combinations.situation_of_row[row];
    if (situation != explore::Combinations::never)
      result[destination_of[situation]].rows.insert(row);
  }
  auto free = ~combinations.reachable;
  for (auto& d : result) {
    d.condition = logic::irredundant_cover(d.rows, d.rows | free);
    free &= ~logic::rows_of(d.condition, combinations.reachable.inputs());
  }
  return result;
}

}  // namespace leat::tables
