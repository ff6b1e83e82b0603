#include "engine/works/network.hpp"

#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/strong_components.hpp>

#include "engine/tables/route_groups.hpp"
#include "engine/works/spot_network.hpp"

namespace leat::works {

namespace {

Way way_of(tables::Route const& route, Copy const& copy) {
  Way way{logic::Diagram::never,   {}, !route.trapped.empty(), route.spills, route.is_unsure,
          tables::is_barred(route)};
  for (auto outlet : route.outlets) way.outlets.push_back(copy.outlets[outlet]);
  std::sort(way.outlets.begin(), way.outlets.end());
  return way;
}

bool are_alike(tables::Route const& a, tables::Route const& b) {
  return a.outlets == b.outlets && a.trapped.empty() == b.trapped.empty() && a.spills == b.spills &&
         a.is_unsure == b.is_unsure && tables::is_barred(a) == tables::is_barred(b);
}

}  // namespace

std::vector<Function> inputs_of(Copy const& copy, std::vector<model::SignalId> const& own_variables,
                                Conditions const& conditions) {
  std::vector<Function> inputs;
  for (auto variable : own_variables)
    inputs.push_back(conditions.of_signal(copy.signals[variable]));
  return inputs;
}

Network::Network(model::Design const& plant, Islands const& islands,
                 std::vector<Judgement> const& parts,
                 std::vector<std::optional<RegionWalk>> const& by_regions, Conditions& conditions)
    : profiles_(plant.profiles.size()), ways_(plant.inlets.size() * profiles_), joins_(plant) {
  auto const is_shared = inlets_in_several(islands, plant.inlets.size());
  Barred barred;
  std::vector<Groups> groups(parts.size());
  for (std::size_t part = 0; part < parts.size(); ++part) {
    if (parts[part].is_decided) groups[part] = groups_of(islands.parts[part].design, parts[part]);
  }
  for (auto const& copy : islands.copies) {
    if (parts[copy.part].is_decided)
      add_ways(copy, parts[copy.part], groups[copy.part], conditions);
    else if (auto const& walk = by_regions[copy.part])
      add_ways(copy, islands.parts[copy.part].design, *walk, conditions);
    else
      add_unknown(copy);
    take_barred(copy, is_shared, barred, conditions);
  }
  add_barred(barred);
  put_in_order();
}

Network::Network(std::vector<std::vector<Way>> ways,
                 std::vector<std::optional<model::Join>> join_of_outlet)
    : profiles_(1), ways_(std::move(ways)), joins_(ways_.size(), std::move(join_of_outlet)) {
  put_in_order();
}

void Network::add_ways(Copy const& copy, model::Design const& part, RegionWalk const& walk,
                       Conditions& conditions) {
  auto passages = SpotNetwork(copy, part, walk, conditions).ways();
  for (model::InletId inlet = 0; inlet < part.inlets.size(); ++inlet) {
    for (model::ProfileId profile = 0; profile < profiles_; ++profile) {
      auto& ways = ways_[copy.inlets[inlet] * profiles_ + profile];
      auto& more = passages[inlet * profiles_ + profile];
      std::move(more.begin(), more.end(), std::back_inserter(ways));
    }
  }
}

Network::Groups Network::groups_of(model::Design const& part, Judgement const& judged) const {
  Groups groups;
  for (model::InletId inlet = 0; inlet < part.inlets.size(); ++inlet) {
    for (model::ProfileId profile = 0; profile < profiles_; ++profile) {
      auto const& routes = judged.routes;
      groups.push_back(
          tables::groups_of(judged.combinations, [&](std::uint32_t a, std::uint32_t b) {
            return are_alike(routes.at(a, inlet, profile), routes.at(b, inlet, profile));
          }));
    }
  }
  return groups;
}

void Network::add_ways(Copy const& copy, Judgement const& judged, Groups const& groups,
                       Conditions& conditions) {
  auto const inputs = inputs_of(copy, judged.variables, conditions);
  for (std::size_t from = 0; from < groups.size(); ++from) {
    auto const own = static_cast<model::InletId>(from / profiles_);
    auto const profile = static_cast<model::ProfileId>(from % profiles_);
    for (auto const& group : groups[from]) {
      auto way = way_of(judged.routes.at(group.situation, own, profile), copy);
      way.condition = conditions.of(group.rows, inputs);
      ways_[copy.inlets[own] * profiles_ + profile].push_back(std::move(way));
    }
  }
}

// Who does not get into one island of an inlet may get into another.
void Network::take_barred(Copy const& copy, std::vector<bool> const& is_shared, Barred& barred,
                          Conditions& conditions) {
  auto& diagram = conditions.diagram();
  for (auto inlet : copy.inlets) {
    if (!is_shared[inlet]) continue;
    for (model::ProfileId profile = 0; profile < profiles_; ++profile) {
      auto const at = inlet * profiles_ + profile;
      auto here = logic::Diagram::never;
      std::erase_if(ways_[at], [&](Way const& way) {
        if (way.is_barred) here = diagram.either(here, way.condition);
        return way.is_barred;
      });
      auto const [entry, is_new] = barred.try_emplace(at, here);
      if (!is_new) entry->second = diagram.both(entry->second, here);
    }
  }
}

void Network::add_barred(Barred const& barred) {
  for (auto const& [at, condition] : barred) {
    if (condition == logic::Diagram::never) continue;
    Way way;
    way.condition = condition;
    way.is_barred = true;
    ways_[at].push_back(std::move(way));
  }
}

// Whatever it depends on, anything may happen to a body.
void Network::add_unknown(Copy const& copy) {
  for (auto inlet : copy.inlets) {
    for (model::ProfileId profile = 0; profile < profiles_; ++profile) {
      Way way;
      way.condition = logic::Diagram::always;
      way.outlets = copy.outlets;
      std::sort(way.outlets.begin(), way.outlets.end());
      way.is_unknown = true;
      ways_[inlet * profiles_ + profile].push_back(std::move(way));
    }
  }
}

// Strong components come out against the direction of the joins, so the last one is the first
// place.
void Network::put_in_order() {
  using Graph = boost::compressed_sparse_row_graph<boost::directedS>;
  std::vector<std::pair<std::uint32_t, std::uint32_t>> arrows;
  for (model::InletId inlet = 0; inlet < inlet_count(); ++inlet) {
    for (model::ProfileId profile = 0; profile < profiles_; ++profile) {
      for (auto const& way : ways(inlet, profile)) {
        for (auto outlet : way.outlets) {
          if (auto const& join = joins_.from(outlet)) arrows.emplace_back(inlet, join->inlet);
        }
      }
    }
  }
  Graph const graph(boost::edges_are_unsorted_multi_pass, arrows.begin(), arrows.end(),
                    inlet_count());
  places_.assign(inlet_count(), 0);
  auto const index = boost::get(boost::vertex_index, graph);
  auto const count =
      boost::strong_components(graph, boost::make_iterator_property_map(places_.begin(), index));
  has_cycles_ = count < inlet_count() ||
                std::any_of(arrows.begin(), arrows.end(),
                            [](auto const& arrow) { return arrow.first == arrow.second; });
  std::vector<std::uint32_t> by_component(inlet_count());
  for (std::uint32_t i = 0; i < by_component.size(); ++i) by_component[i] = i;
  std::stable_sort(by_component.begin(), by_component.end(),
                   [&](auto a, auto b) { return count - places_[a] < count - places_[b]; });
  std::vector<std::uint32_t> place(inlet_count());
  for (std::uint32_t i = 0; i < by_component.size(); ++i) place[by_component[i]] = i;
  places_ = std::move(place);
}

}  // namespace leat::works
