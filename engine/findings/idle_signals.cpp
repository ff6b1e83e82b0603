#include <algorithm>
#include <map>

#include "engine/findings/families.hpp"
#include "engine/model/conditions.hpp"

namespace leat::findings {

namespace {

using explore::Combinations;
using logic::Row;
using model::SignalId;

// Numbers the situations so that two have the same number when all their routes are the same.
std::vector<std::uint32_t> class_of_situations(Combinations const& combinations,
                                               tables::RouteTable const& routes) {
  std::map<std::vector<std::uint32_t>, std::uint32_t> classes;
  std::vector<std::uint32_t> class_of(combinations.situations.size());
  for (std::size_t situation = 0; situation < class_of.size(); ++situation) {
    std::vector<std::uint32_t> key;
    for (model::InletId inlet = 0; inlet < routes.inlets(); ++inlet) {
      for (model::ProfileId profile = 0; profile < routes.profiles(); ++profile) {
        auto const& route = routes.at(situation, inlet, profile);
        key.push_back(static_cast<std::uint32_t>(route.verdict));
        key.push_back((route.spills ? 2u : 0u) + (route.is_unsure ? 1u : 0u));
        key.insert(key.end(), route.outlets.begin(), route.outlets.end());
        key.push_back(model::no_cell);
        key.insert(key.end(), route.trapped.begin(), route.trapped.end());
        key.push_back(model::no_cell);
      }
    }
    auto const next = static_cast<std::uint32_t>(classes.size());
    class_of[situation] = classes.try_emplace(std::move(key), next).first->second;
  }
  return class_of;
}

// The signals that change some route: an input whose flip does, or changes memory that something
// uses; memory of which two combinations that differ in nothing else have different routes. Memory
// that never differs alone is taken to matter: its value goes with that of others.
class Working {
 public:
  Working(Explored const& explored, tables::RouteTable const& routes,
          std::vector<bool> const& is_used)
      : explored_(explored), class_of_(class_of_situations(explored.combinations, routes)) {
    for (auto variable : explored.combinations.variables) {
      bool const is_memory = explored.machine.circuit().signals[variable].is_memory();
      used_memory_ = used_memory_ << 1 | (is_memory && is_used[variable] ? 1u : 0u);
    }
  }

  // A flip that is promised away shows nothing; one after which nothing gets quiet might.
  bool is_idle_input(std::size_t event) const {
    auto const& states = explored_.states;
    bool is_flipped = false;
    for (std::uint32_t state = 0; state < states.size(); ++state) {
      auto const next = states.after(state, event);
      if (next == explore::States::none) continue;
      is_flipped = true;
      auto const before = explored_.combinations.row_of_state[state],
                 after = explored_.combinations.row_of_state[next];
      if (((before ^ after) & used_memory_) != 0 || class_of(before) != class_of(after))
        return false;
    }
    return is_flipped && !is_unquiet_after(event);
  }

  bool is_idle_memory(std::size_t variable) const {
    auto const& combinations = explored_.combinations;
    auto const bit = Row{1} << (combinations.variables.size() - 1 - variable);
    bool has_pair = false;
    for (Row row = 0; row < combinations.situation_of_row.size(); ++row) {
      if ((row & bit) != 0 || !combinations.reachable.contains(row) ||
          !combinations.reachable.contains(row | bit)) {
        continue;
      }
      has_pair = true;
      if (class_of(row) != class_of(row | bit)) return false;
    }
    return has_pair && !feeds_memory(combinations.variables[variable]);
  }

 private:
  bool is_unquiet_after(std::size_t event) const {
    auto const& unquiet = explored_.states.unquiet;
    return std::any_of(unquiet.begin(), unquiet.end(),
                       [&](explore::Unquiet const& one) { return one.event == event; });
  }

  std::uint32_t class_of(Row row) const {
    return class_of_[explored_.combinations.situation_of_row[row]];
  }

  bool feeds_memory(SignalId signal) const {
    auto const& circuit = explored_.machine.circuit();
    std::vector<model::ExpressionId> roots;
    for (SignalId s = 0; s < circuit.signals.size(); ++s) {
      if (s == signal || !circuit.signals[s].is_memory()) continue;
      roots.push_back(circuit.signals[s].definition);
      if (circuit.signals[s].kind == model::SignalKind::latch)
        roots.push_back(circuit.signals[s].reset);
    }
    return logic::used_signals(circuit, roots)[signal];
  }

  Explored const& explored_;
  std::vector<std::uint32_t> class_of_;
  Row used_memory_ = 0;  // the bits of memory that something uses
};

}  // namespace

std::vector<Finding> idle_signals(Explored const& explored, tables::RouteTable const& routes) {
  auto const& design = explored.design;
  auto const is_used = logic::used_signals(design.circuit, model::conditions_of(design));
  Working const working(explored, routes, is_used);
  std::vector<bool> is_idle(is_used.size());
  for (SignalId s = 0; s < is_idle.size(); ++s) is_idle[s] = !is_used[s];
  auto const& variables = explored.combinations.variables;
  for (std::size_t v = 0; v < variables.size(); ++v) {
    auto const& signal = explored.machine.circuit().signals[variables[v]];
    if (signal.is_input()) is_idle[variables[v]] = working.is_idle_input(v);
    if (signal.is_memory() && is_used[variables[v]])
      is_idle[variables[v]] = working.is_idle_memory(v);
  }
  for (auto s : design.used_elsewhere) is_idle[s] = false;
  std::vector<Finding> findings;
  for (SignalId s = 0; s < is_idle.size(); ++s) {
    if (!is_idle[s]) continue;
    auto finding = finding_of(FindingKind::idle_signal);
    finding.signals = {s};
    finding.rows = explored.combinations.reachable;
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace leat::findings
