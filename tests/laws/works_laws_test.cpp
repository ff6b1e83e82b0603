#include <algorithm>
#include <set>

#include "engine/explore/states.hpp"
#include "engine/logic/restriction.hpp"
#include "engine/works/claims.hpp"
#include "engine/works/judge_works.hpp"
#include "engine/works/knowledge.hpp"
#include "tests/laws/random_plant.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

constexpr unsigned plants = 120;
// With sanitizers the code is looked at, not the law: a part of the rows runs through all of it.
#ifdef LEAT_SANITIZED
constexpr unsigned rows_drawn = 20;
#else
constexpr unsigned rows_drawn = 120;
#endif

// What one row of the whole drawing, judged as one junction, says of a body: from inlet to inlet
// along the joins.
struct Whole {
  std::set<model::OutletId> outlets;
  bool is_trapped = false, spills = false, is_unsure = false;
};

class Enumeration {
 public:
  explicit Enumeration(model::Design const& plant)
      : next_(plant.outlets.size()), judged_(judge(plant, budget())) {
    for (auto const& join : plant.joins) next_[join.outlet] = join.inlet;
  }

  Judgement const& judged() const { return judged_; }

  Whole whole(logic::Row row, model::InletId inlet, model::ProfileId profile) const {
    Whole whole;
    auto const met = closure(row, inlet, profile);
    for (auto i : met) {
      auto const& route = this->route(row, i, profile);
      whole.is_trapped = whole.is_trapped || !route.trapped.empty();
      whole.spills = whole.spills || route.spills;
      whole.is_unsure = whole.is_unsure || route.is_unsure;
      for (auto outlet : route.outlets) {
        if (!next_[outlet]) whole.outlets.insert(outlet);
      }
      bool const is_nowhere = i == inlet && route.outlets.empty() && route.trapped.empty();
      if (!is_nowhere && !comes_out(closure(row, i, profile), row, profile))
        whole.is_trapped = true;
    }
    return whole;
  }

 private:
  static Budget budget() {
    Budget budget;
    budget.switching.most_switchings = 0;
    return budget;
  }

  tables::Route const& route(logic::Row row, model::InletId inlet, model::ProfileId profile) const {
    return judged_.routes.at(judged_.combinations.situation_of_row[row], inlet, profile);
  }

  std::set<model::InletId> closure(logic::Row row, model::InletId from,
                                   model::ProfileId profile) const {
    std::set<model::InletId> met{from};
    std::vector<model::InletId> open{from};
    while (!open.empty()) {
      auto const inlet = open.back();
      open.pop_back();
      for (auto outlet : route(row, inlet, profile).outlets) {
        if (next_[outlet] && met.insert(*next_[outlet]).second) open.push_back(*next_[outlet]);
      }
    }
    return met;
  }

  bool comes_out(std::set<model::InletId> const& met, logic::Row row,
                 model::ProfileId profile) const {
    return std::any_of(met.begin(), met.end(), [&](model::InletId inlet) {
      auto const& outlets = route(row, inlet, profile).outlets;
      return std::any_of(outlets.begin(), outlets.end(),
                         [&](model::OutletId outlet) { return !next_[outlet]; });
    });
  }

  std::vector<std::optional<model::InletId>> next_;
  Judgement judged_;
};

// The row's values by level of the works' diagram.
std::vector<bool> assignment(Judgement const& judged, logic::Row row,
                             std::vector<model::SignalId> const& variables) {
  std::vector<bool> values;
  auto const count = judged.variables.size();
  for (auto variable : variables) {
    auto const at = static_cast<std::size_t>(
        std::find(judged.variables.begin(), judged.variables.end(), variable) -
        judged.variables.begin());
    values.push_back(at < count && (row >> (count - 1 - at) & 1u) != 0);
  }
  return values;
}

struct Difference {
  std::size_t rows = 0, missing = 0, more = 0;
};

