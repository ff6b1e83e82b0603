#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

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
  auto const design = draw({{"ac"}});
  auto const combinations = explore::combine(design, logic::Truth(design.circuit, {0, 1}));
  tables::RouteTable routes(4, 1, 1);
  for (std::size_t setting = 0; setting < 4; ++setting) {
    routes.at(setting, 0, 0) = {body::Verdict::split, {0, 1}, {}, setting >= 2, false};
  }
  CHECK(idle(findings::idle_signals(design, combinations, routes)) == Signals{1});
  for (std::size_t setting = 0; setting < 4; ++setting) {
    routes.at(setting, 0, 0) = {body::Verdict::split, {0, 1}, {}, false, setting % 2 == 1};
  }
  CHECK(idle(findings::idle_signals(design, combinations, routes)) == Signals{0});
}
