#include "lang/render/example.hpp"

#include "lang/render/trail_text.hpp"
#include "tests/lang/render/render_test_support.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using namespace leat::render;

namespace {

Judgement on_two_levers() {
  Judgement judged;
  judged.variables = {0, 1};
  return judged;
}

}  // namespace

TEST_CASE("an example is what a player does from the design as built") {
  auto yard = rendered::worded(drawn::draw({{"w.A"}}));
  CHECK(player_steps(yard->subject(), {0}) == "flip divert on");
  CHECK(player_steps(yard->subject(), {0, 1, 0}) ==
        "flip divert on, flip flush on, flip divert off");
  CHECK(player_steps(yard->subject(), {}) == "nothing to do: it is so as built");
  CHECK(steps_then(yard->subject(), {0}, 0) == "flip divert on, then flip divert off");
  CHECK(steps_then(yard->subject(), {}, 0) == "flip divert on");
  yard->design.circuit.signals[0].starts_on = true;
  yard->design.circuit.signals[1].kind = model::SignalKind::button;
  CHECK(player_steps(yard->subject(), {0, 1}) == "flip divert off, press flush");
}

TEST_CASE("steps that come again and again are counted") {
  auto yard = rendered::worded(drawn::draw({{"w.A"}}));
  yard->design.circuit.signals[1].kind = model::SignalKind::button;
  CHECK(player_steps(yard->subject(), {0, 1, 1, 1, 1, 1, 1, 0}) ==
        "flip divert on, press flush and let go of flush, 3 times, flip divert off");
  CHECK(player_steps(yard->subject(), {1, 1, 1, 1}) ==
        "press flush, let go of flush, press flush, let go of flush");
}

TEST_CASE("a way is told by its setting where its water is fresh, else by what was done") {
  auto const yard = rendered::worded(drawn::draw({{"w.A"}}));
  auto const judged = on_two_levers();
  CHECK(way_option(yard->subject(), judged, {0b10, {0}, {}, true}) == " --when \"divert=on\"");
  CHECK(way_option(yard->subject(), judged, {0b00, {0, 0}, {}, false}) ==
        " --do \"divert on, divert off\"");
  CHECK(way_option(yard->subject(), judged, {0b00, {}, {}, true}).empty());
}

TEST_CASE("inputs that do not matter are named") {
  auto const yard = rendered::worded(drawn::draw({{"w.A"}}));
  auto const judged = on_two_levers();
  CHECK(what_does_not_matter(yard->subject(), judged, 0b10, {{0b01, 0b01}}) ==
        "flush does not matter");
  CHECK(what_does_not_matter(yard->subject(), judged, 0b10, {{0b11, 0b01}}).empty());
  CHECK(what_does_not_matter(yard->subject(), judged, 0b10, {{0, 0}}) ==
        "divert and flush do not matter");
}

TEST_CASE("the command that shows it again can be pasted into a shell") {
  auto yard = rendered::worded(drawn::draw({{"w.A"}}));
  auto const judged = on_two_levers();
  CHECK(follow_command(yard->subject(), judged, {0b10, {0}, {}, true}, 0, 0) ==
        "leat follow yard.leat --from millhouse --body walker --when \"divert=on\"");
  yard->text = source::SourceText("old yard's.leat", "");
  CHECK(follow_command(yard->subject(), judged, {0, {}, {}, true}, 0, 0) ==
        "leat follow 'old yard'\\''s.leat' --from millhouse --body walker");
}

TEST_CASE("moves are told by their rule and their side") {
  using body::MoveRule;
  model::Place const here{4, 3, 1};
  CHECK(move_words(here, {0, MoveRule::push, true}, {3, 3, 1}) == "pushed west by the water");
  CHECK(move_words(here, {0, MoveRule::climb, false}, {4, 4, 2}) ==
        "climbs over the edge to the south (unsure)");
  CHECK(move_words(here, {0, MoveRule::fall, true}, {4, 3, 0}) == "falls");
  CHECK(move_words(here, {0, MoveRule::fall, true}, {4, 2, 0}) == "falls, drifting north");
}
