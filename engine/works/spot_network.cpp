#include "engine/works/spot_network.hpp"

#include <algorithm>
#include <map>

#include "engine/logic/restriction.hpp"

namespace leat::works {

using logic::Diagram;
using model::InletId;
using model::ProfileId;

// When a region has these waters, where one copy stands.
class SpotNetwork::RegionConditions {
 public:
  // `level`: of the first variable that is free to choose by; moved on past those taken.
  RegionConditions(SolvedRegion const& region, std::vector<std::uint32_t> const& likeness,
                   Copy const& copy, Conditions& conditions, Diagram::Level& level)
      : combinations_(&region.judged.combinations), likeness_(&likeness), conditions_(&conditions) {
    if (!region.is_solved) return;
    inputs_ = inputs_of(copy, region.own_variables, conditions);
    std::size_t most = 1;
    for (auto const& waters : combinations_->situations) {
      auto& own = unlike_.emplace_back();
      for (auto water : waters) own.push_back(likeness[water]);
      std::sort(own.begin(), own.end());
      own.erase(std::unique(own.begin(), own.end()), own.end());
      most = std::max(most, own.size());
    }
    choose_among(most, level);
  }

  // `waters` ascending, and with each of them all that are alike.
  Function of(std::vector<std::uint32_t> const& waters) {
    auto const [entry, is_new] = known_.try_emplace(waters, Diagram::never);
    if (is_new) entry->second = found(waters);
    return entry->second;
  }

  std::vector<Diagram::Level> const& levels() const { return levels_; }

 private:
  // One condition for each choice: together they hold always, and exclude each other.
  void choose_among(std::size_t most, Diagram::Level& level) {
    auto& diagram = conditions_->diagram();
    choices_.assign(1, Diagram::always);
    while (choices_.size() < most) {
      levels_.push_back(level);
      auto const bit = diagram.variable(level++);
      auto const count = choices_.size();
      for (std::size_t c = 0; c < count; ++c) {
        choices_.push_back(diagram.both(choices_[c], bit));
        choices_[c] = diagram.both(choices_[c], !bit);
      }
    }
  }

  Function found(std::vector<std::uint32_t> const& waters) {
    auto& diagram = conditions_->diagram();
    std::vector<bool> is_meant(likeness_->size(), false);
    for (auto water : waters) is_meant[(*likeness_)[water]] = true;
    auto all = Diagram::never;
    for (std::size_t choice = 0; choice < choices_.size(); ++choice) {
      auto const rows = combinations_->rows_where([&](std::uint32_t situation) {
        auto const& own = unlike_[situation];
        return is_meant[own[std::min(choice, own.size() - 1)]];
      });
      all = diagram.either(all, diagram.both(choices_[choice], conditions_->of(rows, inputs_)));
    }
    return all;
  }

