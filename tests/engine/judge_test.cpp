#include "engine/judge.hpp"

#include <algorithm>

#include "engine/as_built.hpp"
#include "engine/logic/settled_circuit.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;
using Signals = std::vector<model::SignalId>;

namespace {

// Lever 0 shuts the way to A.
model::Design gated() { return draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}}); }

// With so many levers more, of which nothing depends.
model::Design with_idle_levers(int count) {
  auto design = gated();
  for (int i = 0; i < count; ++i) add(design, {});
  return design;
}

}  // namespace

TEST_CASE("the logic that is run: all of it while the variables fit, else what matters") {
  CHECK(logic::variables_of(circuit_to_run(with_idle_levers(14))).size() == 16);
  CHECK(logic::variables_of(circuit_to_run(with_idle_levers(15))) == Signals{0, 1});
  CHECK(logic::variables_of(circuit_to_run(gated(), 1)) == Signals{0, 1});
  CHECK(logic::variables_of(circuit_to_run(with_idle_levers(70))) == Signals{0, 1});
}

TEST_CASE("what matters: controls, conditions and what is accepted, through memory and wires") {
  auto design = with_idle_levers(20);  // levers 2 to 21
  auto const of = [&](model::SignalId s) {
    return design.circuit.add({model::Operator::signal, s, 0});
  };
  auto const latch = add(design, {model::SignalKind::latch, false, of(5), of(6), 0});
  auto const wire = add(design, {model::SignalKind::wire, false, of(9), 0, 0});
  add(design, {model::SignalKind::toggle, false, of(11), 0, 0});
  design.expectations = {{.claim = model::Claim::never_lost, .condition = latch}};
  design.acceptances = {{model::FindingKind::pinned, {}, wire}};
  CHECK(logic::variables_of(circuit_to_run(design)) == Signals{0, 1, 5, 6, 9, 22});
}

TEST_CASE("delays outside loops do not count against the variables") {
  auto design = gated();
  for (int i = 0; i < 40; ++i) add(design, {model::SignalKind::delay, false, 0, 0, 10});
  CHECK(logic::variables_of(circuit_to_run(design)).size() == 42);
  CHECK(judge(design).variables == Signals{0, 1});
  // Past what a machine holds the delays that nothing uses are held.
  for (int i = 0; i < 40; ++i) add(design, {model::SignalKind::delay, false, 0, 0, 10});
  CHECK(logic::variables_of(circuit_to_run(design)) == Signals{0, 1});
  CHECK(fits_machine(design));
}

TEST_CASE("whether a machine holds what matters") {
  auto design = gated();
  auto condition = model::ExpressionId{0};
  for (int i = 0; i < 62; ++i) {
    auto const lever = add(design, {});
    condition = design.circuit.add({model::Operator::disjunction, condition, lever});
  }
  design.expectations = {{.claim = model::Claim::never_lost, .condition = condition}};
  CHECK(fits_machine(design));  // 64
  CHECK_FALSE(judge(design).is_decided);
  auto const one_more = add(design, {});
  design.expectations[0].condition =
      design.circuit.add({model::Operator::disjunction, condition, one_more});
  CHECK_FALSE(fits_machine(design));
  auto const judgement = judge(design);
  CHECK_FALSE(judgement.is_decided);
  CHECK(judgement.variables.size() == 65);
  CHECK(judgement.findings.empty());
}

TEST_CASE("as built is what the signals come to before anything is done") {
  auto design = gated();
  design.circuit.signals[0].starts_on = true;
  auto const off = design.circuit.add({model::Operator::constant, 0, 0});
  auto const set = add(design, {model::SignalKind::latch, false, 0, off, 0});
  auto const next = add(design, {model::SignalKind::latch, false, set, off, 0});
  add(design, {model::SignalKind::latch, true, off, 0, 0});
  add(design, {model::SignalKind::toggle, true, next, 0, 0});
  std::vector<bool> const built{true, false, true, true, false, true};
  CHECK(as_built(design) == built);
  SECTION("also where the signals are too many for a machine") {
    auto condition = next;
    for (int i = 0; i < 70; ++i)
      condition = design.circuit.add({model::Operator::disjunction, condition, add(design, {})});
    design.expectations = {{.claim = model::Claim::never_lost, .condition = condition}};
    REQUIRE_FALSE(fits_machine(design));
    auto values = as_built(design);
    values.resize(built.size());
    CHECK(values == std::vector<bool>{true, false, true, true, true, true});
  }
  SECTION("what never gets quiet stays as it starts") {
    add_restless(design, 0);
    auto const values = as_built(design);
    for (std::size_t s = 0; s < values.size(); ++s)
      CHECK(values[s] == design.circuit.signals[s].starts_on);
  }
}

