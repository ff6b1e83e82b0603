#include "engine/tables/routes.hpp"

#include <algorithm>
#include <iterator>

#include "engine/tables/route_groups.hpp"

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

bool is_barred(Route const& route) {
  bool const is_clean = route.trapped.empty() && !route.spills && !route.is_unsure;
  return is_clean &&
         (route.verdict == body::Verdict::lost || route.verdict == body::Verdict::doubtful);
}

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
  auto groups = groups_of(combinations, [&](std::uint32_t a, std::uint32_t b) {
    auto const &one = routes.at(a, inlet, profile), &other = routes.at(b, inlet, profile);
    return one.verdict == other.verdict && one.outlets == other.outlets;
  });
  std::vector<Destination> result;
  for (auto& group : groups) {
    auto const& route = routes.at(group.situation, inlet, profile);
    result.push_back(
        {route.verdict, route.outlets, std::move(group.rows), std::move(group.condition)});
  }
  return result;
}

}  // namespace leat::tables
