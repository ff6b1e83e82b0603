#include "engine/works/passages.hpp"

#include <algorithm>
#include <map>
#include <queue>

namespace leat::works {

using logic::Diagram;
using model::InletId;
using model::ProfileId;

Function Passage::reaching(model::OutletId outlet) const {
  for (auto const& end : ends) {
    if (end.outlet == outlet) return end.condition;
  }
  return Diagram::never;
}

namespace {

// When, from each inlet on, some outlet of the plant can be reached.
std::vector<Function> exits(Network const& network, ProfileId profile, Diagram& diagram) {
  std::vector<InletId> last_first(network.inlet_count());
  for (InletId inlet = 0; inlet < last_first.size(); ++inlet)
    last_first[last_first.size() - 1 - network.places()[inlet]] = inlet;
  std::vector<Function> can_exit(network.inlet_count(), Diagram::never);
  for (bool is_new = true; is_new;) {
    is_new = false;
    for (auto inlet : last_first) {
      auto condition = can_exit[inlet];
      for (auto const& way : network.ways(inlet, profile)) {
        auto beyond = Diagram::never;
        for (auto outlet : way.outlets) {
          auto const join = network.join_of(outlet);
          beyond = diagram.either(beyond, join ? can_exit[join->inlet] : Diagram::always);
        }
        condition = diagram.either(condition, diagram.both(way.condition, beyond));
      }
      is_new = is_new || condition != can_exit[inlet];
      can_exit[inlet] = condition;
    }
  }
  return can_exit;
}

// One body on all its ways at once.
class Following {
 public:
  Following(Network const& network, Diagram& diagram)
      : network_(network),
        diagram_(diagram),
        arriving_(network.inlet_count(), Diagram::never),
        is_open_(network.inlet_count(), false) {}

  Passage from(InletId inlet, ProfileId profile, std::vector<Function> const& can_exit) {
    can_exit_ = &can_exit;
    Passage passage;
    passage.inlet = inlet;
    passage.profile = profile;
    arrive(inlet, Diagram::always);
    while (!open_.empty()) {
      auto const next = open_.top().second;
      open_.pop();
      is_open_[next] = false;
      go_on(next, profile, passage);
    }
    for (auto const& [outlet, condition] : ends_) passage.ends.push_back({outlet, condition});
    forget();
    return passage;
  }

 private:
  void arrive(InletId inlet, Function condition) {
    auto const all = diagram_.either(arriving_[inlet], condition);
    if (all == arriving_[inlet]) return;
    if (arriving_[inlet] == Diagram::never) touched_.push_back(inlet);
    arriving_[inlet] = all;
    if (is_open_[inlet]) return;
    is_open_[inlet] = true;
    open_.emplace(network_.places()[inlet], inlet);
  }

  void go_on(InletId inlet, ProfileId profile, Passage& passage) {
    auto const here = arriving_[inlet];
    passage.trapped = diagram_.either(passage.trapped, held_at(inlet, profile));
    for (auto const& way : network_.ways(inlet, profile)) {
      auto const open = diagram_.both(here, way.condition);
      if (open == Diagram::never) continue;
      if (way.has_trap) passage.trapped = diagram_.either(passage.trapped, open);
      if (way.spills) passage.spilled = diagram_.either(passage.spilled, open);
      if (way.is_unsure) passage.unsure = diagram_.either(passage.unsure, open);
      if (way.is_barred) passage.barred = diagram_.either(passage.barred, open);
      if (way.is_unknown) passage.unknown = diagram_.either(passage.unknown, open);
      for (auto outlet : way.outlets) {
        if (auto const join = network_.join_of(outlet)) {
          arrive(join->inlet, open);
        } else {
          auto& end = ends_.try_emplace(outlet, Diagram::never).first->second;
          end = diagram_.either(end, open);
        }
      }
    }
  }

  // Without a way out. Who does not get in at an entrance is nowhere; who does not get in further
  // on is held where it was delivered.
  Function held_at(InletId inlet, ProfileId profile) {
    auto held = diagram_.both(arriving_[inlet], !(*can_exit_)[inlet]);
    for (auto const& way : network_.ways(inlet, profile)) {
      if (way.is_barred && way.outlets.empty() && network_.is_entrance(inlet))
        held = diagram_.both(held, !way.condition);
    }
    return held;
  }

  void forget() {
    for (auto inlet : touched_) arriving_[inlet] = Diagram::never;
    touched_.clear();
    ends_.clear();
  }

  using Open = std::pair<std::uint32_t, InletId>;  // the place first
  Network const& network_;
  Diagram& diagram_;
  std::vector<Function> const* can_exit_ = nullptr;
  std::vector<Function> arriving_;
  std::vector<bool> is_open_;
  std::vector<InletId> touched_;
  std::priority_queue<Open, std::vector<Open>, std::greater<>> open_;
  std::map<model::OutletId, Function> ends_;
};

}  // namespace

class Passages::Search {
 public:
  Search(Network network, Diagram& diagram, std::size_t count)
      : network_(std::move(network)),
        diagram_(diagram),
        following_(network_, diagram),
        can_exit_(network_.profile_count()),
        found_(count) {}

  Passage const& passage(std::size_t which, Start const& start) {
    auto& passage = found_[which];
    if (!passage) {
      auto const& can_exit = exits_of(start.profile);
      passage = std::make_unique<Passage>(following_.from(start.inlet, start.profile, can_exit));
    }
    return *passage;
  }

 private:
  std::vector<Function> const& exits_of(ProfileId profile) {
    auto& can_exit = can_exit_[profile];
    if (can_exit.empty()) can_exit = exits(network_, profile, diagram_);
    return can_exit;
  }

  Network network_;
  Diagram& diagram_;
  Following following_;
  std::vector<std::vector<Function>> can_exit_;  // by profile; empty: not asked for yet
  std::vector<std::unique_ptr<Passage>> found_;  // they stay where they are
};

Passages::Passages() = default;
Passages::~Passages() = default;
Passages::Passages(Passages&&) noexcept = default;
Passages& Passages::operator=(Passages&&) noexcept = default;

Passages::Passages(Network network, Conditions& conditions) {
  for (InletId inlet = 0; inlet < network.inlet_count(); ++inlet) {
    for (ProfileId profile = 0; profile < network.profile_count(); ++profile) {
      if (network.is_entrance(inlet)) starts_.push_back({inlet, profile});
    }
  }
  search_ = std::make_unique<Search>(std::move(network), conditions.diagram(), starts_.size());
}

Passage const& Passages::operator[](std::size_t passage) const {
  return search_->passage(passage, starts_[passage]);
}

}  // namespace leat::works