// Row by row, in everything that a passage tells.
Difference compare(unsigned seed, Enumeration const& flat, works::WorksJudgement const& composed) {
  auto& diagram = composed.conditions->diagram();
  auto const& variables = composed.conditions->variables();
  Difference found;
  for (logic::Row row = 0; row < flat.judged().combinations.reachable.row_count(); ++row) {
    auto const at = assignment(flat.judged(), row, variables);
    bool const is_reachable = flat.judged().combinations.reachable.contains(row);
    if (is_reachable) REQUIRE(diagram.is_true(composed.conditions->reachable(), at));
    if (!is_reachable) continue;
    ++found.rows;
    for (auto const& passage : composed.passages) {
      auto const whole = flat.whole(row, passage.inlet, passage.profile);
      std::set<model::OutletId> outlets;
      for (auto const& end : passage.ends) {
        if (diagram.is_true(end.condition, at)) outlets.insert(end.outlet);
      }
      auto const is = [&](works::Function f) { return diagram.is_true(f, at); };
      INFO("seed " << seed << ", row " << row << ", inlet " << passage.inlet);
      if (!std::includes(outlets.begin(), outlets.end(), whole.outlets.begin(),
                         whole.outlets.end()) ||
          (whole.is_trapped && !is(passage.trapped)) || (whole.spills && !is(passage.spilled)) ||
          (whole.is_unsure && !is(passage.unsure)))
        ++found.missing;
      if (outlets != whole.outlets || is(passage.trapped) != whole.is_trapped ||
          is(passage.spilled) != whole.spills || is(passage.unsure) != whole.is_unsure)
        ++found.more;
    }
  }
  return found;
}

Difference compare(unsigned seed, bool has_memory) {
  auto const plant = laws::random_plant(seed, has_memory);
  Enumeration const flat(plant);
  auto const composed = works::judge_works(plant);
  REQUIRE(flat.judged().is_decided);
  REQUIRE(composed.too_large.empty());
  return compare(seed, flat, composed);
}

}  // namespace

TEST_CASE("law: composed conditions are what enumerating the whole drawing gives, row by row") {
  std::size_t rows = 0;
  for (unsigned seed = 0; seed < plants; ++seed) {
    auto const found = compare(seed, false);
    INFO("seed " << seed);
    CHECK(found.more == 0);
    rows += found.rows;
  }
  CHECK(rows > 5 * plants);
}

namespace {

std::set<model::SignalId> that_nothing_follows(model::Design const& plant,
                                               works::WorksJudgement const& judged) {
  std::set<model::SignalId> unused;
  for (model::SignalId signal = 0; signal < plant.circuit.signals.size(); ++signal)
    if (!judged.conditions->follows_from(signal)) unused.insert(signal);
  return unused;
}

}  // namespace

// The search for both ends as soon as all is settled: here everything is looked at.
TEST_CASE("law: outlets never reached and idle inputs are those that all passages together show") {
  std::size_t unreached_count = 0, joined_count = 0, behind_count = 0, idle_count = 0;
  for (unsigned seed = 0; seed < 2 * plants; ++seed) {
    auto const plant = laws::random_plant(seed, false);
    auto const judged = works::judge_works(plant);
    std::set<model::OutletId> unreached, told_unreached;
    std::set<model::SignalId> idle, told_idle;
    for (model::OutletId outlet = 0; outlet < plant.outlets.size(); ++outlet)
      unreached.insert(outlet);
    for (auto const& join : plant.joins) unreached.erase(join.outlet);
    auto const& variables = judged.conditions->variables();
    idle.insert(variables.begin(), variables.end());
    auto const unused = that_nothing_follows(plant, judged);
    idle.insert(unused.begin(), unused.end());
    for (auto const& passage : judged.passages) {
      std::vector<works::Function> functions{passage.trapped, passage.spilled, passage.unsure,
                                             passage.barred};
      for (auto const& end : passage.ends) {
        functions.push_back(end.condition);
        if (end.condition != logic::Diagram::never) unreached.erase(end.outlet);
      }
      for (auto level : logic::support(judged.conditions->diagram(), functions))
        idle.erase(variables[level]);
    }
    std::size_t behind = 0;
    for (auto const& [finding, condition, is_proved, can_be_parted] : judged.findings) {
      if (finding.kind == model::FindingKind::unreached_outlet) {
        CHECK(told_unreached.insert(finding.outlets.front()).second);
        behind += static_cast<std::size_t>(finding.measured);
      }
      if (finding.kind == model::FindingKind::idle_signal)
        told_idle.insert(finding.signals.front());
    }
    for (std::uint32_t part = 0; part < judged.parts.size(); ++part) {
      auto const& first = works::first_copy(judged.islands, part).outlets;
      for (auto const& finding : judged.parts[part].findings) {
        if (finding.kind != model::FindingKind::unreached_outlet) continue;
        behind += static_cast<std::size_t>(finding.measured);
        auto const own = std::find(first.begin(), first.end(), finding.outlets.front());
        for (auto const& copy : judged.islands.copies) {
          if (copy.part != part) continue;
          auto const outlet = copy.outlets[static_cast<std::size_t>(own - first.begin())];
          CHECK(told_unreached.insert(outlet).second);  // once
        }
      }
    }
    INFO("seed " << seed);
    // What is told is never reached, joined or not; of the plant's own outlets each is told, or
    // counted behind one that is.
    for (auto const& [outlet, condition] : judged.passages.everything_reached())
      CHECK((condition == logic::Diagram::never || told_unreached.count(outlet) == 0));
    for (auto const& join : plant.joins) joined_count += told_unreached.erase(join.outlet);
    CHECK(std::includes(unreached.begin(), unreached.end(), told_unreached.begin(),
                        told_unreached.end()));
    CHECK(told_unreached.size() + behind == unreached.size());
    unreached_count += unreached.size();
    behind_count += behind;
    bool const are_all = works::was_looked_for(model::FindingKind::idle_signal, judged);
    if (judged.may_be_wider) {
      CHECK(told_idle.empty());
      CHECK_FALSE(are_all);
      continue;
    }
    // What moves a trap that no passage tells of is idle in passages alone: then not all are told.
    CHECK(std::includes(idle.begin(), idle.end(), told_idle.begin(), told_idle.end()));
    if (are_all) CHECK(told_idle == idle);
    idle_count += told_idle.size();
  }
  CHECK(unreached_count > 0);
  CHECK(joined_count > 0);
  CHECK(behind_count > 0);
  CHECK(idle_count > 0);
}

