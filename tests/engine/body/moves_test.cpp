#include "engine/body/moves.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

// Every move of the model's appendix, by its number there.
using namespace leat;
using namespace leat::drawn;
using model::Side;

namespace {

using Moves = std::vector<std::string>;

model::Profile const walker{};
model::Profile const hopper{.footprint = 1, .height = 1};
model::Profile const crawler{.footprint = 2, .height = 1};
model::Profile const ox{.footprint = 2, .height = 2};
model::Profile const stone{.footprint = 1, .height = 2, .floats = false};

// A shaft of single cells, lowest first, rock around it.
std::vector<Level> shaft(std::string const& cells) {
  std::vector<Level> levels;
  for (char cell : cells) levels.push_back({std::string{cell}});
  return levels;
}

// A body two cells wide needs every cell twice over.
std::vector<Level> doubled(std::vector<Level> const& levels) {
  std::vector<Level> wide;
  for (auto const& level : levels) {
    wide.emplace_back();
    for (auto const& row : level) wide.back().insert(wide.back().end(), 2, row);
  }
  return wide;
}

Moves moves(std::vector<Level> const& levels, model::Profile profile, model::Place at,
            Side side = Side::none, int fallen = 0) {
  return Poured(levels, profile).moves(at, side, fallen);
}

}  // namespace

// ---- 1: in no water, carried by nothing ----

TEST_CASE("1 fall: one cell down, counting up to four") {
  auto const deep = shaft("X.......");
  CHECK(moves(deep, walker, {0, 0, 6}) == Moves{"fall 0 0 5 none 1"});
  CHECK(moves(deep, walker, {0, 0, 5}, Side::none, 1) == Moves{"fall 0 0 4 none 2"});
  CHECK(moves(deep, walker, {0, 0, 5}, Side::none, 3) == Moves{"fall 0 0 4 none 4"});
  CHECK(moves(deep, walker, {0, 0, 5}, Side::none, 4) == Moves{"fall 0 0 4 none 4"});
}

TEST_CASE("1 fall: landing dry on what carries is forgotten") {
  CHECK(moves(shaft("X..."), walker, {0, 0, 2}, Side::none, 3) == Moves{"fall 0 0 1 none 0"});
  CHECK(moves(shaft("s..."), hopper, {0, 0, 1}) == Moves{"fall 0 0 0 none 0"});
}

TEST_CASE("1 drift: carried to a side, from the second cell fallen on, also one further") {
  std::vector<Level> const wide(6, {"...."});
  CHECK(moves(wide, walker, {1, 0, 4}, Side::east, 0) == Moves{"fall 1 0 3 east 1"});
  CHECK(moves(wide, walker, {1, 0, 3}, Side::east, 1) ==
        Moves{"fall 1 0 2 east 2", "drift 2 0 2 none 2"});
  CHECK(moves(wide, walker, {1, 0, 3}, Side::west, 3) ==
        Moves{"fall 1 0 2 west 4", "drift 0 0 2 none 4"});
  CHECK(moves(wide, walker, {1, 0, 3}, Side::none, 3) == Moves{"fall 1 0 2 none 4"});
}

TEST_CASE("1 drift: only where the body fits beside, over its whole height") {
  CHECK(moves({{"...."}, {"...."}, {"..X."}, {"...."}, {"...."}}, walker, {1, 0, 3}, Side::east,
              2) == Moves{"fall 1 0 2 east 3"});
  CHECK(moves({{"...."}, {"...."}, {"...."}, {"..X."}, {"...."}}, walker, {1, 0, 3}, Side::east,
              2) == Moves{"fall 1 0 2 east 3"});
  CHECK(moves({{"...."}, {"...."}, {"...."}, {"..X."}, {"...."}}, hopper, {1, 0, 3}, Side::east,
              2) == Moves{"fall 1 0 2 east 3", "drift 2 0 2 none 3"});
}

TEST_CASE("1 drift: footprint 2 moves as a whole") {
  auto const wide = doubled(std::vector<Level>(5, {"....."}));
  CHECK(moves(wide, crawler, {1, 0, 3}, Side::east, 1) ==
        Moves{"fall 1 0 2 east 2", "drift 2 0 2 none 2"});
  CHECK(moves(wide, ox, {1, 0, 3}, Side::west, 1) ==
        Moves{"fall 1 0 2 west 2", "drift 0 0 2 none 2"});
  CHECK(moves(wide, ox, {3, 0, 3}, Side::east, 1) == Moves{"fall 3 0 2 east 2"});
}

