#include "lang/lower/lower.hpp"

#include "tests/support/catch.hpp"

using namespace leat;

namespace {

// Two levels, a switched cell on each, three ports of which one has two marks, and every kind of
// judging.
char const* const sample =
    R"(leat 1
signals {
  lever divert starts on
  wire shut = divert and not flush and on
  plate flush
}
materials {
  grate passes water, carries
}
marks {
  X rock
  _ open
  w water
  a rock when shut else grate
  b open when divert xor flush else rock
  i inlet millhouse
  j inlet millhouse in water
  k outlet kiln
  P plate flush
}
junction turn "the kiln turn" {
  outside open
  level 0 {
    |ijak|
    |XXXX|
  }
  level 1 {
    |_Xbw|
    |__PX|
  }
}
body crawler {
  footprint 2
  height 1
  sinks
}
practice {
  longest_drop 5
}
accept split-route at 2 0 1 when shut because "one body a minute at most"
expect "routes" {
  millhouse reaches kiln
    when divert # so far
  millhouse reaches nothing otherwise
  findings none above note
}
expect table crawler from millhouse {
  divert flush | route
  1      -     | kiln
}
)";

lower::Junction read(std::string const& text) {
  diagnostics::Sink sink;
  auto const junctions = lower::read_designs({"turn.leat", text}, sink);
  REQUIRE(sink.empty());
  REQUIRE(junctions.size() == 1);
  return junctions.front();
}

model::Fill fill_at(model::Design const& design, model::Place at) {
  return design.fills[design.fill_of[design.grid.cell(at)]];
}

std::string text_of(source::Span span) {
  return std::string(sample).substr(span.begin, span.end - span.begin);
}

}  // namespace

TEST_CASE("extents, fills and rim of the lowered sample") {
  auto const design = read(sample).design;
  CHECK(design.grid.width() == 4);
  CHECK(design.grid.depth() == 2);
  CHECK(design.grid.height() == 2);
  CHECK(design.outside_is_open);
  CHECK(design.fill_of.size() == design.grid.size());
  CHECK(design.fills.size() == 10);
  CHECK(fill_at(design, {0, 0, 0}) ==
        model::Fill{model::material::open, model::material::open, {}});
  CHECK(fill_at(design, {1, 0, 0}) ==
        model::Fill{model::material::water, model::material::water, {}});
  CHECK(fill_at(design, {0, 1, 0}) ==
        model::Fill{model::material::rock, model::material::rock, {}});
  CHECK(fill_at(design, {2, 1, 1}) ==
        model::Fill{model::material::plate, model::material::plate, {}});
  CHECK(fill_at(design, {-1, 0, 0}) ==
        model::Fill{model::material::open, model::material::open, {}});
  CHECK(fill_at(design, {0, 0, 2}) == fill_at(design, {5, 3, 3}));
}

TEST_CASE("a declared material follows the built-in ones") {
  auto const design = read(sample).design;
  REQUIRE(design.materials.size() == 6);
  CHECK(design.materials[5] == model::Material{.water_enters = true, .carries = true});
}

TEST_CASE("signals and expressions of the lowered sample") {
  auto const circuit = read(sample).design.circuit;
  REQUIRE(circuit.signals.size() == 3);
  CHECK(circuit.signals[0].kind == model::SignalKind::lever);
  CHECK(circuit.signals[0].starts_on);
  CHECK(circuit.signals[2].kind == model::SignalKind::plate);
  CHECK(!circuit.signals[2].starts_on);
  CHECK(circuit.wire_order == std::vector<model::SignalId>{1});
  using model::Operator;
  std::vector<model::ExpressionNode> const shut{
      {Operator::signal, 0, 0},   {Operator::signal, 2, 0},      {Operator::negation, 1, 0},
      {Operator::constant, 1, 0}, {Operator::conjunction, 0, 2}, {Operator::conjunction, 4, 3}};
  REQUIRE(circuit.expressions.size() > shut.size());
  CHECK(std::vector(circuit.expressions.begin(), circuit.expressions.begin() + 6) == shut);
  CHECK(circuit.signals[1].definition == 5);
}

