#include "engine/works/claims.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using logic::Diagram;
using model::Claim;
using verdicts::Truthfulness;

namespace {

// A side turn on lever 0: straight on to outlet 0, or aside to outlet 1.
model::Design turn() {
  return drawn::draw({{"wi..sa..A", "XXXXbXXXX", "XXXX.XXXX", "XXXXBXXXX"},
                      {"...swa...", "XXXXbXXXX", "XXXX.XXXX", "XXXX.XXXX"}});
}

verdicts::Truthfulness judged(model::Design design, model::Expectation expectation) {
  design.expectations.push_back(std::move(expectation));
  return works::judge_works(design).expectations.front().verdict;
}

}  // namespace

TEST_CASE("claims: a plant of one junction is judged as the junction itself") {
  auto const design = turn();
  auto const works = works::judge_works(design);
  auto const plain = judge(design);
  REQUIRE(works.passages.size() == design.inlets.size());
  auto& diagram = works.conditions->diagram();
  for (logic::Row row = 0; row < plain.combinations.reachable.row_count(); ++row) {
    std::vector<bool> at;
    for (auto variable : works.conditions->variables())
      at.push_back((row >> (plain.variables.size() - 1 - variable) & 1u) != 0);
    auto const& route = plain.routes.at(plain.combinations.situation_of_row[row], 0, 0);
    for (auto outlet : route.outlets)
      CHECK(diagram.is_true(works.passages[0].reaching(outlet), at));
    CHECK(diagram.is_true(works.passages[0].trapped, at) == !route.trapped.empty());
  }
}

TEST_CASE("claims: holds, violated with the nearest combination, and empty") {
  auto design = turn();
  auto const lever = design.circuit.add({model::Operator::signal, 0, 0});
  auto const off = design.circuit.add({model::Operator::negation, lever, 0});
  auto const never = design.circuit.add({model::Operator::conjunction, lever, off});
  model::Expectation reaches{Claim::reaches, 0, {}, 0, off};
  CHECK(judged(design, reaches) == Truthfulness::holds);
  reaches.condition = lever;
  CHECK(judged(design, reaches) == Truthfulness::violated);
  reaches.condition = never;
  CHECK(judged(design, reaches) == Truthfulness::empty);
  design.expectations.push_back({Claim::never_reaches, 0, {}, 1, std::nullopt});
  auto const works = works::judge_works(design);
  REQUIRE(works.expectations.front().verdict == Truthfulness::violated);
  REQUIRE(works.expectations.front().instance);
  CHECK(works.expectations.front().instance->front());
}

TEST_CASE("claims: what is promised never to come about is not held against a plant") {
  auto design = turn();
  auto const lever = design.circuit.add({model::Operator::signal, 0, 0});
  model::Expectation const expectation{Claim::reaches, 0, {}, 0, std::nullopt};
  CHECK(judged(design, expectation) == Truthfulness::violated);
  design.circuit.nevers.push_back(lever);
  CHECK(judged(design, expectation) == Truthfulness::holds);
}

TEST_CASE("claims: the nearest assignment changes as little as can be") {
  Diagram diagram(1000);
  auto const a = diagram.variable(0), b = diagram.variable(1), c = diagram.variable(2);
  auto const f = diagram.either(diagram.both(a, b), diagram.both(!a, c));
  CHECK(works::nearest(diagram, f, {true, false, false}) == works::Instance{true, true, false});
  CHECK(works::nearest(diagram, f, {false, false, false}) == works::Instance{false, false, true});
  CHECK(works::nearest(diagram, f, {false, true, true}) == works::Instance{false, true, true});
  CHECK_FALSE(works::nearest(diagram, Diagram::never, {false, false, false}));
}

TEST_CASE("conditions: no flip leads back to as built where that is promised away") {
  model::Circuit circuit;
  circuit.signals = {{model::SignalKind::lever, true, 0, 0, 0}, {}};
  std::vector<model::ExpressionId> roots;
  for (model::SignalId s : {0u, 1u}) roots.push_back(circuit.add({model::Operator::signal, s, 0}));
  circuit.nevers = {roots[0]};
  works::Conditions conditions(circuit, roots, {0, 1}, std::size_t{1} << 12);
  auto& diagram = conditions.diagram();
  auto const first = diagram.variable(0), second = diagram.variable(1);
  CHECK(conditions.reachable() == diagram.either(!first, !second));
  CHECK(conditions.flippable(0) == diagram.both(first, !second));
  CHECK(conditions.flippable(1) == !first);
}

TEST_CASE("claims: a finding that may be told for nothing leaves open whether it is there") {
  auto design = turn();
  model::Expectation finds{Claim::finds, {}, {}, {}, std::nullopt};
  finds.kind = model::FindingKind::pinned;
  design.expectations.push_back(finds);
  auto judged = works::judge_works(design);
  CHECK(works::judge_claims(design, judged).front().verdict == Truthfulness::violated);
  auto const pinned = findings::finding_of(model::FindingKind::pinned);
  judged.findings.push_back({pinned, Diagram::always, false});
  CHECK(works::judge_claims(design, judged).front().verdict == Truthfulness::undecided);
  judged.findings.back().is_proved = true;
  CHECK(works::judge_claims(design, judged).front().verdict == Truthfulness::holds);
}
