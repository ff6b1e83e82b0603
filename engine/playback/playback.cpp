#include "engine/playback/playback.hpp"

#include <map>
#include <string_view>

#include "engine/contract.hpp"
#include "engine/explore/histories.hpp"
#include "engine/logic/settled_circuit.hpp"
#include "engine/playback/stances.hpp"
#include "engine/playback/water_steps.hpp"
#include "engine/water/settle.hpp"

namespace leat::playback {

using model::Arrangement;

namespace {

class Recorder {
 public:
  Recorder(model::Design const& design, logic::Machine const& machine,
           explore::States const& states, explore::Histories const& histories, Detail detail,
           Budget const& budget)
      : design_(design),
        machine_(machine),
        states_(states),
        histories_(histories),
        budget_(budget),
        outlets_(body::outlet_cells(design)) {
    result_.detail = detail;
  }

  // None where the budget does not bear so much detail.
  std::optional<Playback> run() {
    auto const& variables = machine_.variables();
    auto const inputs = result_.detail == Detail::as_built ? 0 : machine_.input_count();
    result_.inputs.assign(variables.begin(),
                          variables.begin() + static_cast<std::ptrdiff_t>(inputs));
    looks_.number({});
    stances_.number({});
    fill();
    settle_pools();
    if (has_room()) follow_events();
    if (!has_room()) return std::nullopt;
    result_.looks = looks_.take();
    result_.stances = stances_.take();
    result_.patches = patches_.take();
    result_.runs = runs_.take();
    return std::move(result_);
  }

 private:
  struct Change {
    std::uint32_t pool = 0, run = none;
  };

  bool has_room() const {
    bool const has_too_many_runs =
        result_.detail == Detail::whole && runs_.values().size() > budget_.most_runs;
    return change_count_ <= budget_.most_changes && !has_too_many_runs;
  }
  std::size_t pool_count() const {
    return result_.detail == Detail::as_built ? 1 : histories_.waters.size();
  }
  std::size_t node_count() const {
    return result_.detail == Detail::as_built ? 1 : histories_.nodes.size();
  }

  std::uint32_t patch_number(Patch patch) {
    auto const before = patches_.values().size();
    auto const size = patch.size();
    auto const number = patches_.number(std::move(patch));
    if (patches_.values().size() > before) change_count_ += size + 1;
    return number;
  }

  // The water steps until it rests. Steps that change no look are no steps of the run.
  std::uint32_t run_number(water::Settling& settling, Arrangement const& after, WaterSteps& steps,
                           std::vector<model::Cell> const& remade) {
    bool const has_steps = result_.detail != Detail::without_steps;
    auto const bound = water::most_steps(after);
    std::vector<std::uint32_t> run;
    auto const keep = [&](std::vector<model::Cell> const& cells) {
      run.push_back(patch_number(steps.follow(after, settling.field(), cells, looks_)));
    };
    if (has_steps) {
      keep(remade);
      while (run.size() <= budget_.most_steps && settling.steps() < bound && settling.step())
        keep({});
    }
    if (!has_steps || run.size() > budget_.most_steps) {
      settling.run(bound);
      keep(has_steps ? std::vector<model::Cell>{} : remade);
    }
    return runs_.number(std::move(run));
  }

  void fill() {
    auto const& first = histories_.waters[0];
    Arrangement const arrangement(design_, histories_.settings[first.setting]);
    water::Settling settling(arrangement);
    WaterSteps steps(design_.grid);
    result_.filling = run_number(settling, arrangement, steps, {});
  }

  // The pools in the order of the waters; a water's parent is that of the node it first came from.
  void settle_pools() {
    for (std::uint32_t n = 0; n < node_count(); ++n) {
      auto const& node = histories_.nodes[n];
      if (node.water != result_.pools.size()) continue;
      auto const parent =
          node.parent == explore::Histories::none ? none : histories_.nodes[node.parent].water;
      add_pool(node.water, parent);
      if (!has_room()) return;
    }
    require(result_.pools.size() == pool_count(), "playback: a water without a state");
  }

  void add_pool(std::uint32_t number, std::uint32_t parent) {
    auto const& water = histories_.waters[number];
    auto const& setting = histories_.settings[water.setting];
    Arrangement const arrangement(design_, setting);
    Pool pool{parent, setting, {}, {}, water.is_settled, water.is_fresh};
    pool.fates.resize(design_.inlets.size() * design_.profiles.size());
    by_content_.emplace(std::pair{water.setting, water.field.bytes()}, number);
    lists_.emplace_back();
    for (model::ProfileId p = 0; p < design_.profiles.size(); ++p) {
      body::Surroundings const here(arrangement, water.field, design_.profiles[p]);
      lists_.back().push_back(stances_in(here, outlets_, stances_));
      auto const& list = lists_.back().back();
      pool.stances.push_back(
          patch_number(parent == none ? list : difference(lists_[parent][p], list)));
      for (model::InletId i = 0; i < design_.inlets.size(); ++i)
        pool.fates[i * design_.profiles.size() + p] = fate_of(here, design_.inlets[i], outlets_);
    }
    result_.pools.push_back(std::move(pool));
  }

