#include "engine/works/reached.hpp"

#include "engine/contract.hpp"

namespace leat::works {

using logic::Diagram;

// A visit, and what of its ways is still to be gone.
struct Reached::Frame {
  std::uint32_t visit = 0;
  std::size_t way = 0, outlet = 0;  // the next ones
  std::size_t taken = 0;            // values taken before the way at hand
  bool is_on_way = false;
};

Reached::Reached(Network const& network, Diagram const& diagram, std::size_t variables,
                 Function reachable)
    : network_(network),
      diagram_(diagram),
      reachable_(reachable),
      is_seen_(network.outlet_count(), false),
      is_visited_(network.inlet_count() * network.profile_count(), false),
      tested_at_(variables),
      looked_at_(diagram.node_count(), 0),
      dead_(2 * diagram.node_count(), 0),
      values_(variables, Value::open) {
  for (model::ProfileId profile = 0; profile < network.profile_count(); ++profile) {
    for (model::InletId inlet = 0; inlet < network.inlet_count(); ++inlet)
      if (network.is_entrance(inlet)) enter(inlet, profile);
  }
}

std::optional<std::uint32_t> Reached::depth(Diagram::Level level) const {
  if (!tested_at_[level]) return std::nullopt;
  return visits_[*tested_at_[level]].depth;
}

void Reached::enter(model::InletId inlet, model::ProfileId profile) {
  std::vector<Frame> open;
  auto const itself = static_cast<std::uint32_t>(visits_.size());
  come_to({inlet, profile, itself, 0, nullptr}, open);
  while (!open.empty()) {
    auto& frame = open.back();
    auto const& visit = visits_[frame.visit];
    if (frame.way < network_.ways(visit.inlet, visit.profile).size())
      go(frame, open);
    else
      open.pop_back();
  }
}

void Reached::come_to(Visit visit, std::vector<Frame>& open) {
  auto const at = visit.inlet * network_.profile_count() + visit.profile;
  if (is_visited_[at]) return;
  is_visited_[at] = true;
  auto const number = static_cast<std::uint32_t>(visits_.size());
  visits_.push_back(visit);
  note_tested(number);
  open.push_back({number, 0, 0, taken_.size(), false});
}

void Reached::note_tested(std::uint32_t number) {
  auto const& visit = visits_[number];
  std::vector<Function> open;
  for (auto const& way : network_.ways(visit.inlet, visit.profile)) open.push_back(way.condition);
  ++looks_;
  while (!open.empty()) {
    auto const f = open.back();
    open.pop_back();
    auto const level = diagram_.level(f);
    auto& look = looked_at_[f.edge >> 1];
    if (level == Diagram::below_all || look == looks_) continue;
    look = looks_;
    auto& deepest = tested_at_[level];
    if (!deepest || visits_[*deepest].depth < visit.depth) deepest = number;
    auto const [off, on] = diagram_.branches(f, level);
    open.push_back(off);
    open.push_back(on);
  }
}

// One step: onto a way, to its next outlet, or back from it.
void Reached::go(Frame& frame, std::vector<Frame>& open) {
  auto const visit = visits_[frame.visit];
  auto const& way = network_.ways(visit.inlet, visit.profile)[frame.way];
  if (!frame.is_on_way) {
    frame.taken = taken_.size();
    frame.outlet = 0;
    frame.is_on_way = !way.outlets.empty() && meet(way.condition) && can_come_about();
  }
  if (!frame.is_on_way || frame.outlet == way.outlets.size()) {
    give_up(frame.taken);
    frame.is_on_way = false;
    ++frame.way;
    return;
  }
  auto const outlet = way.outlets[frame.outlet++];
  is_seen_[outlet] = true;
  if (auto const& join = network_.join_of(outlet))
    come_to({join->inlet, visit.profile, frame.visit, visit.depth + 1, &way}, open);
}

// ---- combinations, part by part ----

// Takes the values that the function needs beside those that are taken; none if it cannot be met.
bool Reached::meet(Function f) {
  ++meetings_;
  return meet_below(f);
}

bool Reached::meet_below(Function f) {
  if (f == Diagram::always) return true;
  if (f == Diagram::never || dead_[f.edge] == meetings_) return false;
  auto const level = diagram_.level(f);
  auto const [off, on] = diagram_.branches(f, level);
  if (values_[level] != Value::open) return meet_below(values_[level] == Value::on ? on : off);
  auto const before = taken_.size();
  taken_.push_back(level);
  values_[level] = Value::off;
  if (meet_below(off)) return true;
  values_[level] = Value::on;
  if (meet_below(on)) return true;
  give_up(before);
  dead_[f.edge] = meetings_;
  return false;
}

void Reached::give_up(std::size_t taken) {
  for (; taken_.size() > taken; taken_.pop_back()) values_[taken_.back()] = Value::open;
}

bool Reached::can_come_about() {
  auto const before = taken_.size();
  bool const can = meet(reachable_);
  give_up(before);
  return can;
}

// The way there once more: what is taken depends on nothing but the ways.
std::vector<bool> Reached::combination(Diagram::Level level) {
  require(tested_at_[level].has_value(),
          "Reached::combination: a variable that is tested somewhere");
  std::vector<Way const*> ways;
  for (auto at = *tested_at_[level]; visits_[at].by != nullptr; at = visits_[at].from)
    ways.push_back(visits_[at].by);
  for (auto way = ways.rbegin(); way != ways.rend(); ++way) meet((*way)->condition);
  meet(reachable_);
  std::vector<bool> combination;
  for (auto value : values_) combination.push_back(value == Value::on);
  give_up(0);
  return combination;
}

}  // namespace leat::works
