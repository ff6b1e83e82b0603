#include "lang/check/unfold.hpp"

#include <fmt/format.h>

#include "lang/grammar/parse.hpp"
#include "tests/lang/grammar/reading_of.hpp"
#include "tests/lang/grammar/tree_text.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using check::Numbers;
using check::Unfolder;

namespace {

// A text unfolded whole, and what was said of it.
struct Unfolded {
  syntax::Document document;
  std::vector<std::string> faults;  // "name line:column headline; label"
};

Unfolded unfolded(std::string const& text) {
  source::SourceText const source("test.leat", "leat 1\n" + text);
  diagnostics::Sink sink;
  auto document = grammar::parse(source, sink);
  REQUIRE(sink.empty());
  Unfolder unfolder(sink);
  Unfolded result{unfolder.unfold(std::move(document)), {}};
  for (auto const& report : sink.sorted()) {
    auto const at = source.position(report.primary.span.begin);
    result.faults.push_back(fmt::format("{} {}:{} {}; {}", report.name, at.line, at.column,
                                        report.headline, report.primary.text));
  }
  return result;
}

std::string tree(std::string const& text) {
  auto const [document, faults] = unfolded(text);
  CHECK(faults == std::vector<std::string>{});
  std::string shown;
  for (auto const& node : document.declarations) shown += tests::tree_text(node) + "\n";
  return shown;
}

std::vector<std::string> faults_of(std::string const& text) { return unfolded(text).faults; }
using Faults = std::vector<std::string>;

std::string value(std::string const& text) {
  auto const shown = tree("number n = " + text + "\n");
  return shown.substr(std::string("number n=").size(),
                      shown.size() - std::string("number n=\n").size());
}

template <class Node>
Node only(std::string const& text) {
  return std::get<Node>(tests::document_of("leat 1\n" + text).declarations.at(0));
}

std::vector<std::string> names_of(syntax::SignalsDeclaration const& block) {
  std::vector<std::string> names;
  for (auto const& signal : block.signals) names.push_back(signal.name.text);
  return names;
}

}  // namespace

TEST_CASE("numbers are reckoned by the rules of arithmetic") {
  CHECK(value("1 + 2 * 3") == "7");
  CHECK(value("(1 + 2) * 3") == "9");
  CHECK(value("10 - 3 - 2") == "5");
  CHECK(value("2 ^ 3 ^ 2") == "512");
  CHECK(value("-2 ^ 2") == "-4");
  CHECK(value("0 ^ 0") == "1");
  CHECK(value("(-1) ^ 1000000000") == "1");
  CHECK(value("1 ^ 1000000000") == "1");
  CHECK(value("0 ^ 1000000000") == "0");
}

// For a divisor b other than 0: a = b * (a / b) + a mod b, with a mod b between 0 and b. Common
// practice, no source.
TEST_CASE("division rounds toward minus infinity, and the remainder has the divisor's sign") {
  for (long left = -7; left <= 7; ++left)
    for (long right : {-3L, -2L, -1L, 1L, 2L, 3L}) {
      auto const quotient = std::stol(value(fmt::format("({}) / ({})", left, right)));
      auto const remainder = std::stol(value(fmt::format("({}) mod ({})", left, right)));
      CAPTURE(left, right, quotient, remainder);
      CHECK(right * quotient + remainder == left);
      CHECK(
          (right > 0 ? remainder >= 0 && remainder < right : remainder <= 0 && remainder > right));
    }
}

TEST_CASE("numbers that have no value") {
  CHECK(faults_of("number n = 3 + lines\nnumber lanes = 2") ==
        Faults{"unknown-number 2:16 The number 'lines' is not declared; this is no number that can "
               "be used here"});
  CHECK(
      faults_of("number k = 4\nnumber n = 12 / (k - 4)") ==
      Faults{"impossible-number 3:12 '12 / (k - 4)' divides by 0; the divisor is 0 here where k = "
             "4"});
  CHECK(faults_of("number n = 12 mod 0") ==
        Faults{"impossible-number 2:12 '12 mod 0' divides by 0; the divisor is 0 here"});
  CHECK(faults_of("number n = 2 ^ -1") ==
        Faults{"impossible-number 2:12 '2 ^ -1' has an exponent below 0; the exponent is below 0 "
               "here"});
  CHECK(
      faults_of("number n = 1000000000 + 1") ==
      Faults{"number-out-of-range 2:12 '1000000000 + 1' is larger than can be reckoned with; this "
             "is beyond 1000000000"});
  CHECK(faults_of("number n = 7 ^ 1000000000").size() == 1);
  CHECK(faults_of("number n = 99999999999").size() == 1);
  CHECK(value("1000000000") == "1000000000");
  CHECK(value("0 - 1000000000") == "-1000000000");
}

TEST_CASE("a number with a fault is not called undeclared where it is used") {
  CHECK(faults_of("number a = 1 / 0\nnumber b = a + 1\nsignals { for i in 0..b { lever c[i] } }")
            .size() == 1);
}