namespace {

// State by state and event by event: what findings/idle_signals.cpp says of a junction's rows, of
// the passages of a plant.
std::set<model::SignalId> idle_by_states(model::Design const& plant,
                                         works::WorksJudgement const& judged) {
  auto& diagram = judged.conditions->diagram();
  auto const& variables = judged.conditions->variables();
  logic::Machine const machine(plant.circuit);
  auto const states = explore::reach(machine);
  std::vector<std::vector<bool>> values, happening;
  for (auto code : states.codes) {
    auto const signals = machine.values(code);
    auto& own = values.emplace_back();
    for (auto variable : variables) own.push_back(signals[variable]);
    auto& what = happening.emplace_back();
    for (auto const& passage : judged.passages) {
      for (auto f : {passage.trapped, passage.spilled, passage.unsure, passage.barred})
        what.push_back(diagram.is_true(f, own));
      for (auto const& end : passage.ends) what.push_back(diagram.is_true(end.condition, own));
    }
  }
  auto const is_memory = [&](std::size_t level) {
    return plant.circuit.signals[variables[level]].is_memory();
  };
  auto const is_memory_changed = [&](std::uint32_t a, std::uint32_t b) {
    bool is_changed = false;
    for (std::size_t level = 0; level < variables.size(); ++level)
      is_changed = is_changed || (is_memory(level) && values[a][level] != values[b][level]);
    return is_changed;
  };
  auto idle = that_nothing_follows(plant, judged);
  for (std::size_t level = 0; level < variables.size(); ++level) {
    bool is_idle = !is_memory(level);
    for (std::uint32_t a = 0; a < states.size() && !is_memory(level); ++a) {
      auto const event = static_cast<std::size_t>(
          std::find(machine.variables().begin(), machine.variables().end(), variables[level]) -
          machine.variables().begin());
      auto const b = states.after(a, event);
      REQUIRE(b != explore::States::none);
      is_idle = is_idle && !is_memory_changed(a, b) && happening[a] == happening[b];
    }
    bool has_pair = false, is_same = true;
    for (std::uint32_t a = 0; a < states.size() && is_memory(level); ++a) {
      for (std::uint32_t b = 0; b < states.size(); ++b) {
        auto other = values[a];
        other[level] = !other[level];
        if (other != values[b]) continue;
        has_pair = true;
        is_same = is_same && happening[a] == happening[b];
      }
    }
    if (is_idle || (has_pair && is_same)) idle.insert(variables[level]);
  }
  return idle;
}

}  // namespace