TEST_CASE("1 sink: n cells of fall into water sink up to min(n - 1, 3) below the surface") {
  auto const pool = shaft("XSSSSS....");
  auto const into = [&](int fallen) { return moves(pool, walker, {0, 0, 6}, Side::none, fallen); };
  CHECK(into(0) == Moves{"fall 0 0 5 none 0"});
  CHECK(into(1) == Moves{"fall 0 0 5 none 0", "sink 0 0 4 none 0"});
  CHECK(into(2) == Moves{"fall 0 0 5 none 0", "sink 0 0 4 none 0", "sink 0 0 3 none 0"});
  Moves const deepest{"fall 0 0 5 none 0", "sink 0 0 4 none 0", "sink 0 0 3 none 0",
                      "sink 0 0 2 none 0"};
  CHECK(into(3) == deepest);
  CHECK(into(4) == deepest);
}

TEST_CASE("1 sink: no deeper than the water") {
  CHECK(moves(shaft("XSS..."), walker, {0, 0, 3}, Side::none, 4) ==
        Moves{"fall 0 0 2 none 0", "sink 0 0 1 none 0"});
  CHECK(moves(shaft("X.S..."), walker, {0, 0, 3}, Side::none, 4) == Moves{"fall 0 0 2 none 0"});
}

TEST_CASE("1 sink: the carried side is kept under water, by drifting it is not") {
  std::vector<Level> const pit{{"XX"}, {"SS"}, {"SS"}, {".."}, {".."}, {".."}};
  CHECK(moves(pit, walker, {0, 0, 3}, Side::east, 1) ==
        Moves{"fall 0 0 2 east 2", "sink 0 0 1 east 2", "fall 1 0 2 none 0", "sink 1 0 1 none 0"});
}

TEST_CASE("1 fall: a wide body sinks while any of its feet is wet") {
  std::vector<Level> const pool{{"XX", "XX"}, {"SX", "XX"}, {"S.", ".."},
                                {"S.", ".."}, {"..", ".."}, {"..", ".."}};
  CHECK(moves(pool, crawler, {0, 0, 4}, Side::none, 4) ==
        Moves{"fall 0 0 3 none 0", "sink 0 0 2 none 0"});
}

// ---- 2: in no water, carried ----

TEST_CASE("2 rest: carried in no water there is no move") {
  CHECK(moves(shaft("X.."), walker, {0, 0, 1}).empty());
  CHECK(moves(shaft("g.."), walker, {0, 0, 1}, Side::none, 0).empty());
  CHECK(moves({{".X"}, {".."}, {".."}}, walker, {1, 0, 1}).empty());
  CHECK(moves(doubled({{".X"}, {".."}}), crawler, {0, 0, 1}).empty());  // one column carries
}

TEST_CASE("2 rest: a plate or a sign does not carry") {
  CHECK(moves({{"p"}, {"."}}, hopper, {0, 0, 1}) == Moves{"fall 0 0 0 none 0"});
}

// ---- 3a: rise ----

TEST_CASE("3a rise: water above the feet level is sure, whatever carries") {
  CHECK(moves(shaft("X.7.."), walker, {0, 0, 1}) == Moves{"rise 0 0 2 none 0"});
  CHECK(moves(shaft("XFF.."), walker, {0, 0, 1}) == Moves{"rise 0 0 2 none 0"});
  CHECK(moves(shaft("..F.."), walker, {0, 0, 1}) == Moves{"rise 0 0 2 none 0"});
}

TEST_CASE("3a rise: feet and the cell over the head wet: sure when nothing carries, else unsure") {
  CHECK(moves(shaft("FF.F."), walker, {0, 0, 1}) == Moves{"rise 0 0 2 none 0"});
  CHECK(moves(shaft("XF.F."), walker, {0, 0, 1}) == Moves{"rise 0 0 2 none 0 unsure"});
  CHECK(moves(shaft("gF.F."), walker, {0, 0, 1}) == Moves{"rise 0 0 2 none 0 unsure"});
  CHECK(moves(shaft("XF..F"), walker, {0, 0, 1}).empty());
}

TEST_CASE("3a rise: needs headroom") {
  CHECK(moves(shaft("XFF"), walker, {0, 0, 1}).empty());
  CHECK(moves(shaft("XFFX"), walker, {0, 0, 1}).empty());
  CHECK(moves(shaft("XFFs"), walker, {0, 0, 1}) == Moves{"rise 0 0 2 none 0"});
}

TEST_CASE("3a rise: a body one cell tall has no cell above its feet") {
  CHECK(moves(shaft("XFFF"), hopper, {0, 0, 1}).empty());
  CHECK(moves(shaft("SFSF"), hopper, {0, 0, 1}).empty());
}