TEST_CASE("a number is seen by those after it, and declared once") {
  CHECK(tree("number a = 2\nnumber b = a * a") == "number a=2\nnumber b=4\n");
  CHECK(faults_of("number a = b\nnumber b = 2").size() == 1);
  CHECK(faults_of("number a = 1\nnumber a = 2") ==
        Faults{"declared-twice 3:8 The number 'a' is declared twice; 'a' is declared here again"});
}

TEST_CASE("signals are repeated in order, names are plain") {
  auto const [document, faults] = unfolded(
      "number lanes = 2\nsignals {\n  lever a\n  for i in 0..lanes - 1 {\n    lever b[i]\n"
      "    for j in i..1 { wire c[i][2 * j + 1] = b[(i + 1) mod lanes] and not a }\n"
      "    plate d[-i]\n  }\n  lever e\n}");
  CHECK(faults.empty());
  auto const& block = std::get<syntax::SignalsDeclaration>(document.declarations.at(1));
  CHECK(names_of(block) == std::vector<std::string>{"a", "b[0]", "c[0][1]", "c[0][3]", "d[0]",
                                                    "b[1]", "c[1][3]", "d[-1]", "e"});
  CHECK(tests::tree_text(*block.signals.at(3).on) == "and(b[1],not(a))");
  CHECK(block.loops.empty());
  CHECK(block.signals.at(2).span == block.signals.at(3).span);
}

TEST_CASE("a range that runs backwards repeats nothing") {
  CHECK(tree("signals { for i in 1..0 { lever a[i] for j in 0..3 { lever b[1 / i] } } lever c }") ==
        "signals[lever c on:_ off:_ for:_ starts:_]\n");
}

TEST_CASE("loops without entries beside and inside of others change nothing") {
  CHECK(tree("signals { for i in 0..1 { for j in i..i { } } for k in 0..1 { } lever a\n"
             "for l in 0..1 { for m in l..l { } lever b[l] for n in l..l { } } }") ==
        "signals[lever a on:_ off:_ for:_ starts:_; lever b[0] on:_ off:_ for:_ starts:_; "
        "lever b[1] on:_ off:_ for:_ starts:_]\n");
}

TEST_CASE("promises are repeated with the loops they stand in") {
  CHECK(tree("signals { never a for i in 0..1 { lever b[i] never b[i] and a for j in 2..3 { never "
             "c[i * j] } } }") ==
        "signals[lever b[0] on:_ off:_ for:_ starts:_; lever b[1] on:_ off:_ for:_ starts:_] "
        "never[a; and(b[0],a); c[0]; c[0]; and(b[1],a); c[2]; c[3]]\n");
}

TEST_CASE("clauses, tables, marks and acceptances are made plain") {
  CHECK(
      tree(
          "number k = 1\nexpect \"t\" of y {\n  for i in 0..1 {\n"
          "    a[i] reaches f[i].b when c[i + 1]\n    after d[i]: e deals g[i], nothing every 2 s\n"
          "  }\n  h never trapped otherwise\n}\n"
          "expect table a[k] { b[k] c.d[2 * k] | route\n 0 1 | e[k].f, g\n }\n"
          "marks { P plate p[k]\n a rock when q[k] else open }\n"
          "accept pinned when r[k] because \"x\"\n") ==
      "number k=1\n"
      "expect title:\"t\" of:y[reaches body:_ subject:a[0] object:f[0].b place:_ when:c[1]; "
      "after:[d[0]] deals body:_ subject:e object: place:_ when:_ dealt:[g[0]; nothing] time:2s; "
      "reaches body:_ subject:a[1] object:f[1].b place:_ when:c[2]; "
      "after:[d[1]] deals body:_ subject:e object: place:_ when:_ dealt:[g[1]; nothing] time:2s; "
      "never_state body:_ subject:h object:trapped place:_ when:_ otherwise]\n"
      "table body:_ inlet:a[1] of:_[b[1]; c.d[2]][[0; 1]->[e[1].f; g]]\n"
      "marks[P plate p[1] _; a none  rock?q[1]:open]\n"
      "accept pinned place:_ when:r[1] because:\"x\"\n");
}

TEST_CASE("levels of a junction are worked out, with the values a place gives") {
  std::string const text =
      "junction lift {\n  number rise = 2\n  number top = rise + 1\n  level 0 { |X| }\n"
      "  level 1..rise { |X| }\n  level (top) { |X| }\n}\n";
  CHECK(tree(text) ==
        "junction lift title:_ outside:_ numbers[number rise=2; number top=3]"
        "[0.._[|X|]; 1..2[|X|]; 3.._[|X|]]\n");
  diagnostics::Sink sink;
  Unfolder unfolder(sink);
  auto const lift = unfolder.unfold(only<syntax::JunctionDeclaration>(text), {}, {{"rise", 5}});
  CHECK(tests::tree_text(syntax::Declaration(lift)) ==
        "junction lift title:_ outside:_ numbers[number rise=5; number top=6]"
        "[0.._[|X|]; 1..5[|X|]; 6.._[|X|]]");
  CHECK(sink.empty());
  CHECK(faults_of("junction j { number n = 0 level n { |X| } level (n - 1) { |X| } }") ==
        Faults{"number-out-of-range 2:49 Junction 'j' has a level below 0; this is level -1"});
}

