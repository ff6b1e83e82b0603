#include "tests/lang/grammar/reading_of.hpp"
#include "tests/support/catch.hpp"

using namespace leat::tests;

namespace {

std::string part(std::string const& text) {
  auto const shown = declaration_of("works y {\n  " + text + "\n}\n");
  std::string const head = "works y title:_ outside:_[";
  REQUIRE(shown.starts_with(head));
  return shown.substr(head.size(), shown.size() - head.size() - 1);
}
std::string fault(std::string const& lines) {
  return reports_of("leat 1\nworks y {\n" + lines + "\n}\n");
}
std::vector<std::string> faults(std::string const& lines) {
  return faults_of("leat 1\nworks y {\n" + lines + "\n}\n");
}

}  // namespace

TEST_CASE("a works with a title and what is outside") {
  CHECK(declaration_of("works yard \"the \\\"yard\\\"\" { outside open }") ==
        "works yard title:\"the \"yard\"\" outside:open[]");
  CHECK(declaration_of("works yard { }") == "works yard title:_ outside:_[]");
}

TEST_CASE("what is placed stands somewhere") {
  CHECK(part("place side_turn as first at 0 0 0") ==
        "place side_turn first(0,0,0) turned:_ mirrored:_[][]");
  CHECK(part("place a as b at -3 wide (8 * lanes)") ==
        "place a b(neg(3),wide,*(8,lanes)) turned:_ mirrored:_[][]");
  CHECK(part("place a as fork[lane][2] at 0 0 0") ==
        "place a fork[2]@4[lane](0,0,0) turned:_ mirrored:_[][]");
}

TEST_CASE("what follows the coordinates comes in any order") {
  std::string const all =
      "place a b(0,0,0) turned:left mirrored:mirrored[rise=3; run=*(2,k)][flush=and(d,not(e)); "
      "stop=OFF]";
  CHECK(
      part("place a as b at 0 0 0 turned left mirrored where rise = 3, run = 2 * k with flush = d "
           "and not e, stop = off") == all);
  CHECK(part("place a as b at 0 0 0\n with flush = d\n and not e,\n stop = off\n mirrored\n where "
             "rise "
             "= 3,\n run = 2 * k\n turned left") == all);
  CHECK(part("place a as b at 0 0 0 with s[1] = t[k]") ==
        "place a b(0,0,0) turned:_ mirrored:_[][s[1]=t@1[k]]");
}

TEST_CASE("joins, ports, numbers") {
  CHECK(part("join first.kiln -> second.millhouse") == "join first.kiln second.millhouse _");
  CHECK(part("join first.kiln->second[0].mill taking 9 s") == "join first.kiln second[0].mill 9s");
  CHECK(part("inlet mine = first.millhouse") == "inlet mine=first.millhouse");
  CHECK(part("outlet kiln[2] = north.fork[1].kiln") == "outlet kiln[2]=north.fork[1].kiln");
  CHECK(part("number lanes = 8") == "number lanes=8");
}

TEST_CASE("parts are repeated, each kind of them") {
  CHECK(declaration_of("works y {\n  number n = 2\n  for k in 0..n {\n    number w = 2 ^ k\n"
                       "    for l in 0..w { place a as b[k][l] at 0 l k }\n"
                       "    join b[k][0].o -> z.i\n  }\n  outside rock\n  inlet i = z.i\n}") ==
        "works y title:_ outside:rock[number n=2; number w=^(2,k); "
        "place a b@1[k]@1[l](0,l,k) turned:_ mirrored:_[][]; join b[0].o@1[k] z.i _; "
        "inlet i=z.i] loops[k:0..n 1-4; l:0..w 2-3]");
}

TEST_CASE("words of works are free as names elsewhere") {
  CHECK(faults_of("leat 1\nsignals {\n  lever join  lever place  lever turned  lever where\n"
                  "  wire mirrored = join and not taking or mod\n  lever with  lever as\n}\n"
                  "expect {\n  place reaches join\n  turned never trapped\n}\n")
            .empty());
}

TEST_CASE("levels with numbers that are worked out") {
  CHECK(declaration_of("junction j { number rise = 3 level 0 { |X| } level 1..rise { |X| } "
                       "level (rise + 1) { |X| } }") ==
        "junction j title:_ outside:_ numbers[number rise=3][0.._[|X|]; 1..rise[|X|]; "
        "+(rise,1).._[|X|]]");
  CHECK(
      reports_of("leat 1\njunction j { level rise + 1 { |X| } }\n") ==
      "2:25 out-of-place\n"
      "  '+' stands where '{' is expected in the level\n"
      "  [+] '{' is expected here\n"
      "  > A level is written: level 0 { |....| }, or level 2..6 { |....| } to draw it on each\n");
}

TEST_CASE("includes") {
  CHECK(declaration_of("include \"parts/lift.leat\"") == "include \"parts/lift.leat\"");
  CHECK(reports_of("leat 1\ninclude lift.leat\n") ==
        "2:9 out-of-place\n"
        "  'lift' stands where a file's name in quotes is expected in the inclusion\n"
        "  [lift] a file's name in quotes is expected here\n"
        "  > An inclusion is written: include \"file.leat\"\n");
  CHECK(faults_of("leat 1\ninclude\nmarks { }\n") == std::vector<std::string>{"2:8 cut-short"});
}

