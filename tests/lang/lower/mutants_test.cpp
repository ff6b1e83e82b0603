#include <random>

#include "lang/lower/lower.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

// One edit of a sound design at a random place: whatever comes of it, it is read to its end, and it
// either has a fault or gives one design for each junction. Contracts are checked in every build,
// so an unsound tree that passes the checks would show here.
namespace {

std::string const sound =
    R"(leat 1
signals {
  lever divert starts on
  button flush for 4 ticks
  plate passed
  wire shut = divert and not late
  wire late = flush xor (divert or passed) after 4 ticks
  latch parked on flush off not passed starts on
  toggle turned1 on late
  clock beat every 2 s
}
materials {
  grate passes water, carries
}
marks {
  X rock
  _ open
  w water
  a rock when shut else grate
  b open when divert else rock
  i inlet millhouse
  j inlet granary in water
  k outlet kiln
  q outlet press
  P plate passed
}
junction turn "the kiln turn" {
  outside open
  level 0..1 {
    |XXXXXXX|
    |XXXXXXX|
  }
  level 2 {
    |wi_aP_k|
    |XXXbXXX|
  }
}
junction other {
  level 0 {
    |jq|
  }
}
body crawler { footprint 2  height 1  sinks }
practice { longest_drop 5  pit_width 3 }
accept split-route at turn 2 0 1 when shut because "one body a minute at most"
expect "routes" {
  millhouse reaches kiln when divert
  walker from millhouse never reaches kiln
  millhouse may reach kiln otherwise
  granary never trapped
  after divert, passed, beat: millhouse reaches kiln
  millhouse clear within 12 s
  walker from millhouse deals kiln, nothing every 40 ticks for 4 rounds
}
expect "clean" of other {
  findings none above note
  finds split-route at 0 0 0
}
expect table crawler from millhouse {
  divert flush | route
  1      -     | kiln
  0      1     | nothing
}
)";

std::string mutant(std::mt19937& random) {
  auto text = sound;
  auto const pick = [&](std::size_t count) { return static_cast<std::size_t>(random() % count); };
  auto const at = pick(text.size());
  static std::string const letters = "aiXP_w|{}()\"#\n 019-.,=\xc3\xff";
  auto const letter = letters[pick(letters.size())];
  switch (pick(6)) {
    case 0:
      text.erase(at, 1);
      break;
    case 1:
      text.insert(at, 1, letter);
      break;
    case 2:
      text[at] = letter;
      break;
    case 3:
      text.insert(at, text.substr(pick(text.size()), 1 + pick(40)));
      break;
    case 4:
      text.erase(at, pick(40));
      break;
    default: {
      auto const begin = text.rfind('\n', at);
      auto const end = text.find('\n', at);
      if (begin == std::string::npos || end == std::string::npos) break;
      auto const line = text.substr(begin, end - begin);
      if (pick(2) == 0)
        text.erase(begin, end - begin);
      else
        text.insert(begin, line);
    }
  }
  return text;
}

}  // namespace

TEST_CASE("the text that is mutated is sound") {
  diagnostics::Sink sink;
  CHECK(lower::read_designs({"sound.leat", sound}, sink).size() == 2);
  CHECK(sink.empty());
}

TEST_CASE("one edit gives a fault or designs, and never a broken contract") {
  std::mt19937 random(2024);
  int sound_ones = 0, single_reports = 0;
  constexpr int mutants = 6000;
  for (int turn = 0; turn < mutants; ++turn) {
    auto const text = mutant(random);
    diagnostics::Sink sink;
    std::vector<lower::Junction> junctions;
    CAPTURE(text);
    REQUIRE_NOTHROW(junctions = lower::read_designs({"mutant.leat", text}, sink));
    REQUIRE(junctions.empty() == !sink.empty());
    sound_ones += junctions.empty() ? 0 : 1;
    single_reports += sink.sorted().size() == 1 ? 1 : 0;
    for (auto const& report : sink.sorted()) {
      REQUIRE(report.primary.span.begin <= report.primary.span.end);
      REQUIRE(report.primary.span.end <= text.size());
    }
    for (auto const& junction : junctions) {
      for (auto const& fill : junction.design.fill_of) REQUIRE(fill < junction.design.fills.size());
      REQUIRE(!junction.design.inlets.empty());
      REQUIRE(!junction.design.outlets.empty());
    }
  }
  INFO(sound_ones << " sound, " << single_reports << " with one report");
  CHECK(sound_ones > mutants / 50);
  CHECK(single_reports > (mutants - sound_ones) * 8 / 10);
}
