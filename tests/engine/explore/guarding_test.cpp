#include "engine/explore/guarding.hpp"

#include <algorithm>

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;
using explore::Danger;
using Flips = std::vector<model::SignalId>;

namespace {

std::vector<explore::Guard> guards_of(Surveyed const& surveyed) {
  return explore::guards(surveyed.explored, surveyed.switchings(), surveyed.trips());
}

bool has(explore::Guard const& guard, Danger::Kind kind) {
  return std::any_of(guard.threats.begin(), guard.threats.end(),
                     [&](auto const& threat) { return threat.danger.kind == kind; });
}

// Lever 0 shuts the run near its end, lever 1 near its start.
model::Design shut_twice() { return draw({{"XXXXXXXXX"}, {"wi.c.aA.X"}, {"...c.a..X"}}); }

}  // namespace

TEST_CASE("guards: each change of an input, first on, then off, with the rows before it") {
  Surveyed const surveyed(draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}}));
  auto const guards = guards_of(surveyed);
  REQUIRE(guards.size() == 2);  // lever 1 moves no cell
  auto const on = logic::RowSet::where_on(2, 0);
  CHECK(guards[0].event == 0);
  CHECK(guards[0].goes_on);
  CHECK(guards[0].rows == ~on);
  CHECK(guards[1].event == 0);
  CHECK_FALSE(guards[1].goes_on);
  CHECK(guards[1].rows == on);
}

TEST_CASE("guards: how long to wait before, and until bodies have left after") {
  Surveyed const surveyed(draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}}));
  auto const guards = guards_of(surveyed);
  CHECK(guards[0].wait == 5 * 19);  // a whole trip
  CHECK_FALSE(guards[0].clearing);  // behind the gate they stay
  CHECK(has(guards[0], Danger::Kind::crushed));
  CHECK(has(guards[0], Danger::Kind::trapped));
  CHECK(guards[0].example.flips.empty());
  CHECK_FALSE(guards[1].wait);
  CHECK(guards[1].clearing);
  CHECK(guards[1].threats.empty());
  CHECK(guards[1].example.flips == Flips{0});
}

TEST_CASE("guards: the longest wait and clearing of all states, dangers of one kind united") {
  Surveyed const surveyed(shut_twice());
  auto const guards = guards_of(surveyed);
  REQUIRE(guards.size() == 4);
  CHECK(guards[2].event == 1);
  CHECK(guards[2].goes_on);
  CHECK(guards[2].rows == ~logic::RowSet::where_on(2, 1));
  // With lever 0 on bodies never leave, so no wait is long enough; without, one is.
  CHECK_FALSE(guards[2].wait);
  for (auto const& guard : guards) {
    for (std::size_t i = 0; i < guard.threats.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        auto const &a = guard.threats[i].danger, &b = guard.threats[j].danger;
        CHECK_FALSE((a.kind == b.kind && a.inlet == b.inlet && a.profile == b.profile &&
                     a.outlet == b.outlet));
      }
      auto const& cells = guard.threats[i].danger.cells;
      CHECK(std::is_sorted(cells.begin(), cells.end()));
    }
  }
}

TEST_CASE("guards: cells of a danger are those of every state it threatens in") {
  Surveyed const surveyed(shut_twice());
  auto const all = surveyed.switchings();
  auto const guards = explore::guards(surveyed.explored, all, surveyed.trips());
  for (auto const& switching : all.all) {
    for (auto const& occurrence : switching.occurrences) {
      auto const node = occurrence.first;
      auto const event = occurrence.second;
      auto const goes_on =
          (surveyed.states.codes[surveyed.histories.nodes[node].state] >> event & 1u) == 0;
      auto const guard = std::find_if(guards.begin(), guards.end(), [&](auto const& g) {
        return g.event == event && g.goes_on == goes_on;
      });
      REQUIRE(guard != guards.end());
      for (auto const& danger : switching.dangers) {
        auto const same =
            std::find_if(guard->threats.begin(), guard->threats.end(), [&](auto const& threat) {
              auto const& d = threat.danger;
              return d.kind == danger.kind && d.inlet == danger.inlet &&
                     d.profile == danger.profile && d.outlet == danger.outlet;
            });
        REQUIRE(same != guard->threats.end());
        auto const& cells = same->danger.cells;
        CHECK(same->rows.contains(surveyed.explored.row_of(node)));
        CHECK(std::includes(cells.begin(), cells.end(), danger.cells.begin(), danger.cells.end()));
      }
    }
  }
}

TEST_CASE("guards: each threat has its own rows and the nearest state in which it threatens") {
  // Lever 0 moves a cell aside always, and the gate in the run only while lever 1 is on.
  auto design = draw({{"XXXXXXXXXX"}, {"wi....A.Xa"}, {"........XX"}});
  auto const both = design.circuit.add({model::Operator::conjunction, 0, 1});
  for (int z : {1, 2}) put(design, {3, 0, z}, {model::material::rock, model::material::open, both});
  Surveyed const surveyed(design);
  auto const guards = guards_of(surveyed);
  REQUIRE(guards.size() == 4);
  CHECK(guards[0].goes_on);
  CHECK(guards[0].rows == ~logic::RowSet::where_on(2, 0));
  CHECK(has(guards[0], Danger::Kind::crushed));
  // The cell aside moves as built already; bodies are met only once lever 1 is on.
  CHECK(guards[0].example.flips.empty());
  for (auto const& threat : guards[0].threats) {
    CHECK(threat.example.flips == Flips{1});
    CHECK(threat.rows == (~logic::RowSet::where_on(2, 0) & logic::RowSet::where_on(2, 1)));
  }
  // Lever 1 moves the gate only while lever 0 is on.
  CHECK(guards[2].rows == (logic::RowSet::where_on(2, 0) & ~logic::RowSet::where_on(2, 1)));
  CHECK(guards[2].example.flips == Flips{0});
}
