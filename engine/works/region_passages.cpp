#include "engine/works/region_passages.hpp"

#include <algorithm>
#include <map>

#include "engine/logic/restriction.hpp"
#include "engine/works/passages.hpp"

namespace leat::works {

using logic::Diagram;
using model::InletId;
using model::ProfileId;

namespace {

// When a region has these waters, where one copy stands.
class RegionConditions {
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

 private:
  // One condition for each choice: together they hold always, and exclude each other.
  void choose_among(std::size_t most, Diagram::Level& level) {
    auto& diagram = conditions_->diagram();
    choices_.assign(1, Diagram::always);
    while (choices_.size() < most) {
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
  std::vector<std::vector<std::uint32_t>> unlike_;  // by situation: what its waters are like
  std::map<std::vector<std::uint32_t>, Function> known_;
};

// The positions of one copy as a network: inlets are entrances (inlet * profiles + profile), then
// spots; outlets are steps to the spots, then the outlets of the part.
class SpotNetwork {
 public:
  SpotNetwork(Copy const& copy, model::Design const& part, RegionWalk const& walk,
              Conditions& conditions)
      : part_(part), walk_(walk), diagram_(conditions.diagram()) {
    first_choice_ = static_cast<Diagram::Level>(conditions.variables().size());
    auto level = first_choice_;
    for (std::size_t r = 0; r < walk.regions.size(); ++r)
      regions_.emplace_back(walk.regions[r], walk.likeness[r], copy, conditions, level);
    for (auto at = first_choice_; at < level; ++at) choices_.push_back(at);
    entrances_ = part.inlets.size() * part.profiles.size();
    ways_.resize(entrances_ + walk.spots.size());
    for (InletId inlet = 0; inlet < part.inlets.size(); ++inlet) {
      for (ProfileId profile = 0; profile < part.profiles.size(); ++profile)
        add_entrance(inlet, profile);
    }
    for (std::uint32_t spot = 0; spot < walk.spots.size(); ++spot) add_spot(spot);
  }

  std::vector<std::vector<Way>> passed(Copy const& copy, Conditions& conditions) {
    std::vector<std::optional<model::Join>> joins(walk_.spots.size() + part_.outlets.size());
    for (std::uint32_t spot = 0; spot < walk_.spots.size(); ++spot)
      joins[spot] = model::Join{spot, static_cast<InletId>(entrances_) + spot, {}};
    Passages const passages(Network(std::move(ways_), std::move(joins)), conditions);
    std::vector<std::vector<Way>> result(entrances_);
    for (auto const& passage : passages) {
      if (passage.inlet < entrances_) result[passage.inlet] = ways_of(passage, copy);
    }
    return result;
  }

 private:
  void add_entrance(InletId inlet, ProfileId profile) {
    auto& ways = ways_[inlet * part_.profiles.size() + profile];
    auto fits_nowhere = Diagram::always;
    for (auto const& entry : walk_.entries) {
      if (entry.inlet != inlet || entry.profile != profile) continue;
      Way way;
      way.condition = walk_.regions[entry.region].is_solved
                          ? regions_[entry.region].of(entry.waters)
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

  void add_spot(std::uint32_t number) {
    auto const& spot = walk_.spots[number];
    auto& ways = ways_[entrances_ + number];
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

  std::vector<Way> ways_of(Passage const& passage, Copy const& copy) {
    std::vector<Way> ways;
    auto const add = [&](Function condition) -> Way& {
      Way way;
      way.condition = logic::exists(diagram_, condition, choices_);
      return ways.emplace_back(std::move(way));
    };
    for (auto const& end : passage.ends) {
      auto const outlet = end.outlet - static_cast<model::OutletId>(walk_.spots.size());
      add(end.condition).outlets.push_back(copy.outlets[outlet]);
    }
    add(passage.trapped).has_trap = true;
    add(passage.spilled).spills = true;
    add(passage.unsure).is_unsure = true;
    add(passage.barred).is_barred = true;
    auto& unknown = add(passage.unknown);
    unknown.is_unknown = true;
    unknown.outlets = copy.outlets;
    std::sort(unknown.outlets.begin(), unknown.outlets.end());
    std::erase_if(ways, [](Way const& way) { return way.condition == Diagram::never; });
    return ways;
  }

  model::Design const& part_;
  RegionWalk const& walk_;
  Diagram& diagram_;
  Diagram::Level first_choice_ = 0;
  std::vector<Diagram::Level> choices_;
  std::vector<RegionConditions> regions_;
  std::size_t entrances_ = 0;
  std::vector<std::vector<Way>> ways_;
};

}  // namespace

std::vector<std::vector<Way>> region_passages(Copy const& copy, model::Design const& part,
                                              RegionWalk const& walk, Conditions& conditions) {
  return SpotNetwork(copy, part, walk, conditions).passed(copy, conditions);
}

}  // namespace leat::works