TEST_CASE("3a rise: footprint 2 rises with any column wet, and when all fit") {
  std::vector<Level> const lift{{"XX", "XX"}, {"..", ".."}, {"..", ".S"}, {"..", ".."}};
  CHECK(moves(lift, ox, {0, 0, 1}) == Moves{"rise 0 0 2 none 0"});
  auto low = lift;
  low[3][0][0] = 'X';
  CHECK(moves(low, ox, {0, 0, 1}).empty());
}

TEST_CASE("3a rise: the side carried to is kept after a fall of at least two") {
  CHECK(moves(shaft("XSSS.."), walker, {0, 0, 1}, Side::east, 2) == Moves{"rise 0 0 2 east 2"});
}

// ---- 3b: push and climb ----

TEST_CASE("3b push: to the side, carried there from now on") {
  std::vector<Level> const run{{"XXXX"}, {"7654"}, {"...."}};
  CHECK(moves(run, walker, {1, 0, 1}) == Moves{"push 2 0 1 none 0"});
  CHECK(moves({{"XXX"}, {"76."}, {"..."}}, walker, {1, 0, 1}, Side::south, 2) ==
        Moves{"push 2 0 1 none 0"});
}

TEST_CASE("3b push: over an edge the side is kept") {
  CHECK(moves({{"XX."}, {"76."}, {"..."}}, walker, {1, 0, 1}) == Moves{"push 2 0 1 east 0"});
  CHECK(moves({{".XX"}, {".67"}, {"..."}}, walker, {1, 0, 1}) == Moves{"push 0 0 1 west 0"});
}

TEST_CASE("3b push: along both axes, x before y") {
  std::vector<Level> const corner{
      {"XXXX", "XXXX", "XXXX"}, {"X7XX", "765.", "X5.."}, {"....", "....", "...."}};
  CHECK(moves(corner, walker, {1, 1, 1}) == Moves{"push 2 1 1 none 0", "push 1 2 1 none 0"});
}

TEST_CASE("3b push: with the head alone in the water") {
  CHECK(moves({{"XXX"}, {"..."}, {"765"}, {"XXX"}}, walker, {1, 0, 1}) ==
        Moves{"push 2 0 1 none 0"});
}

TEST_CASE("3b climb: blocked at foot level, feet wet, one higher fits here and there: unsure") {
  std::vector<Level> const step{{"XXX"}, {"76X"}, {"..."}, {"..."}};
  CHECK(moves(step, walker, {1, 0, 1}) == Moves{"climb 2 0 2 none 0 unsure"});
  CHECK(moves({{"XXX"}, {"76X"}, {"..."}}, hopper, {1, 0, 1}) ==
        Moves{"climb 2 0 2 none 0 unsure"});
}

TEST_CASE("3b climb: not without headroom here, nor there, nor with dry feet") {
  CHECK(moves({{"XXX"}, {"76X"}, {"..."}, {".X."}}, walker, {1, 0, 1}).empty());
  CHECK(moves({{"XXX"}, {"76X"}, {"..."}, {"..X"}}, walker, {1, 0, 1}).empty());
  CHECK(moves({{"XXX"}, {"..X"}, {"76."}, {"..."}}, walker, {1, 0, 1}) ==
        Moves{"rise 1 0 2 none 0"});
}

TEST_CASE("3b climb: beside a rise both apply") {
  CHECK(moves({{"XXX"}, {"76X"}, {"76."}, {"..."}}, walker, {1, 0, 1}) ==
        Moves{"rise 1 0 2 none 0", "climb 2 0 2 none 0 unsure"});
}

TEST_CASE("3b push and climb: footprint 2 as a whole") {
  auto const run = doubled({{"XXXXX"}, {"7654."}, {"....."}});
  CHECK(moves(run, crawler, {1, 0, 1}) == Moves{"push 2 0 1 none 0"});
  CHECK(moves(doubled({{"XXXX"}, {"765X"}, {"...."}}), crawler, {1, 0, 1}) ==
        Moves{"climb 2 0 2 none 0 unsure"});
  auto one_row = run;
  one_row[1][1][3] = 'X';  // one of the two cells ahead is blocked
  CHECK(moves(one_row, crawler, {1, 0, 1}) == Moves{"climb 2 0 2 none 0 unsure"});
}

// ---- 3c: drift in still water ----

TEST_CASE("3c drift: no move, no push, carried to a side: one cell there, then forgotten") {
  std::vector<Level> const pit{{"XXX"}, {"SSS"}, {"..."}};
  CHECK(moves(pit, walker, {0, 0, 1}, Side::east, 2) == Moves{"drift 1 0 1 none 0"});
  CHECK(moves(pit, walker, {0, 0, 1}).empty());
  CHECK(moves({{"XXX"}, {"SXX"}, {"..."}}, walker, {0, 0, 1}, Side::east, 2).empty());
}