  explore::Combinations const* combinations_;
  std::vector<std::uint32_t> const* likeness_;
  Conditions* conditions_;
  std::vector<Function> inputs_, choices_;
  std::vector<Diagram::Level> levels_;              // of the bits that choices are made of
  std::vector<std::vector<std::uint32_t>> unlike_;  // by situation: what its waters are like
  std::map<std::vector<std::uint32_t>, Function> known_;
};

SpotNetwork::~SpotNetwork() = default;

SpotNetwork::SpotNetwork(Copy const& copy, model::Design const& part, RegionWalk const& walk,
                         Conditions& conditions)
    : copy_(copy),
      part_(part),
      walk_(walk),
      diagram_(conditions.diagram()),
      entrance_count_(part.inlets.size() * part.profiles.size()) {
  auto const first_choice = static_cast<Diagram::Level>(conditions.variables().size());
  auto level = first_choice;
  for (std::size_t r = 0; r < walk.regions.size(); ++r)
    regions_.emplace_back(walk.regions[r], walk.likeness[r], copy, conditions, level);
  for (auto at = first_choice; at < level; ++at) choices_.push_back(at);
  passages_ = Passages(network(), conditions);
}

// Inlets are entrances, then spots; outlets are steps to the spots, then the outlets of the part.
Network SpotNetwork::network() {
  auto const spot_count = walk_.spots.size();
  std::vector<std::vector<Way>> ways(entrance_count_ + spot_count);
  for (InletId inlet = 0; inlet < part_.inlets.size(); ++inlet) {
    for (ProfileId profile = 0; profile < part_.profiles.size(); ++profile)
      add_entrance(inlet, profile, ways);
  }
  std::vector<std::optional<model::Join>> joins(spot_count + part_.outlets.size());
  for (std::uint32_t spot = 0; spot < spot_count; ++spot) {
    add_spot(spot, ways[entrance_count_ + spot]);
    joins[spot] = model::Join{spot, static_cast<InletId>(entrance_count_) + spot, {}};
  }
  return {std::move(ways), std::move(joins)};
}

void SpotNetwork::add_entrance(InletId inlet, ProfileId profile,
                               std::vector<std::vector<Way>>& all) {
  auto& ways = all[inlet * part_.profiles.size() + profile];
  auto fits_nowhere = Diagram::always;
  for (auto const& entry : walk_.entries) {
    if (entry.inlet != inlet || entry.profile != profile) continue;
    Way way;
    way.condition = walk_.regions[entry.region].is_solved ? regions_[entry.region].of(entry.waters)
                                                          : Diagram::always;
    way.outlets.push_back(entry.spot);
    fits_nowhere = diagram_.both(fits_nowhere, !way.condition);
    ways.push_back(std::move(way));
  }
  Way barred;
  barred.condition = fits_nowhere;
  barred.is_barred = true;
  ways.push_back(std::move(barred));
}

void SpotNetwork::add_spot(std::uint32_t number, std::vector<Way>& ways) {
  auto const& spot = walk_.spots[number];
  auto const first_outlet = static_cast<model::OutletId>(walk_.spots.size());
  if (!walk_.regions[spot.region].is_solved) {
    Way way;
    way.condition = Diagram::always;
    way.is_unknown = true;
    for (model::OutletId o = 0; o < part_.outlets.size(); ++o)
      way.outlets.push_back(first_outlet + o);
    ways.push_back(std::move(way));
    return;
  }
  for (auto const& branch : spot.branches) {
    Way way;
    way.condition = regions_[spot.region].of(branch.waters);
    way.outlets.assign(branch.next.begin(), branch.next.end());
    for (auto outlet : branch.outlets) way.outlets.push_back(first_outlet + outlet);
    way.spills = branch.spills;
    way.is_unsure = branch.is_unsure;
    ways.push_back(std::move(way));
  }
}

std::vector<std::vector<Way>> SpotNetwork::ways() const {
  std::vector<std::vector<Way>> all;
  for (std::size_t entrance = 0; entrance < entrance_count_; ++entrance)
    all.push_back(ways_of(passage(entrance)));
  return all;
}

std::vector<Way> SpotNetwork::ways_of(Passage const& passage) const {
  std::vector<Way> ways;
  auto const add = [&](Function condition) -> Way& {
    Way way;
    way.condition = possible(condition);
    return ways.emplace_back(std::move(way));
  };
  for (auto const& end : passage.ends) add(end.condition).outlets.push_back(outlet(end));
  add(passage.trapped).has_trap = true;
  add(passage.spilled).spills = true;
  add(passage.unsure).is_unsure = true;
  add(passage.barred).is_barred = true;
  auto& unknown = add(passage.unknown);
  unknown.is_unknown = true;
  unknown.outlets = copy_.outlets;
  std::sort(unknown.outlets.begin(), unknown.outlets.end());
  std::erase_if(ways, [](Way const& way) { return way.condition == Diagram::never; });
  return ways;
}

Function SpotNetwork::parting(std::size_t entrance, std::uint32_t region) const {
  auto const& levels = regions_[region].levels();
  if (levels.empty()) return Diagram::never;
  auto const& passage = passages_[entrance];
  auto differing = Diagram::never;
  auto const add = [&](Function condition) {
    auto const sometimes = logic::exists(diagram_, condition, levels),
               not_always = logic::exists(diagram_, !condition, levels);
    differing = diagram_.either(differing, diagram_.both(sometimes, not_always));
  };
  for (auto const& end : passage.ends) add(end.condition);
  for (auto condition : {passage.trapped, passage.spilled, passage.unsure, passage.barred})
    add(condition);
  return possible(differing);
}

std::vector<Function> SpotNetwork::coming(std::size_t entrance) const {
  std::vector<Function> coming(walk_.spots.size(), Diagram::never);
  auto const inlet = static_cast<InletId>(entrance);
  for (auto const& [outlet, condition] : passages_.everything_reached_from(inlet, 0))
    if (outlet < coming.size()) coming[outlet] = condition;
  return coming;
}

Function SpotNetwork::during(std::uint32_t region, std::uint32_t water) const {
  return regions_[region].of({water});
}

// A body goes round where it never ends; the loop is closed where it can come back from wherever it
// gets to.
std::vector<Function> SpotNetwork::on_closed_loops(std::vector<bool> const& is_met) const {
  auto const inlet_of = [&](std::uint32_t spot) {
    return static_cast<InletId>(entrance_count_) + spot;
  };
  std::map<std::uint32_t, std::map<std::uint32_t, Function>> reached;  // by spot going round
  for (std::uint32_t spot = 0; spot < is_met.size(); ++spot) {
    if (!is_met[spot] || passages_.from(Prospect::round, inlet_of(spot), 0) == Diagram::never)
      continue;
    auto& own = reached[spot];
    for (auto const& [to, condition] : passages_.everything_reached_from(inlet_of(spot), 0))
      own.emplace(to, condition);
  }
  std::vector<Function> loops(is_met.size(), Diagram::never);
  for (auto const& [spot, own] : reached) {
    auto closed = passages_.from(Prospect::round, inlet_of(spot), 0);
    for (auto const& [to, condition] : own) {
      auto back = Diagram::never;
      if (auto const there = reached.find(to); there != reached.end()) {
        if (auto const way = there->second.find(spot); way != there->second.end())
          back = way->second;
      }
      closed = diagram_.both(closed, diagram_.either(!condition, back));
    }
    loops[spot] = closed;
  }
  return loops;
}

model::OutletId SpotNetwork::outlet(Passage::End const& end) const {
  return copy_.outlets[end.outlet - walk_.spots.size()];
}

Function SpotNetwork::possible(Function condition) const {
  return logic::exists(diagram_, condition, choices_);
}

}  // namespace leat::works
