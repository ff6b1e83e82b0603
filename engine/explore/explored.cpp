#include "engine/explore/explored.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "engine/water/settle.hpp"

namespace leat::explore {

RowSet restless_rows(Explored const& explored) {
  auto const& [design, machine, states, histories, combinations, truth] = explored;
  RowSet rows(explored.variable_count());
  Row inputs = 0;
  for (auto variable : combinations.variables)
    inputs = inputs << 1 | (machine.circuit().signals[variable].is_input() ? 1u : 0u);
  std::vector<bool> is_restless(rows.row_count());  // by the inputs alone
  for (auto const& unquiet : states.unquiet) {
    auto const before = combinations.row_of_state[unquiet.state];
    auto const flipped = Row{1} << (combinations.variables.size() - 1 - unquiet.event);
    is_restless[(before ^ flipped) & inputs] = true;
  }
  for (Row row = 0; row < rows.row_count(); ++row) {
    if (is_restless[row & inputs]) rows.insert(row);
  }
  return rows & ~combinations.reachable;
}

Example example_of(Explored const& explored, std::uint32_t node) {
  auto const water = explored.histories.nodes[node].water;
  Example example{explored.row_of(node), {}, water, explored.histories.waters[water].is_fresh};
  for (auto event : explored.histories.events_to(node))
    example.flips.push_back(explored.machine.variables()[event]);
  return example;
}

std::optional<Example> nearest_example(Explored const& explored, RowSet const& rows,
                                       std::vector<std::uint32_t> const& waters) {
  auto const& nodes = explored.histories.nodes;
  for (std::uint32_t node = 0; node < nodes.size(); ++node) {
    bool const is_chosen_water =
        waters.empty() || std::binary_search(waters.begin(), waters.end(), nodes[node].water);
    if (is_chosen_water && rows.contains(explored.row_of(node))) return example_of(explored, node);
  }
  return std::nullopt;
}

Walk walk(model::Design const& design, logic::Machine const& machine,
          std::vector<model::SignalId> const& flips) {
  auto const is_drawn = fills_drawn(design);
  auto state = machine.as_built();
  Walk walked{state.is_quiet, true, machine.values(state.code), {}, {}, 0};
  walked.setting = setting_in(design, is_drawn, walked.signals);
  auto const take = [&](water::Settled settled) {
    walked.is_settled = walked.is_settled && settled.is_settled;
    walked.field = std::move(settled.field);
    walked.steps = settled.steps;
  };
  take(water::settle_fresh({design, walked.setting}));
  auto const inputs_end =
      machine.variables().begin() + static_cast<std::ptrdiff_t>(machine.input_count());
  for (auto flip : flips) {
    auto const input = std::find(machine.variables().begin(), inputs_end, flip);
    require(flip < design.circuit.signals.size() && design.circuit.signals[flip].is_input(),
            "walk: only inputs are flipped");
    if (!walked.is_quiet) break;
    if (input == inputs_end) continue;
    state =
        machine.after(state.code, static_cast<std::size_t>(input - machine.variables().begin()));
    walked.is_quiet = state.is_quiet;
    walked.signals = machine.values(state.code);
    auto setting = setting_in(design, is_drawn, walked.signals);
    if (setting == walked.setting) continue;
    take(water::settle_switched({design, walked.setting}, walked.field, {design, setting},
                                walked.is_settled));
    walked.setting = std::move(setting);
  }
  return walked;
}

std::vector<model::SignalId> flips_of(model::Circuit const& circuit,
                                      std::vector<model::SignalId> const& events) {
  std::vector<model::SignalId> flips;
  for (auto event : events) {
    auto const kind = circuit.signals[event].kind;
    bool const lets_go = kind == model::SignalKind::button || kind == model::SignalKind::plate;
    flips.insert(flips.end(), lets_go ? 2 : 1, event);
  }
  return flips;
}

Example example_of(model::Design const& design, Combinations const& combinations,
                   Walk const& walked, std::vector<model::SignalId> flips) {
  auto const fresh = water::settle_fresh({design, walked.setting}).field;
  return {combinations.row_of(walked.signals), std::move(flips), std::nullopt,
          walked.field == fresh};
}

}  // namespace leat::explore
