#include "engine/works/passages.hpp"

#include <algorithm>
#include <map>
#include <queue>

#include "engine/works/trials.hpp"

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

// Ascending, each once.
void sort_once(std::vector<model::OutletId>& outlets) {
  std::sort(outlets.begin(), outlets.end());
  outlets.erase(std::unique(outlets.begin(), outlets.end()), outlets.end());
}

// Bodies on all their ways at once.
class Following {
 public:
  Following(Network const& network, Diagram& diagram)
      : network_(network),
        diagram_(diagram),
        arriving_(network.inlet_count(), Diagram::never),
        is_open_(network.inlet_count(), false) {}

  // Where bodies of the profile end that enter there.
  void follow(std::vector<InletId> const& entrances, ProfileId profile) {
    for (auto inlet : entrances) arrive(inlet, Diagram::always);
    while (!open_.empty()) {
      auto const next = open_.top().second;
      open_.pop();
      is_open_[next] = false;
      go_on(next, profile);
    }
    for (auto inlet : touched_) arriving_[inlet] = Diagram::never;
    touched_.clear();
  }

  // From now on the outlets that are joined count as ends, too.
  void count_joined() { is_joined_counted_ = true; }

  // All ends since they were taken last.
  std::vector<Passage::End> take_ends() {
    std::vector<Passage::End> ends;
    for (auto const& [outlet, condition] : ends_) ends.push_back({outlet, condition});
    ends_.clear();
    return ends;
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

  void go_on(InletId inlet, ProfileId profile) {
    auto const here = arriving_[inlet];
    for (auto const& way : network_.ways(inlet, profile)) {
      if (way.outlets.empty()) continue;
      auto const open = diagram_.both(here, way.condition);
      if (open == Diagram::never) continue;
      for (auto outlet : way.outlets) {
        auto const& join = network_.join_of(outlet);
        if (join) arrive(join->inlet, open);
        if (join && !is_joined_counted_) continue;
        auto& end = ends_.try_emplace(outlet, Diagram::never).first->second;
        end = diagram_.either(end, open);
      }
    }
  }

  using Open = std::pair<std::uint32_t, InletId>;  // the place first
  Network const& network_;
  Diagram& diagram_;
  std::vector<Function> arriving_;
  std::vector<bool> is_open_;
  std::vector<InletId> touched_;
  std::priority_queue<Open, std::vector<Open>, std::greater<>> open_;
  std::map<model::OutletId, Function> ends_;
  bool is_joined_counted_ = false;
};

}  // namespace

class Passages::Search {
 public:
  Search(Network network, Diagram& diagram, std::size_t count)
      : network_(std::move(network)),
        diagram_(diagram),
        prospects_(network_, diagram),
        following_(network_, diagram),
        found_(count) {}

  Network const& network() const { return network_; }
  Diagram& diagram() { return diagram_; }
  Prospects& prospects() { return prospects_; }

  Passage const& passage(std::size_t which, Start const& start) {
    auto& passage = found_[which];
    if (passage) return *passage;
    auto const of = [&](Prospect prospect) {
      return prospects_.of(prospect, start.inlet, start.profile);
    };
    following_.follow({start.inlet}, start.profile);
    passage = std::make_unique<Passage>(Passage{start.inlet, start.profile, following_.take_ends(),
                                                of(Prospect::trapped), of(Prospect::spilled),
                                                of(Prospect::unsure), of(Prospect::barred),
                                                of(Prospect::unknown), of(Prospect::parting)});
    return *passage;
  }

 private:
  Network network_;
  Diagram& diagram_;
  Prospects prospects_;
  Following following_;
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

Function Passages::of(Prospect prospect, std::size_t passage) const {
  auto const& [inlet, profile] = starts_[passage];
  return search_->prospects().of(prospect, inlet, profile);
}

Function Passages::from(Prospect prospect, InletId inlet, ProfileId profile) const {
  return search_->prospects().of(prospect, inlet, profile);
}

Function Passages::barred_at(InletId inlet, ProfileId profile) const {
  auto barred = Diagram::never;
  for (auto const& way : search_->network().ways(inlet, profile))
    if (way.is_barred) barred = search_->diagram().either(barred, way.condition);
  return barred;
}

bool Passages::has_cycles() const { return search_->network().has_cycles(); }

Reached Passages::reached(std::size_t variables, Function reachable) const {
  return {search_->network(), search_->diagram(), variables, reachable};
}

std::vector<bool> Passages::variables_that_matter(Reached& reached, std::size_t variables,
                                                  Function reachable) const {
  return works::variables_that_matter(search_->network(), search_->diagram(), reached, variables,
                                      reachable);
}

std::vector<InletId> Passages::entrances() const {
  std::vector<InletId> entrances;
  for (auto const& start : starts_) {
    if (start.profile == 0) entrances.push_back(start.inlet);
  }
  return entrances;
}

std::vector<Passage::End> Passages::everything_reached() const {
  auto const& network = search_->network();
  Following following(network, search_->diagram());
  following.count_joined();
  for (ProfileId profile = 0; profile < network.profile_count(); ++profile)
    following.follow(entrances(), profile);
  return following.take_ends();
}

std::vector<Passage::End> Passages::everything_reached(ProfileId profile) const {
  Following following(search_->network(), search_->diagram());
  following.count_joined();
  following.follow(entrances(), profile);
  return following.take_ends();
}

std::vector<Passage::End> Passages::everything_reached_from(InletId inlet,
                                                            ProfileId profile) const {
  Following following(search_->network(), search_->diagram());
  following.count_joined();
  following.follow({inlet}, profile);
  return following.take_ends();
}

std::vector<model::OutletId> Passages::outlets_from(InletId inlet) const {
  std::vector<model::OutletId> outlets;
  for (ProfileId profile = 0; profile < search_->network().profile_count(); ++profile) {
    auto const own = outlets_from(inlet, profile);
    outlets.insert(outlets.end(), own.begin(), own.end());
  }
  sort_once(outlets);
  return outlets;
}

std::vector<model::OutletId> Passages::outlets_from(InletId inlet, ProfileId profile) const {
  std::vector<model::OutletId> outlets;
  for (auto const& way : search_->network().ways(inlet, profile))
    outlets.insert(outlets.end(), way.outlets.begin(), way.outlets.end());
  sort_once(outlets);
  return outlets;
}

}  // namespace leat::works
