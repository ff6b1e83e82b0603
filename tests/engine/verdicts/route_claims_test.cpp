#include "engine/verdicts/claims.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::Claim;
using verdicts::Truthfulness;
using Flips = std::vector<model::SignalId>;

namespace {

model::Expectation after(Claim claim, Flips events, std::optional<std::uint32_t> outlet = {}) {
  model::Expectation expectation{.claim = claim, .outlet = outlet};
  expectation.events = std::move(events);
  return expectation;
}

}  // namespace

TEST_CASE("after events: the claim is about the state and the water they lead to") {
  // As built the body stays; with lever 0 on it goes to A, and after that also with it off.
  auto const design = remembering();
  CHECK(verdict(design, after(Claim::reaches, {0}, 0)) == Truthfulness::holds);
  CHECK(verdict(design, after(Claim::reaches, {0, 0}, 0)) == Truthfulness::holds);
  CHECK(verdict(design, after(Claim::reaches, {1}, 0)) == Truthfulness::violated);
  CHECK(verdict(design, after(Claim::reaches_nothing, {1})) == Truthfulness::holds);
  CHECK(verdict(design, after(Claim::reaches, {1, 1, 0, 1, 0}, 0)) == Truthfulness::holds);
}

TEST_CASE("after events, violated: the state, the flips, and what the body does there") {
  auto const broken = judged(remembering(), after(Claim::reaches_nothing, {0, 0}));
  CHECK(broken.verdict == Truthfulness::violated);
  REQUIRE(broken.example);
  CHECK(broken.example->flips == Flips{0, 0});
  CHECK(broken.example->row == 0);
  CHECK_FALSE(broken.example->is_fresh);
  CHECK(broken.failing.count() == 1);
  CHECK(broken.failing.contains(0));
  CHECK(broken.inlet == 0u);
  CHECK(broken.profile == 0u);
  REQUIRE(broken.route);
  CHECK(broken.route->verdict == body::Verdict::certain);
  CHECK(broken.route->outlets == std::vector<model::OutletId>{0});
}

TEST_CASE("after events: a button or plate is pressed and let go") {
  for (auto kind : {model::SignalKind::button, model::SignalKind::plate}) {
    auto design = remembering();
    design.circuit.signals[0] = {kind, false, 0, 0, 20};
    auto const broken = judged(design, after(Claim::reaches_nothing, {0}));
    CHECK(broken.verdict == Truthfulness::violated);
    REQUIRE(broken.example);
    CHECK(broken.example->row == 0);
    CHECK(broken.example->flips == Flips{0, 0});
  }
}

TEST_CASE("after events: undecided where the logic never gets quiet") {
  auto design = remembering();
  add_restless(design, 1);
  CHECK(verdict(design, after(Claim::reaches, {0}, 0)) == Truthfulness::holds);
  auto const unknown = judged(design, after(Claim::reaches, {0, 1}, 0));
  CHECK(unknown.verdict == Truthfulness::undecided);
  CHECK(unknown.never_rests);
  CHECK_FALSE(judged(design, after(Claim::reaches, {0}, 0)).never_rests);
}

TEST_CASE("over all combinations: what some water breaks is broken, though each row can keep it") {
  auto const design = remembering();
  auto const off = ~logic::RowSet::where_on(2, 0);
  auto const lost = judged(design, {.claim = Claim::reaches, .outlet = 0});
  CHECK(lost.verdict == Truthfulness::violated);
  CHECK(lost.failing == off);
  CHECK(lost.example->flips.empty());
  CHECK(lost.route->verdict == body::Verdict::lost);
}

TEST_CASE(
    "over all combinations: the example is a way to a water that breaks the claim by itself") {
  auto design = remembering();
  auto const off = design.circuit.add({model::Operator::negation, 0, 0});
  auto const broken =
      judged(design, {.claim = Claim::never_reaches, .outlet = 0, .condition = off});
  CHECK(broken.verdict == Truthfulness::violated);
  REQUIRE(broken.example);
  CHECK(broken.example->flips == Flips{0, 0});
  CHECK_FALSE(broken.example->is_fresh);
  REQUIRE(broken.route);
  CHECK(broken.route->verdict == body::Verdict::certain);
  // What only the waters together break: no single one is doubtful.
  auto const united = judged(design, {.claim = Claim::never_doubtful, .condition = off});
  CHECK(united.verdict == Truthfulness::violated);
  CHECK(united.example->row == 0);
  CHECK(united.route->verdict == body::Verdict::doubtful);
}