TEST_CASE("operands come before the node that uses them") {
  auto const circuit = read(sample).design.circuit;
  for (std::size_t at = 0; at < circuit.expressions.size(); ++at) {
    auto const& node = circuit.expressions[at];
    if (node.op == model::Operator::constant || node.op == model::Operator::signal) continue;
    CHECK(node.left < at);
    if (node.op != model::Operator::negation) CHECK(node.right < at);
  }
}

TEST_CASE("switched cells keep both materials and their control") {
  auto const design = read(sample).design;
  auto const a = fill_at(design, {2, 0, 0});
  CHECK(a.powered == model::material::rock);
  CHECK(a.unpowered == 5);
  REQUIRE(a.control);
  CHECK(design.circuit.expressions[*a.control] ==
        model::ExpressionNode{model::Operator::signal, 1, 0});
  auto const b = fill_at(design, {2, 0, 1});
  CHECK(b.powered == model::material::open);
  CHECK(b.unpowered == model::material::rock);
  REQUIRE(b.control);
  CHECK(design.circuit.expressions[*b.control].op == model::Operator::parity);
}

TEST_CASE("a port has the cells of all its marks, ascending") {
  auto const design = read(sample).design;
  REQUIRE(design.inlets.size() == 1);
  CHECK(design.inlets[0].cells ==
        std::vector{design.grid.cell({0, 0, 0}), design.grid.cell({1, 0, 0})});
  REQUIRE(design.outlets.size() == 1);
  CHECK(design.outlets[0].cells == std::vector{design.grid.cell({3, 0, 0})});
}

TEST_CASE("bodies, practice and acceptances of the lowered sample") {
  auto const lowered = read(sample);
  REQUIRE(lowered.design.profiles.size() == 1);
  CHECK(lowered.design.profiles[0] ==
        model::Profile{.footprint = 2, .height = 1, .floats = false, .safe_fall = 5});
  CHECK(lowered.design.practice[model::Rule::longest_drop] == 5);
  REQUIRE(lowered.design.acceptances.size() == 1);
  auto const& accepted = lowered.design.acceptances[0];
  CHECK(accepted.kind == model::FindingKind::split_route);
  CHECK(accepted.cell == lowered.design.grid.cell({2, 0, 1}));
  REQUIRE(accepted.condition);
  CHECK(lowered.map.acceptances[0].reason == "one body a minute at most");
}

TEST_CASE("clauses become expectations, each with its text in one line") {
  auto const lowered = read(sample);
  auto const& expected = lowered.design.expectations;
  REQUIRE(expected.size() == 4);
  CHECK(expected[0].claim == model::Claim::reaches);
  CHECK(expected[0].inlet == 0u);
  CHECK(!expected[0].profile);
  CHECK(expected[0].outlet == 0u);
  auto const& nodes = lowered.design.circuit.expressions;
  CHECK(nodes[*expected[0].condition] == model::ExpressionNode{model::Operator::signal, 0, 0});
  CHECK(expected[1].claim == model::Claim::reaches_nothing);
  CHECK(nodes[*expected[1].condition] ==
        model::ExpressionNode{model::Operator::negation, *expected[0].condition, 0});
  CHECK(expected[2].claim == model::Claim::no_findings);
  CHECK(expected[2].ceiling == model::Severity::note);
  CHECK(!expected[2].condition);
  CHECK(expected[3].claim == model::Claim::reaches);
  CHECK(expected[3].profile == 0u);
  CHECK(expected[3].condition == expected[0].condition);
  auto const& texts = lowered.map.expectations;
  REQUIRE(texts.size() == 4);
  CHECK(texts[0].title == "routes");
  CHECK(texts[0].clause == "millhouse reaches kiln when divert");
  CHECK(texts[3].clause == "table crawler from millhouse: divert 1, flush - | kiln");
}

