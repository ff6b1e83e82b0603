#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;

namespace {
std::vector<model::SignalId> idle(std::vector<findings::Finding> const& findings) {
  std::vector<model::SignalId> signals;
  for (auto const& finding : findings) {
    if (finding.kind == FindingKind::idle_signal) signals.push_back(finding.signals.at(0));
  }
  return signals;
}
using Signals = std::vector<model::SignalId>;

// Two gates in a run, shut by latches 0 and 1; levers 2 and 3 are added, and then drive the latches
// as the caller says: set and reset of each.
struct Gated {
  model::Design design = draw({{"XXXXXXXX"}, {"wi.a.cA."}, {"...a.c.X"}});
  model::ExpressionId up = add(design, {}), down = add(design, {});

  void latch(model::SignalId id, model::ExpressionId set, model::ExpressionId reset,
             bool starts_on = false) {
    design.circuit.signals[id] = {model::SignalKind::latch, starts_on, set, reset, 0};
  }
  model::ExpressionId without(model::ExpressionId one, model::ExpressionId other) {
    auto const off = design.circuit.add({model::Operator::negation, other, 0});
    return design.circuit.add({model::Operator::conjunction, one, off});
  }
};
}  // namespace

TEST_CASE("idle signal: a lever that changes no route") {
  CHECK(idle(judge(draw({{"XXXXX"}, {"wi..A"}, {"....."}})).findings) == Signals{0, 1});
  CHECK(idle(judge(draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}})).findings) == Signals{1});
  // Lever 0 switches a cell, but not one that matters.
  CHECK(idle(judge(draw({{"XXXXXX"}, {"wi..Aa"}, {"......"}})).findings) == Signals{0, 1});
}

TEST_CASE("idle signal: a wire that nothing uses") {
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  design.circuit.signals.push_back({model::SignalKind::wire, false, 1});
  design.circuit.wire_order = {2};
  CHECK(idle(judge(design).findings) == Signals{1, 2});
  design.expectations = {{.claim = model::Claim::never_split,
                          .condition = design.circuit.add({model::Operator::signal, 2, 0})}};
  CHECK(idle(judge(design).findings) == Signals{1});
}

TEST_CASE("idle signal: a lever on which only a spill or an unsure move hangs is not idle") {
  Surveyed const surveyed(draw({{"ac"}}));
  tables::RouteTable routes(4, 1, 1);
  for (std::size_t situation = 0; situation < 4; ++situation) {
    routes.at(situation, 0, 0) = {body::Verdict::split, {0, 1}, {}, situation >= 2, false};
  }
  CHECK(idle(findings::idle_signals(surveyed.explored, routes)) == Signals{1});
  for (std::size_t situation = 0; situation < 4; ++situation) {
    routes.at(situation, 0, 0) = {body::Verdict::split, {0, 1}, {}, false, situation % 2 == 1};
  }
  CHECK(idle(findings::idle_signals(surveyed.explored, routes)) == Signals{0});
}

TEST_CASE("idle signal: memory that is one of a set of which one is on is not idle") {
  // No two combinations differ in one of the latches alone.
  Gated gated;
  auto const first = gated.without(gated.up, gated.down),
             second = gated.without(gated.down, gated.up);
  gated.latch(0, first, second, true);
  gated.latch(1, second, first);
  CHECK(idle(judge(gated.design).findings).empty());
}

TEST_CASE("idle signal: memory that nothing uses, with the lever that only it hangs on") {
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto const kept = add(design, {model::SignalKind::latch, false, 1, 0, 0});
  CHECK(idle(judge(design).findings) == Signals{1, 2});
  // A condition is a use, of the lever through the memory; but the memory still changes no route,
  // and differs alone.
  design.expectations = {{.claim = model::Claim::never_split, .condition = kept}};
  CHECK(idle(judge(design).findings) == Signals{2});
  // What shuts the way is neither.
  for (int z : {1, 2}) put(design, {2, 0, z}, {model::material::rock, model::material::open, kept});
  CHECK(idle(judge(design).findings).empty());
}

TEST_CASE("idle signal: memory that switches what does not matter, and differs alone") {
  auto design = draw({{"XXXXXXX"}, {"wi.A.Xa"}, {"....XXX"}});
  auto const up = add(design, {}), down = add(design, {});
  design.circuit.signals[0] = {model::SignalKind::latch, false, up, down, 0};
  CHECK(idle(judge(design).findings) == Signals{0, 1});
}

TEST_CASE("idle signal: memory that other memory looks at is not idle, nor what sets it") {
  // Latch 2 only arms latch 0, which shuts the gate; lever 1 only arms.
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto const fires = add(design, {});  // lever 2
  auto const off = design.circuit.add({model::Operator::negation, 1, 0});
  auto const armed = add(design, {model::SignalKind::latch, false, 1, off, 0});
  auto const both = design.circuit.add({model::Operator::conjunction, armed, fires});
  auto const released = design.circuit.add({model::Operator::negation, fires, 0});
  design.circuit.signals[0] = {model::SignalKind::latch, false, both, released, 0};
  CHECK(idle(judge(design).findings).empty());
}

TEST_CASE("idle signal: an input after which the logic never gets quiet is not idle") {
  auto design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  add_restless(design, 1);
  CHECK(idle(judge(design).findings) == Signals{0, 2});  // the latch switches nothing
}