TEST_CASE("solved after flips: signals, cells and water, with the memory that they leave") {
  auto design = remembering();
  auto const never = design.circuit.add({model::Operator::constant, 0, 0});
  add(design, {model::SignalKind::latch, false, 0, never, 0});
  auto const after = solve_after(design, {0, 0});
  REQUIRE(after);
  CHECK(after->signals == std::vector<bool>{false, false, true});
  CHECK(water_row(*after, 0, 1) == "567SS7X");
  CHECK(after->arrangement.material_of(design.grid.cell({5, 0, 1})) == model::material::open);
  auto const at_once = solve_after(design, {});
  REQUIRE(at_once);
  CHECK(water_row(*at_once, 0, 1) == "567S76X");
  add_restless(design, 1);
  CHECK_FALSE(solve_after(design, {1}));
}

TEST_CASE("solved from dry: memory is what it is said to be, wires and delays follow") {
  auto design = remembering();
  add(design, {model::SignalKind::latch, false, 1, 0, 0});
  add(design, {model::SignalKind::delay, false, 0, 0, 10});
  auto const solved = solve(design, {true, false, true, false});
  CHECK(solved.signals == std::vector<bool>{true, false, true, true});
  CHECK(water_row(solved, 0, 1) == "567SSSX");
}

TEST_CASE("findings come worst first, then by kind and place, each with a condition and a way") {
  auto design = gated();
  auto const judgement = judge(design);
  REQUIRE(judgement.findings.size() > 3);
  for (std::size_t i = 0; i < judgement.findings.size(); ++i) {
    auto const& finding = judgement.findings[i];
    auto const stated = logic::rows_of(finding.condition, 2);
    CHECK((stated & judgement.combinations.reachable) == finding.rows);
    CHECK_FALSE(finding.examples.empty());
    if (i == 0) continue;
    auto const& before = judgement.findings[i - 1];
    CHECK(before.severity >= finding.severity);
    if (before.severity == finding.severity) {
      CHECK(before.kind <= finding.kind);
      if (before.kind == finding.kind) CHECK(before.cells <= finding.cells);
    }
  }
}

TEST_CASE("conditions of findings are free where no combination is reached") {
  // A latch that follows lever 0: whatever shows with the lever on needs not name the latch.
  auto design = gated();
  auto const off = design.circuit.add({model::Operator::negation, 0, 0});
  add(design, {model::SignalKind::latch, false, 0, off, 0});
  auto const judgement = judge(design);
  auto const& pinned = only(judgement, model::FindingKind::pinned);
  CHECK(pinned.rows.count() == 2);
  REQUIRE(pinned.condition.size() == 1);
  CHECK((pinned.condition[0].care == 1 || pinned.condition[0].care == 4));
}

TEST_CASE(
    "what lies deeper than a body feels is looked at in every water, though it goes alike in all") {
  // The body floats at the edge of a shaft, whose bottom lever 0 opens by one cell; what the other
  // levers open lies in the rock.
  auto design = drawn::draw(
      {{"XXdX"}, {"XXXb"}, {"XXX."}, {"XXX."}, {"XXX."}, {"XXX."}, {"XXX."}, {"wi.."}, {"...A"}});
  auto const third = drawn::add(design, {model::SignalKind::lever, false, 0});
  drawn::put(design, {0, 0, 0}, {model::material::open, model::material::rock, third});
  auto const judgement = judge(design);
  REQUIRE(judgement.histories.waters.size() == 8);
  auto const& edge = drawn::only(judgement, model::FindingKind::open_edge);
  CHECK(edge.waters.size() == 8);
  CHECK(edge.measured == 6);
}

TEST_CASE("progress: changes of the water while they are found, each water, each switching") {
  std::vector<std::pair<std::size_t, std::size_t>> told;
  auto const judgement = judge(remembering(), {}, [&](std::size_t done, std::size_t total) {
    told.emplace_back(done, total);
  });
  auto const first_of_all =
      std::find_if(told.begin(), told.end(), [](auto const& step) { return step.second != 0; });
  CHECK(static_cast<std::size_t>(first_of_all - told.begin()) == judgement.histories.changes);
  auto const switchings = judgement.switchings.all.size();
  REQUIRE(switchings > 0);
  REQUIRE(told.end() - first_of_all == static_cast<std::ptrdiff_t>(3 + switchings));
  CHECK(first_of_all[2] == std::pair<std::size_t, std::size_t>{3, 3});
  CHECK(told.back() == std::pair{switchings, switchings});
}

TEST_CASE("what progress throws ends the judging and comes through") {
  struct Enough {};
  int told = 0;
  CHECK_THROWS_AS(judge(remembering(), {},
                        [&](std::size_t, std::size_t) {
                          if (++told == 2) throw Enough{};
                        }),
                  Enough);
  CHECK(told == 2);
}
