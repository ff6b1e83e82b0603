#include "engine/explore/switching.hpp"

#include <algorithm>

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using explore::Danger;

namespace {

struct Traced {
  model::Design design;
  logic::Machine machine{design.circuit};
  explore::Histories histories = explore::trace(design, machine, explore::reach(machine), {});

  explore::Switching run(std::uint32_t change) const {
    return explore::switching(design, histories, change);
  }
};

Danger const* danger(explore::Switching const& switching, Danger::Kind kind) {
  auto const found = std::find_if(switching.dangers.begin(), switching.dangers.end(),
                                  [&](Danger const& d) { return d.kind == kind; });
  return found == switching.dangers.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("a gate that closes takes the cell of a body, and the water from those behind it") {
  Traced const traced{drawn::draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}})};
  REQUIRE(traced.histories.changes.size() == 2);
  auto const closing = traced.run(0);
  auto const* crushed = danger(closing, Danger::Kind::crushed);
  REQUIRE(crushed);
  CHECK(crushed->cells == std::vector<model::Cell>{traced.design.grid.cell({3, 0, 1})});
  REQUIRE(danger(closing, Danger::Kind::trapped));
  CHECK_FALSE(closing.clearing);
}

TEST_CASE("a gate that opens before waiting bodies harms none") {
  Traced const traced{drawn::draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}})};
  auto const opening = traced.run(1);
  CHECK(opening.dangers.empty());
  CHECK(opening.clearing);
}

TEST_CASE("a change that bodies do not meet harms none") {
  Traced const traced{drawn::draw({{"XXXXXXXXX"}, {"wi..A.X.a"}, {"......X.a"}})};
  for (std::uint32_t change = 0; change < traced.histories.changes.size(); ++change) {
    CHECK(traced.run(change).dangers.empty());
  }
}

TEST_CASE("clearing time: the longest trip under one water, none where a body is held") {
  Traced const traced{drawn::draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}})};
  CHECK(explore::clearing_time(traced.design, traced.histories, 0) == 5 * 19);
  CHECK_FALSE(explore::clearing_time(traced.design, traced.histories, 1));
}
