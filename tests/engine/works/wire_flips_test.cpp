#include "engine/works/wire_flips.hpp"

#include <algorithm>

#include "tests/support/catch.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using works::Change;

namespace {

// Levers 0 and 1, and a wire that is on while the first is on and the second is not.
struct Held {
  wired::Circuit levers;
  model::SignalId first = levers.input(), second = levers.input();
  model::SignalId wire =
      levers.wire(levers.conjunction(levers.of(first), levers.negation(levers.of(second))));
  model::ExpressionId root = levers.of(wire), never = levers.conjunction(root, levers.of(first));

  std::vector<Change> bringing(Change change, bool is_promised = false) {
    auto circuit = levers.built();
    if (is_promised) circuit.nevers.push_back(never);
    works::Conditions conditions(circuit, {root}, {}, 1000);
    auto flips = works::flips_that_bring(change, circuit, conditions);
    std::sort(flips.begin(), flips.end());
    return flips;
  }
};

}  // namespace

TEST_CASE("wire flips: an input is flipped itself") {
  Held held;
  CHECK(held.bringing({held.second, false}) == std::vector<Change>{{held.second, false}});
}

TEST_CASE("wire flips: each input changes a wire in its own sense") {
  Held held;
  CHECK(held.bringing({held.wire, true}) ==
        std::vector<Change>{{held.first, true}, {held.second, false}});
  CHECK(held.bringing({held.wire, false}) ==
        std::vector<Change>{{held.first, false}, {held.second, true}});
}

TEST_CASE("wire flips: what is promised never to come about is brought by nothing") {
  Held held;
  CHECK(held.bringing({held.wire, true}, true).empty());
}