TEST_CASE("events, times and trains of clauses") {
  auto const lowered = read(
      "leat 1\nsignals {\n  lever divert\n  wire shut = divert\n  button flush for 4 ticks\n}\n"
      "practice {\n  ticks_per_second 10\n}\nmarks {\n  i inlet m1\n  k outlet k1\n"
      "  q outlet k2\n  a rock when shut else open\n}\njunction run {\n  level 0..1 {\n"
      "    |ikqa|\n  }\n}\nexpect \"it\" {\n  m1 reaches k1 when shut\n"
      "  after flush, divert,\n    flush: m1 reaches k2\n  m1 reaches k2 otherwise\n"
      "  walker clear within 12 s when divert\n"
      "  after divert: m1 deals k2, nothing, k1 every 40 ticks for 2 rounds\n}\n");
  auto const& expected = lowered.design.expectations;
  REQUIRE(expected.size() == 5);
  CHECK(expected[0].events.empty());
  CHECK(expected[0].ticks == 0);
  CHECK(expected[1].claim == model::Claim::reaches);
  CHECK(expected[1].events == std::vector<model::SignalId>{2, 0, 2});
  CHECK(expected[1].outlet == 1u);
  CHECK(!expected[1].condition);
  REQUIRE(expected[2].condition);
  CHECK(lowered.design.circuit.expressions[*expected[2].condition] ==
        model::ExpressionNode{model::Operator::negation, *expected[0].condition, 0});
  CHECK(expected[3].claim == model::Claim::clears);
  CHECK(expected[3].ticks == 120);
  CHECK(expected[3].profile == 0u);
  CHECK(!expected[3].inlet);
  CHECK(expected[3].condition);
  CHECK(expected[4].claim == model::Claim::deals);
  CHECK(expected[4].events == std::vector<model::SignalId>{0});
  CHECK(expected[4].ticks == 40);
  CHECK(expected[4].inlet == 0u);
  std::vector<std::optional<std::uint32_t>> const dealt{1u, std::nullopt, 0u, 1u, std::nullopt, 0u};
  CHECK(expected[4].dealt == dealt);
  CHECK(lowered.map.expectations[1].clause == "after flush, divert, flush: m1 reaches k2");
}

TEST_CASE("every id has its words and their place in the text") {
  auto const map = read(sample).map;
  auto const names = [](std::vector<source::Named> const& all) {
    std::vector<std::string> found;
    for (auto const& named : all) {
      found.push_back(named.name);
      if (!(named.span == source::Span{})) CHECK(text_of(named.span) == named.name);
    }
    return found;
  };
  using Words = std::vector<std::string>;
  CHECK(names({map.junction}) == Words{"turn"});
  CHECK(map.title == "the kiln turn");
  CHECK(names(map.signals) == Words{"divert", "shut", "flush"});
  CHECK(names(map.materials) == Words{"rock", "open", "water", "sign", "plate", "grate"});
  CHECK(names(map.inlets) == Words{"millhouse"});
  CHECK(names(map.outlets) == Words{"kiln"});
  CHECK(names(map.profiles) == Words{"crawler"});
  CHECK(names(map.fills) == Words{"X", "_", "w", "a", "b", "i", "j", "k", "P", ""});
  for (int z = 0; z < 2; ++z) {
    for (int y = 0; y < 2; ++y) CHECK(map.rows.at({z, y}).glyph_begins.size() == 5);
  }
  CHECK(text_of(map.span_of({2, 0, 0})) == "a");
  CHECK(text_of(map.span_of({2, 1, 1})) == "P");
}