TEST_CASE("law: with memory, too, idle signals are those that no event shows") {
  std::size_t looked_for = 0, idle_count = 0, idle_memory = 0;
  for (unsigned seed = 0; seed < 3 * plants; ++seed) {
    auto const plant = laws::random_plant(seed, true);
    auto const judged = works::judge_works(plant);
    bool const are_all = works::was_looked_for(model::FindingKind::idle_signal, judged);
    CHECK_FALSE((are_all && judged.may_be_wider));
    if (judged.may_be_wider) continue;
    std::set<model::SignalId> told;
    for (auto const& [finding, condition, is_proved, can_be_parted] : judged.findings) {
      if (finding.kind == model::FindingKind::idle_signal) told.insert(finding.signals.front());
    }
    INFO("seed " << seed);
    auto const idle = idle_by_states(plant, judged);
    CHECK(std::includes(idle.begin(), idle.end(), told.begin(), told.end()));
    if (are_all) CHECK(told == idle);
    looked_for += are_all ? 1 : 0;
    idle_count += told.size();
    for (auto signal : told) idle_memory += plant.circuit.signals[signal].is_memory() ? 1 : 0;
  }
  CHECK(looked_for > plants);
  CHECK(idle_count > 0);
  CHECK(idle_memory > 0);
}

TEST_CASE("law: with memory the composition leaves nothing out that enumerating finds") {
  for (unsigned seed = 0; seed < plants; ++seed) {
    INFO("seed " << seed);
    CHECK(compare(seed, true).missing == 0);
  }
}

namespace {

// Every island, however few signals it depends on.
works::PlantBudget by_regions() {
  works::PlantBudget budget;
  budget.part.most_variables = 0;
  return budget;
}

}  // namespace

TEST_CASE("law: regions of one island give what enumerating it gives, row by row") {
  std::size_t rows = 0, narrower = 0, exact = 0;
  for (unsigned seed = 0; seed < rows_drawn; ++seed) {
    auto const plant = laws::random_row(seed);
    Enumeration const flat(plant);
    INFO("seed " << seed);
    REQUIRE(flat.judged().is_decided);
    if (!flat.judged().histories.is_followed) continue;
    auto const composed = works::judge_works(plant, by_regions());
    REQUIRE(composed.too_large.empty());
    REQUIRE(composed.too_large_regions.empty());
    auto const found = compare(seed, flat, composed);
    CHECK(found.missing == 0);
    if (!composed.may_be_wider) CHECK(found.more == 0);
    exact += composed.may_be_wider ? 0u : 1u;
    rows += found.rows;
    for (auto const& walk : composed.by_regions) {
      if (!walk) continue;
      for (auto const& region : walk->regions) {
        auto const own = region.region.signals.size();
        narrower += region.is_met && own < plant.circuit.signals.size() ? 1u : 0u;
      }
    }
  }
  CHECK(rows > 50 * rows_drawn);
  CHECK(narrower > rows_drawn);
  CHECK(exact > rows_drawn / 2);
}

TEST_CASE("law: with memory regions leave nothing out that enumerating the island finds") {
  std::size_t remembering = 0;
  for (unsigned seed = 0; seed < rows_drawn; ++seed) {
    auto const plant = laws::random_row(seed, true);
    Enumeration const flat(plant);
    INFO("seed " << seed);
    REQUIRE(flat.judged().is_decided);
    if (!flat.judged().histories.is_followed) continue;
    auto const composed = works::judge_works(plant, by_regions());
    REQUIRE(composed.too_large_regions.empty());
    CHECK(compare(seed, flat, composed).missing == 0);
    for (auto const& walk : composed.by_regions)
      remembering += walk && walk->remembering() > 0 ? 1u : 0u;
  }
  CHECK(remembering > 0);
}

TEST_CASE("law: what is seen to be reached is reached, in combinations that can come about") {
  std::size_t seen_count = 0, led_count = 0;
  for (unsigned seed = 0; seed < plants; ++seed) {
    auto const plant = laws::random_plant(seed, seed % 2 == 1);
    auto const judged = works::judge_works(plant);
    auto& diagram = judged.conditions->diagram();
    auto const reachable = judged.conditions->reachable();
    auto const variables = judged.conditions->variables().size();
    auto seen = judged.passages.reached(variables, reachable);
    std::set<model::OutletId> reached;
    for (auto const& [outlet, condition] : judged.passages.everything_reached()) {
      if (diagram.both(condition, reachable) != logic::Diagram::never) reached.insert(outlet);
    }
    INFO("seed " << seed);
    for (model::OutletId outlet = 0; outlet < plant.outlets.size(); ++outlet) {
      if (!seen.is_seen(outlet)) continue;
      CHECK(reached.count(outlet) == 1);
      ++seen_count;
    }
    for (logic::Diagram::Level level = 0; level < variables; ++level) {
      if (!seen.depth(level)) continue;
      CHECK(diagram.is_true(reachable, seen.combination(level)));
      ++led_count;
    }
  }
  CHECK(seen_count > plants);
  CHECK(led_count > plants);
}
