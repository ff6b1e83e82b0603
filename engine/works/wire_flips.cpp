#include "engine/works/wire_flips.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "engine/logic/restriction.hpp"

namespace leat::works {

using logic::Diagram;

std::vector<Change> flips_that_bring(Change const& change, model::Circuit const& plant,
                                     Conditions& conditions) {
  auto const& [signal, goes_on] = change;
  if (plant.signals[signal].is_input()) return {change};
  auto& diagram = conditions.diagram();
  auto const wire = conditions.of_signal(signal);
  auto const possible = conditions.has_memory() ? Diagram::always : conditions.reachable();
  std::vector<Change> flips;
  for (auto level : logic::support(diagram, wire)) {
    // While all else stands so that both values of the input can come about.
    auto const free = diagram.both(logic::cofactor(diagram, possible, level, false),
                                   logic::cofactor(diagram, possible, level, true));
    auto const if_off = logic::cofactor(diagram, wire, level, false),
               if_on = logic::cofactor(diagram, wire, level, true);
    auto const follows = diagram.both(free, diagram.both(if_on, !if_off)),
               opposes = diagram.both(free, diagram.both(if_off, !if_on));
    auto const input = conditions.variables()[level];
    if (follows != Diagram::never) flips.emplace_back(input, goes_on);
    if (opposes != Diagram::never) flips.emplace_back(input, !goes_on);
  }
  return diagram.has_run_out() ? std::vector{change} : flips;
}

Change change_in(Copy const& copy, Copy const& first, Change const& change) {
  auto const at = std::find(first.signals.begin(), first.signals.end(), change.first);
  require(at != first.signals.end(), "change_in: a signal of the first copy");
  return {copy.signals[static_cast<std::size_t>(at - first.signals.begin())], change.second};
}

}  // namespace leat::works