TEST_CASE("3c drift: not while there is a push or a rise") {
  CHECK(moves({{"XXX"}, {"S7."}, {"..."}}, walker, {1, 0, 1}, Side::west, 2) ==
        Moves{"push 2 0 1 none 0"});
  CHECK(moves({{"XXX"}, {"SSS"}, {"SSS"}, {"..."}}, walker, {1, 0, 1}, Side::east, 2) ==
        Moves{"rise 1 0 2 east 2"});
}

// ---- 4: forgetting ----

TEST_CASE("4 forgetting: in water a side is kept only after a fall of two, and counted as two") {
  Poured const poured({{"XX"}, {"SS"}, {".."}});
  auto const kept = [&](Side side, int fallen) {
    body::Position const at{poured.at({0, 0, 1}), side, static_cast<std::uint8_t>(fallen)};
    return body::forgetful(poured.here(), at);
  };
  auto const cell = poured.at({0, 0, 1});
  CHECK(kept(Side::east, 4) == body::Position{cell, Side::east, 2});
  CHECK(kept(Side::east, 2) == body::Position{cell, Side::east, 2});
  CHECK(kept(Side::east, 1) == body::Position{cell, Side::none, 0});
  CHECK(kept(Side::none, 4) == body::Position{cell, Side::none, 0});
}

TEST_CASE("4 forgetting: carried and dry all is forgotten, in the air nothing") {
  Poured const poured({{"X."}, {".."}, {".."}});
  body::Position const stands{poured.at({0, 0, 1}), Side::east, 3};
  CHECK(body::forgetful(poured.here(), stands) == body::Position{stands.feet, Side::none, 0});
  body::Position const falls{poured.at({1, 0, 1}), Side::east, 1};
  CHECK(body::forgetful(poured.here(), falls) == falls);
}

// ---- 5: a body that does not float ----

TEST_CASE("5 sink: a body that does not float goes down to the lowest wet cell") {
  CHECK(moves(shaft("XSSS.."), stone, {0, 0, 3}) == Moves{"sink 0 0 2 none 0"});
  CHECK(moves(shaft("XSSS.."), stone, {0, 0, 3}, Side::east, 2) == Moves{"sink 0 0 2 none 0"});
  CHECK(moves(shaft("XSSS.."), stone, {0, 0, 1}).empty());
  CHECK(moves(shaft(".SSS.."), stone, {0, 0, 1}).empty());  // below it is dry
}

TEST_CASE("5 sink: it is pushed only where it can sink no further, and never climbs") {
  std::vector<Level> const deep{{"XXX"}, {"765"}, {"765"}, {"..."}};
  CHECK(moves(deep, stone, {1, 0, 2}) == Moves{"sink 1 0 1 none 0"});
  CHECK(moves(deep, stone, {1, 0, 1}) == Moves{"push 2 0 1 none 0"});
  CHECK(moves({{"XXX"}, {"76X"}, {"..."}, {"..."}}, stone, {1, 0, 1}).empty());
}

TEST_CASE("5 sink: footprint 2 goes down while it fits and any cell below is wet") {
  auto heavy = crawler;
  heavy.floats = false;
  CHECK(moves({{"S.", ".."}, {"SS", "SS"}, {"..", ".."}}, heavy, {0, 0, 1}) ==
        Moves{"sink 0 0 0 none 0"});
  CHECK(moves({{"SX", ".."}, {"SS", "SS"}, {"..", ".."}}, heavy, {0, 0, 1}).empty());
}

// ---- rests ----

TEST_CASE("rest: dry, still or pinned") {
  auto const rest = [](std::vector<Level> const& levels, model::Place at) {
    Poured const poured(levels);
    return body::rest_at(poured.here(), {poured.at(at), Side::none, 0});
  };
  CHECK(rest({{"XX"}, {".."}, {".."}}, {0, 0, 1}) == body::End::dry);
  CHECK(rest({{"XX"}, {"SS"}, {".."}}, {0, 0, 1}) == body::End::still);
  CHECK(rest({{"XX"}, {"76"}, {"XX"}}, {1, 0, 1}) == body::End::pinned);
}

// ---- figures that a design may set ----

TEST_CASE("practice: the cells after which a fall drifts, and how deep it sinks, can be set") {
  Poured early(std::vector<Level>(5, {"..."}));
  early.practise(model::Rule::drift_after, 1);
  CHECK(early.moves({0, 0, 3}, Side::east, 0) == Moves{"fall 0 0 2 east 1", "drift 1 0 2 none 1"});
  Poured shallow(shaft("XSSSS..."));
  shallow.practise(model::Rule::sink_cells, 1);
  CHECK(shallow.moves({0, 0, 5}, Side::none, 4) == Moves{"fall 0 0 4 none 0", "sink 0 0 3 none 0"});
}