TEST_CASE("works are repeated; numbers of a turn are its own") {
  std::string const text =
      "works y {\n  place a as first at wide 0 -1\n  number wide = 4\n  for i in 0..1 {\n"
      "    place b as f[i] at (wide * step) i 0 where rise = i + 1 with s[i] = t[i] or u\n"
      "    number step = 2 ^ i\n    join f[i].o -> first.way taking 9 s\n  }\n"
      "  outlet k[wide] = f[1].o\n}\n";
  CHECK(tree(text) ==
        "works y title:_ outside:_[place a first(4,0,-1) turned:_ mirrored:_[][]; number wide=4; "
        "place b f[0](4,0,0) turned:_ mirrored:_[rise=1][s[0]=or(t[0],u)]; number step=1; "
        "join f[0].o first.way 9s; "
        "place b f[1](8,1,0) turned:_ mirrored:_[rise=2][s[1]=or(t[1],u)]; number step=2; "
        "join f[1].o first.way 9s; outlet k[4]=f[1].o]\n");
  diagnostics::Sink sink;
  Unfolder unfolder(sink);
  auto const works = only<syntax::WorksDeclaration>(text);
  auto const made = unfolder.unfold(works, {}, {{"wide", 10}, {"step", 100}});
  CHECK(std::get<syntax::PlaceDeclaration>(made.items.at(0)).x.literal.value == 10);
  CHECK(std::get<syntax::PlaceDeclaration>(made.items.at(2)).x.literal.value == 10);
  auto const place = std::get<syntax::PlaceDeclaration>(made.items.at(5));
  CHECK(check::settings_of(place) == check::Settings{{"rise", 2}});
  auto const settable = check::settable_numbers(works);
  REQUIRE(settable.size() == 1);
  CHECK(settable.at(0).text == "wide");
}

TEST_CASE("a place further in may hide a name, and only there") {
  CHECK(tree("number i = 7\nsignals { for i in 0..0 { lever a[i] for i in 3..3 { lever b[i] } } "
             "lever c[i] }") ==
        "number i=7\nsignals[lever a[0] on:_ off:_ for:_ starts:_; lever b[3] on:_ off:_ for:_ "
        "starts:_; lever c[7] on:_ off:_ for:_ starts:_]\n");
  CHECK(faults_of("signals { for i in 0..0 { lever a } lever b[i] }").size() == 1);
  CHECK(faults_of("junction j { number n = 1 level 0 { |X| } }\nsignals { lever a[n] }").size() ==
        1);
}

TEST_CASE("a fault in a loop is said once, with the turn that first showed it") {
  CHECK(
      faults_of("signals { for i in 0..5 { lever a[12 / (3 - i)] } }") ==
      Faults{"impossible-number 2:35 '12 / (3 - i)' divides by 0; the divisor is 0 here where i = "
             "3"});
  CHECK(faults_of("signals { for i in 0..99999 { wire a[i] = b[j] and c[k] } }").size() == 2);
}

TEST_CASE("repetitions are bounded over the whole file, before the work is done") {
  CHECK(faults_of("signals { for i in 1..1000000 { for j in 1..0 { } } }").empty());
  CHECK(faults_of("signals { for i in 1..1000001 { } }") ==
        Faults{"too-many-repetitions 2:11 Repetitions make more than 1000000 entries; here it "
               "becomes too many"});
  CHECK(faults_of("signals { for i in -1000000000..1000000000 { for j in -1000000000..1000000000 { "
                  "lever a[i][j] } } }")
            .size() == 1);
  CHECK(faults_of("expect { for i in 1..600000 { } }\nworks y { for i in 1..600000 { } }").size() ==
        1);
  std::string nested;
  for (int i = 0; i < 100; ++i) nested += "for i in 0..9 {\n";
  CHECK(faults_of("signals { " + nested + std::string(100, '}') + " }").size() == 1);
}

TEST_CASE("long entries count for several") {
  std::string chain = "a";
  for (int i = 1; i < 4000; ++i) chain += " and a";
  CHECK(faults_of("signals { for i in 1..900 { wire w[i] = " + chain + " } }").empty());
  CHECK(faults_of("signals { for i in 1..1100 { wire w[i] = " + chain + " } }").size() == 1);
}

TEST_CASE("where something was reported before, nothing is said of unknown names") {
  diagnostics::Sink sink;
  sink.report({"out-of-place", "Something", {}, {}, {}});
  Unfolder unfolder(sink);
  CHECK(!unfolder.evaluate(only<syntax::NumberDeclaration>("number n = m").value, {}));
  CHECK(sink.sorted().size() == 1);
  CHECK(!unfolder.evaluate(only<syntax::NumberDeclaration>("number n = 1 / 0").value, {}));
  CHECK(sink.sorted().size() == 2);
}
