#include "tests/support/surveyed.hpp"

#include "engine/body/travel.hpp"
#include "engine/logic/settled_circuit.hpp"

namespace leat::drawn {

Surveyed::Surveyed(model::Design drawn, bool follows_history)
    : design(std::move(drawn)),
      settled(logic::settled_circuit(design.circuit)),
      machine(design.circuit),
      truth(settled, logic::variables_of(settled)),
      states(explore::reach(machine)),
      histories(follows_history ? explore::trace(design, machine, states, {})
                                : explore::fresh(design, machine, states)),
      combinations(explore::combine(machine, states, histories, logic::variables_of(settled))),
      explored{design, machine, states, histories, combinations, truth} {}

template <class Visit>
void Surveyed::for_each_travel(Visit visit) const {
  auto const outlets = body::outlet_cells(design);
  for (std::uint32_t water = 0; water < histories.waters.size(); ++water) {
    model::Arrangement const arrangement(design,
                                         histories.settings[histories.waters[water].setting]);
    auto const field = explore::field_of(design, histories, water);
    for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
      for (model::ProfileId profile = 0; profile < design.profiles.size(); ++profile) {
        body::Surroundings const here(arrangement, field, design.profiles[profile]);
        visit(water, inlet, profile, here,
              body::route_graph(here, body::entries(here, design.inlets[inlet].cells), outlets));
      }
    }
  }
}

tables::RouteTable Surveyed::by_water() const {
  tables::RouteTable routes(histories.waters.size(), design.inlets.size(), design.profiles.size());
  for_each_travel([&](auto water, auto inlet, auto profile, auto const&, auto const& graph) {
    routes.at(water, inlet, profile) = tables::route_of(graph, body::outcome_of(graph));
  });
  return routes;
}

std::vector<explore::Clearing> Surveyed::trips() const {
  std::vector<explore::Clearing> trips(histories.waters.size());
  for_each_travel([&](auto water, auto, auto, auto const& here, auto const& graph) {
    bool const has_trap = body::outcome_of(graph).has_trap;
    trips[water].push_back(has_trap ? std::nullopt : body::longest_trip(here, graph));
  });
  return trips;
}

tables::RouteTable Surveyed::by_situation() const {
  return tables::by_situation(combinations, by_water());
}

}  // namespace leat::drawn