TEST_CASE("a row drawn for several levels is found from each of them") {
  auto const lowered = read(
      "leat 1\nmarks {\n  i inlet m1\n  k outlet k1\n  \xc2\xa7 rock\n}\njunction run {\n"
      "  level 0..2 {\n    |i\xc2\xa7k|\n  }\n}\n");
  CHECK(lowered.design.grid.height() == 3);
  CHECK(lowered.design.inlets[0].cells.size() == 3);
  auto const second = lowered.map.span_of({1, 0, 2});
  CHECK(second.end - second.begin == 2);
  CHECK(second == lowered.map.span_of({1, 0, 0}));
}

TEST_CASE("the walker is judged when no body is declared, or when it is named") {
  std::string const head =
      "leat 1\nmarks {\n  i inlet m1\n  k outlet k1\n}\njunction run {\n  level 0 {\n    |ik|\n  "
      "}\n}\n";
  auto const names = [](lower::Junction const& junction) {
    std::vector<std::string> found;
    for (auto const& profile : junction.map.profiles) found.push_back(profile.name);
    return found;
  };
  using Words = std::vector<std::string>;
  CHECK(names(read(head)) == Words{"walker"});
  CHECK(read(head).design.profiles.front() == model::Profile{});
  CHECK(names(read(head + "body hopper { height 1 }\n")) == Words{"hopper"});
  CHECK(names(read(head + "body hopper { height 1 }\nexpect \"it\" {\n  walker never lost\n}\n")) ==
        Words{"walker", "hopper"});
  CHECK(names(read(head +
                   "body hopper {}\nbody walker {}\nexpect \"it\" {\n  walker never lost\n}\n")) ==
        Words{"hopper", "walker"});
}

TEST_CASE("a body that says nothing of its safe fall bears the longest drop of the practice") {
  std::string const head =
      "leat 1\npractice { longest_drop 5 }\nmarks {\n  i inlet m1\n  k outlet k1\n}\n"
      "junction run {\n  level 0 {\n    |ik|\n  }\n}\n";
  CHECK(read(head).design.profiles.front().safe_fall == 5);
  CHECK(read(head + "body hopper { height 1 }\n").design.profiles.front().safe_fall == 5);
  CHECK(read(head + "body hopper { safe_fall 2 }\n").design.profiles.front().safe_fall == 2);
}

TEST_CASE("each junction becomes a design of its own") {
  diagnostics::Sink sink;
  auto const junctions = lower::read_designs(
      {"two.leat",
       "leat 1\nmarks {\n  i inlet m1\n  j inlet m2\n  k outlet k1\n}\njunction one {\n  level 0 "
       "{\n"
       "    |ik|\n  }\n}\njunction two {\n  level 0 {\n    |kj|\n    |jj|\n  }\n}\n"
       "expect \"a\" {\n  m2 reaches k1\n}\nexpect \"b\" of one {\n  findings none\n}\n"},
      sink);
  REQUIRE(sink.empty());
  REQUIRE(junctions.size() == 2);
  CHECK(junctions[0].map.inlets.front().name == "m1");
  CHECK(junctions[1].map.inlets.front().name == "m2");
  CHECK(junctions[1].design.inlets.front().cells.size() == 3);
  REQUIRE(junctions[0].map.expectations.size() == 1);
  CHECK(junctions[0].map.expectations.front().title == "b");
  REQUIRE(junctions[1].map.expectations.size() == 1);
  CHECK(junctions[1].design.expectations.front().inlet == 0u);
}

TEST_CASE("a file with a fault gives no design at all") {
  diagnostics::Sink sink;
  auto const junctions =
      lower::read_designs({"bad.leat",
                           "leat 1\nmarks {\n  i inlet m1\n  k outlet k1\n}\njunction one {\n  "
                           "level 0 {\n    |ik|\n  }\n}\n"
                           "junction two {\n  level 0 {\n    |i?|\n  }\n}\n"},
                          sink);
  CHECK(!sink.empty());
  CHECK(junctions.empty());
}
