#include "engine/explore/train.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;

namespace {
explore::TrainRun run_train(model::Design const& design, explore::TrainOrder const& order) {
  return explore::run_train(design, logic::Machine(design.circuit), order);
}
}  // namespace

TEST_CASE("a train on a straight run arrives in order, each after the same time") {
  auto const design = drawn::draw({{"XXXXXXXX"}, {"wi....A."}, {"........"}});
  explore::TrainOrder order;
  order.count = 3;
  order.interval = 40;
  auto const run = run_train(design, order);
  REQUIRE(run.bodies.size() == 3);
  CHECK(run.delivered == std::vector<std::uint32_t>{0, 1, 2});
  CHECK_FALSE(run.had_choice);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(run.bodies[i].entered == static_cast<int>(i) * 40);
    CHECK(run.bodies[i].ended - run.bodies[i].entered == 5 * 19);
    CHECK(run.bodies[i].outlet == model::OutletId{0});
  }
}

TEST_CASE("a body that never arrives is told where it stands when the time is over") {
  // A clock goes on, so that nothing is ever at rest for good.
  auto design = drawn::draw({{"XXXXXXXX"}, {"wi...X.A"}, {".....X.."}});
  design.circuit.signals[1] = {model::SignalKind::clock, false, 0, 0, 10};
  explore::TrainOrder order;
  order.most_ticks = 500;
  auto const run = run_train(design, order);
  REQUIRE(run.bodies.size() == 1);
  CHECK(run.delivered.empty());
  CHECK(run.bodies[0].end == body::End::none);
  CHECK(run.bodies[0].ended == 500);
  CHECK(run.bodies[0].cell == design.grid.cell({4, 0, 1}));
}

TEST_CASE("a body that stands for good is told so, whether or not the time is over") {
  auto const design = drawn::draw({{"XXXXXXXX"}, {"wi...X.A"}, {".....X.."}});
  explore::TrainOrder order;
  order.most_ticks = 500;
  auto const run = run_train(design, order);
  REQUIRE(run.bodies.size() == 1);
  CHECK(run.bodies[0].end == body::End::none);
  CHECK(run.bodies[0].cell == design.grid.cell({4, 0, 1}));
  CHECK(run.bodies[0].ended == run.ticks);
  CHECK(run.ticks >= 3 * 19);
  CHECK(run.ticks <= 500);
}

TEST_CASE("a train meets what was flipped before, and the water as it then rests") {
  auto const design = drawn::draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}});
  explore::TrainOrder order;
  order.most_ticks = 500;
  CHECK(run_train(design, order).delivered.size() == 1);
  order.flips = {0};
  auto const shut = run_train(design, order);
  CHECK(shut.delivered.empty());
  CHECK(shut.bodies.at(0).cell == design.grid.cell({2, 0, 1}));
  order.flips = {0, 1, 0};
  CHECK(run_train(design, order).delivered.size() == 1);
}

TEST_CASE("a toggle behind a plate deals bodies to two outlets in turn") {
  auto design = drawn::draw(
      {{"wi...pa....A", "XXXXXbXXXXXX", "XXXXX.XXXXXX", "XXXXX.XXXXXX", "XXXXXBXXXXXX"},
       {"....swa.....", "XXXXXbXXXXXX", "XXXXX.XXXXXX", "XXXXX.XXXXXX", "XXXXX.XXXXXX"}});
  // The plate under the source drives what lever 0 drove: as built off, so the first body goes on
  // to B.
  auto& circuit = design.circuit;
  circuit.signals[1] = {model::SignalKind::plate, false, 0, 0, 0};
  auto const pressed = circuit.add({model::Operator::signal, 1, 0});
  circuit.signals[0] = {model::SignalKind::toggle, false, pressed, 0, 0};
  design.plates = {{1, {design.grid.cell({5, 0, 0})}}};
  explore::TrainOrder order;
  order.count = 4;
  order.interval = 400;
  auto const run = run_train(design, order);
  REQUIRE(run.delivered.size() == 4);
  std::vector<model::OutletId> dealt;
  for (auto body : run.delivered) dealt.push_back(*run.bodies[body].outlet);
  CHECK(dealt == std::vector<model::OutletId>{1, 0, 1, 0});
}