TEST_CASE("a place that is not written as one") {
  CHECK(fault("  place side_turn at 0 0 0") ==
        "3:19 out-of-place\n"
        "  'at' stands where 'as' is expected in the place\n"
        "  [at] 'as' is expected here\n"
        "  > A place is written: place JUNCTION as NAME at 0 0 0, then as needed 'turned left', "
        "'mirrored', 'where NUMBER = 3', 'with SIGNAL = EXPRESSION'\n");
  CHECK(fault("  place a as b at 0 0 turned left") ==
        "3:23 out-of-place\n"
        "  'turned' stands where the third number (levels up) is expected in the place\n"
        "  [turned] the third number (levels up) is expected here\n"
        "  > A place is written: place JUNCTION as NAME at 0 0 0, then as needed 'turned left', "
        "'mirrored', 'where NUMBER = 3', 'with SIGNAL = EXPRESSION'\n");
  CHECK(fault("  place a as b at 0 0 0 turned north") ==
        "3:32 out-of-place\n"
        "  'north' stands where 'left', 'right' or 'about' is expected in the place\n"
        "  [north] 'left', 'right' or 'about' is expected here\n"
        "  > A place is written: place JUNCTION as NAME at 0 0 0, then as needed 'turned left', "
        "'mirrored', 'where NUMBER = 3', 'with SIGNAL = EXPRESSION'\n");
}

TEST_CASE("several faults in one works, each once, and the good parts stay silent") {
  CHECK(faults("  place a as b at 0 0\n  place a as c at 0 0 0\n  join a.k b.i\n  inlet i = \n"
               "  join a.k -> b.i taking 9\n  outlet o = a.k\n  plaec a as b at 0 0 0") ==
        std::vector<std::string>{"3:22 cut-short", "5:12 out-of-place", "6:12 cut-short",
                                 "7:27 cut-short", "9:3 unknown-entry"});
}

TEST_CASE("a misspelt word of works is named") {
  CHECK(
      fault("  plaec a as b at 0 0 0") ==
      "3:3 unknown-entry\n"
      "  'plaec' does not begin a part of the works\n"
      "  [plaec] 'place', 'join', 'inlet', 'outlet', 'number', 'for', 'outside' or '}' is expected "
      "here\n"
      "  > Perhaps 'place' is meant.\n");
  CHECK(fault("  place a as b at 0 0 0 turnde left") ==
        "3:25 unknown-entry\n"
        "  'turnde' does not begin a part of the works\n"
        "  [turnde] 'place', 'join', 'inlet', 'outlet', 'number', 'for', 'outside' or '}' is "
        "expected here\n"
        "  > Perhaps 'turned' is meant.\n");
  CHECK(fault("  join a.k -> b.i takign 9 s") ==
        "3:19 unknown-entry\n"
        "  'takign' does not begin a part of the works\n"
        "  [takign] 'place', 'join', 'inlet', 'outlet', 'number', 'for', 'outside' or '}' is "
        "expected here\n"
        "  > Perhaps 'taking' is meant.\n");
}

TEST_CASE("a place says each thing once") {
  CHECK(fault("  place a as b at 0 0 0 turned left turned right") ==
        "3:37 said-twice\n"
        "  A place says the same of itself twice\n"
        "  [turned] this was said before\n"
        "  > Say it once; several settings stand after one word, with commas between.\n");
  CHECK(faults("  place a as b at 0 0 0 mirrored mirrored") ==
        std::vector<std::string>{"3:34 said-twice"});
  CHECK(faults("  place a as b at 0 0 0 where m = 1 where n = 2\n  place c as d at 0 0 0") ==
        std::vector<std::string>{"3:37 said-twice"});
  CHECK(faults("  place a as b at 0 0 0 with m = a with n = b") ==
        std::vector<std::string>{"3:36 said-twice"});
}

TEST_CASE("what is outside is said once, and not in a repetition") {
  CHECK(fault("  outside open\n  outside rock") ==
        "4:11 outside-twice\n"
        "  A works says twice what is outside it\n"
        "  [rock] said again here\n"
        "  3:11 [open] said first here\n"
        "  > Keep one of the two lines.\n");
  CHECK(fault("  for k in 0..1 { outside open }") ==
        "3:19 unknown-entry\n"
        "  'outside' does not begin a repeated part of the works\n"
        "  [outside] 'place', 'join', 'inlet', 'outlet', 'number', 'for' or '}' is expected here\n"
        "  > A repetition is written: for NAME in 0..7 { ... }\n");
}

TEST_CASE("a number in a block does not end the block, but one after an open block is the file's") {
  CHECK(faults_of("leat 1\njunction j {\nnumber n = 1\nlevel 0 { |X| }\n}\n").empty());
  CHECK(faults_of("leat 1\nworks {\n  number n = 1\n  place a as b at 0 0 0\n}\nnumber m = 1\n") ==
        std::vector<std::string>{"2:7 out-of-place"});
  CHECK(faults_of("leat 1\nsignals {\n  lever a\nnumber m = 1\nmarks { }\n") ==
        std::vector<std::string>{"3:10 unclosed-block"});
}
