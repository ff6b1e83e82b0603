#include "engine/body/route_lanes.hpp"

#include <algorithm>
#include <utility>

namespace leat::body {

namespace {

// Words on their way: each position is on the list while it holds waters that were not yet passed
// on.
class Flood {
 public:
  explicit Flood(std::vector<Word>& reached) : reached_(reached) {}

  void arrive(std::uint32_t at, Word waters) {
    if (at >= reached_.size()) reached_.resize(at + 1);
    if (at >= pending_.size()) pending_.resize(reached_.size());
    auto const fresh = waters & ~reached_[at];
    if (!fresh) return;
    reached_[at] |= fresh;
    if (!pending_[at]) open_.push_back(at);
    pending_[at] |= fresh;
  }

  // Calls `pass` with each position and the waters that are new there, until there are no more.
  template <class Pass>
  void run(Pass pass) {
    for (std::size_t next = 0; next < open_.size(); ++next) {
      auto const at = open_[next];
      pass(at, std::exchange(pending_[at], 0));
    }
  }

 private:
  std::vector<Word>& reached_;
  std::vector<Word> pending_;
  std::vector<std::uint32_t> open_;
};

}  // namespace

RouteLanes::RouteLanes(std::span<Surroundings const> waters, std::vector<model::Port> const& inlets,
                       OutletCells const& outlets)
    : feel_(waters), reached_(inlets.size()), told_(inlets.size()) {
  for (model::InletId inlet = 0; inlet < inlets.size(); ++inlet)
    follow(inlet, inlets[inlet].cells, outlets);
  for (auto& reached : reached_) reached.resize(positions_.size());
  lead_back();
  auto const count = waters.front().moment().arrangement.design().outlets.size();
  for (model::InletId inlet = 0; inlet < inlets.size(); ++inlet) tell(inlet, count);
}

std::uint32_t RouteLanes::number(Position at, OutletCells const& outlets) {
  auto const key =
      (std::uint64_t{at.feet} << 8) | (static_cast<std::uint64_t>(at.carried_to) << 4) | at.fallen;
  auto const next = static_cast<std::uint32_t>(positions_.size());
  auto const [entry, is_new] = numbers_.try_emplace(key, next);
  if (!is_new) return entry->second;
  positions_.push_back(at);
  auto& spot = spots_.emplace_back();
  spot.is_outside = !feel_.in(feel_.all()).grid().is_inside(at.feet);
  if (spot.is_outside) return next;
  if (auto const outlet = outlets.find(at.feet); outlet != outlets.end())
    spot.outlet = outlet->second;
  spot.first_branch = static_cast<std::uint32_t>(branches_.size());
  for (auto group : feel_.groups(at.feet)) branches_.push_back({group});
  spot.branch_count = static_cast<std::uint32_t>(branches_.size()) - spot.first_branch;
  return next;
}

// Works out the moves of a branch, once.
void RouteLanes::know(std::uint32_t position, std::uint32_t branch, OutletCells const& outlets) {
  if (std::exchange(branches_[branch].is_known, true)) return;
  auto const group = branches_[branch].waters;
  auto const moves = moves_from(feel_.in(group), positions_[position]);
  auto const first = targets_.size();
  bool is_sure = moves.empty();
  for (auto const& move : moves) {
    targets_.push_back(number(move.to, outlets));
    is_sure = is_sure || move.is_sure;
  }
  if (!is_sure) spots_[position].hangs |= group;
  branches_[branch].first_target = static_cast<std::uint32_t>(first);
  branches_[branch].target_count = static_cast<std::uint32_t>(moves.size());
}

void RouteLanes::follow(model::InletId inlet, std::vector<Cell> const& cells,
                        OutletCells const& outlets) {
  Flood flood(reached_[inlet]);
  for (auto c : cells) {
    for (auto group : feel_.groups(c)) {
      if (feel_.in(group).fits(c)) flood.arrive(number({c, Side::none, 0}, outlets), group);
    }
  }
  flood.run([&](std::uint32_t at, Word waters) {
    if (spots_[at].outlet != no_outlet) return;
    auto const first = spots_[at].first_branch, count = spots_[at].branch_count;
    for (auto b = first; b < first + count; ++b) {
      auto const going = branches_[b].waters & waters;
      if (!going) continue;
      know(at, b, outlets);
      for (std::uint32_t t = 0; t < branches_[b].target_count; ++t)
        flood.arrive(targets_[branches_[b].first_target + t], going);
    }
  });
}

// From all outlets against the moves.
void RouteLanes::lead_back() {
  struct Way {
    std::uint32_t from = 0;
    Word waters = 0;
  };
  std::vector<std::uint32_t> first_into(positions_.size() + 1, 0);
  for (auto to : targets_) ++first_into[to + 1];
  for (std::size_t i = 0; i < positions_.size(); ++i) first_into[i + 1] += first_into[i];
  std::vector<Way> into(targets_.size());
  auto next_into = first_into;
  for (std::uint32_t from = 0; from < spots_.size(); ++from) {
    auto const& spot = spots_[from];
    for (auto b = spot.first_branch; b < spot.first_branch + spot.branch_count; ++b) {
      for (std::uint32_t t = 0; t < branches_[b].target_count; ++t) {
        into[next_into[targets_[branches_[b].first_target + t]]++] = {from, branches_[b].waters};
      }
    }
  }
  leads_.assign(positions_.size(), 0);
  Flood flood(leads_);
  for (std::uint32_t i = 0; i < spots_.size(); ++i) {
    if (spots_[i].outlet != no_outlet) flood.arrive(i, feel_.all());
  }
  flood.run([&](std::uint32_t at, Word waters) {
    for (auto w = first_into[at]; w < first_into[at + 1]; ++w)
      flood.arrive(into[w].from, into[w].waters & waters);
  });
}

void RouteLanes::tell(model::InletId inlet, std::size_t outlets) {
  auto& told = told_[inlet];
  told.outlets.resize(outlets);
  for (std::size_t i = 0; i < positions_.size(); ++i) {
    if (spots_[i].outlet != no_outlet) told.outlets[spots_[i].outlet] |= reached(inlet, i);
    if (spots_[i].is_outside) told.spills |= reached(inlet, i);
    told.is_unclean |= trapped(inlet, i) | hanging(inlet, i);
  }
  told.is_unclean |= told.spills;
  for (auto waters : told.outlets) {
    told.split |= told.delivered & waters;
    told.delivered |= waters;
  }
}

Verdict RouteLanes::verdict(model::InletId inlet, std::size_t lane) const {
  auto const& told = told_[inlet];
  auto const is_in = [lane](Word waters) { return (waters >> lane & 1) != 0; };
  if (!is_in(told.delivered)) return Verdict::lost;
  if (is_in(told.split)) return Verdict::split;
  return is_in(told.is_unclean) ? Verdict::doubtful : Verdict::certain;
}

std::vector<Word> RouteLanes::alike(model::InletId inlet) const {
  std::vector<Word> groups{feel_.all()};
  auto const divide = [&](Word by) {
    auto const count = groups.size();
    for (std::size_t g = 0; g < count; ++g) {
      auto const part = groups[g] & by;
      if (part == 0 || part == groups[g]) continue;
      groups[g] &= ~by;
      groups.push_back(part);
    }
  };
  for (std::size_t i = 0; i < positions_.size(); ++i) {
    auto const& spot = spots_[i];
    divide(reached(inlet, i));
    for (auto b = spot.first_branch; b < spot.first_branch + spot.branch_count; ++b)
      divide(branches_[b].waters & reached(inlet, i));
  }
  return groups;
}

}  // namespace leat::body