  void follow_events() {
    std::map<std::pair<std::uint32_t, std::uint32_t>, std::uint32_t> node_of;
    for (std::uint32_t n = 0; n < node_count(); ++n)
      node_of.emplace(std::pair{histories_.nodes[n].state, histories_.nodes[n].water}, n);
    for (std::uint32_t n = 0; n < node_count(); ++n) {
      auto const& from = histories_.nodes[n];
      Node node{
          machine_.values(states_.codes[from.state]), from.water, from.parent, from.event, {}, {}};
      for (std::size_t event = 0; event < result_.inputs.size(); ++event) {
        auto const state = states_.after(from.state, event);
        if (state == explore::States::none) {
          node.next.push_back(none);
          node.run.push_back(none);
          continue;
        }
        auto const change = changed(from.water, histories_.setting_of_state[state]);
        node.next.push_back(node_of.at({state, change.pool}));
        node.run.push_back(change.run);
        if (!has_room()) return;
      }
      result_.nodes.push_back(std::move(node));
    }
  }

  Change changed(std::uint32_t from, std::uint32_t setting) {
    auto const& water = histories_.waters[from];
    if (water.setting == setting) return {from, none};
    auto const [entry, is_new] = changes_.try_emplace({from, setting});
    if (!is_new) return entry->second;
    if (!histories_.is_followed) return entry->second = refreshed(from, setting);
    Arrangement const before(design_, histories_.settings[water.setting]);
    Arrangement const after(design_, histories_.settings[setting]);
    WaterSteps steps(design_.grid);
    steps.follow(before, water.field, {}, looks_);
    water::Settling settling(before, water.field, after, water.is_settled);
    auto const run = run_number(settling, after, steps, water::changed_cells(before, after));
    entry->second = {by_content_.at({setting, settling.field().bytes()}), run};
    return entry->second;
  }

  // From one fresh water to the one that is fresh in another setting, in one step.
  Change refreshed(std::uint32_t from, std::uint32_t setting) {
    auto const& water = histories_.waters[from];
    Arrangement const before(design_, histories_.settings[water.setting]);
    Arrangement const after(design_, histories_.settings[setting]);
    WaterSteps steps(design_.grid);
    steps.follow(before, water.field, {}, looks_);
    auto const remade = water::changed_cells(before, after);
    return {setting, runs_.number({patch_number(
                         steps.follow(after, histories_.waters[setting].field, remade, looks_))})};
  }

  model::Design const& design_;
  logic::Machine const& machine_;
  explore::States const& states_;
  explore::Histories const& histories_;
  Budget const& budget_;
  body::OutletCells outlets_;
  Playback result_;
  Numbered<Look> looks_;
  Numbered<Stance> stances_;
  Numbered<Patch> patches_;
  Numbered<std::vector<std::uint32_t>> runs_;
  std::size_t change_count_ = 0;
  std::map<std::pair<std::uint32_t, std::string_view>, std::uint32_t> by_content_;
  std::map<std::pair<std::uint32_t, std::uint32_t>, Change> changes_;
  std::vector<std::vector<Patch>> lists_;  // of stances, by pool and profile
};

explore::Histories traced(model::Design const& design, logic::Machine const& machine,
                          explore::States const& states, Budget const& budget) {
  explore::HistoryBudget history;
  history.most_nodes = budget.most_nodes;
  history.most_changes = budget.most_nodes * 16;
  return explore::trace(design, machine, states, history);
}

// The fresh waters, which are numbered as their settings are.
explore::Histories refreshed(model::Design const& design, logic::Machine const& machine,
                             explore::States const& states) {
  auto histories = explore::fresh(design, machine, states);
  for (std::uint32_t w = 0; w < histories.waters.size(); ++w)
    histories.waters[w].field = explore::field_of(design, histories, w);
  return histories;
}

// The state as built and nothing else, where all of them are too many.
Playback as_built(model::Design const& design, logic::Machine const& machine,
                  Budget const& budget) {
  auto states = explore::reach(machine, 1);
  if (states.size() == 0) return {};
  states.codes.erase(states.codes.begin() + 1, states.codes.end());
  auto const histories = refreshed(design, machine, states);
  auto found = Recorder(design, machine, states, histories, Detail::as_built, budget).run();
  return found ? std::move(*found) : Playback{};
}

}  // namespace

Playback record(model::Design const& design, model::Circuit const& circuit, Budget const& budget) {
  if (design.grid.volume() > budget.most_cells) return {};
  if (logic::variables_of(circuit).size() > logic::Machine::most_variables) return {};
  logic::Machine const machine(circuit);
  auto const states = explore::reach(machine, budget.most_nodes);
  auto const work = states.size() * states.events * design.grid.volume();
  if (states.is_complete && work <= budget.most_work) {
    auto const histories = traced(design, machine, states, budget);
    for (auto detail : {Detail::whole, Detail::without_steps}) {
      if (!histories.is_complete) break;
      auto found = Recorder(design, machine, states, histories, detail, budget).run();
      if (found) return std::move(*found);
    }
    auto const waters = refreshed(design, machine, states);
    auto found = Recorder(design, machine, states, waters, Detail::fresh, budget).run();
    if (found) return std::move(*found);
  }
  return as_built(design, machine, budget);
}

}  // namespace leat::playback
