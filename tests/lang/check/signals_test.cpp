#include <random>

#include "lang/check/constant_control.hpp"
#include "tests/lang/check/faults.hpp"
#include "tests/support/catch.hpp"

using namespace leat::check;

namespace {

Faults with_signals(std::string const& signals) {
  return names_of_faults(Sample{.signals = "  lever divert\n" + signals}.text());
}

}  // namespace

TEST_CASE("wires may use each other in any order") {
  CHECK(with_signals("  wire shut = late\n  wire late = not divert\n") == Faults{});
}

TEST_CASE("a loop of wires is one fault that names the loop with every wire in it") {
  auto const reports = reports_on(
      Sample{.signals = "  lever divert\n  wire ahead = back or divert\n  wire back = not third\n"
                        "  wire third = ahead\n  wire hanging = third\n"}
          .text());
  REQUIRE(reports.size() == 1);
  CHECK(reports.front().name == "loop-of-wires");
  CHECK(reports.front().headline.find("ahead -> back -> third -> ahead") != std::string::npos);
  CHECK(reports.front().others.size() == 2);
}

TEST_CASE("separate loops are separate faults") {
  CHECK(with_signals("  wire a1 = a1\n  wire b1 = not b2\n  wire b2 = b1\n") ==
        Faults{"loop-of-wires", "loop-of-wires"});
}

TEST_CASE("a long chain of wires is no loop") {
  std::string wires = "  wire w0 = divert\n";
  for (int i = 1; i < 20000; ++i) wires += fmt::format("  wire w{} = not w{}\n", i, i - 1);
  CHECK(with_signals(wires) == Faults{});
}

TEST_CASE("memory, delays and clocks are read") {
  CHECK(with_signals("  latch parked on divert off not divert\n") == Faults{});
  CHECK(with_signals("  toggle turned1 on divert\n") == Faults{});
  CHECK(with_signals("  clock beat every 40 ticks\n") == Faults{});
  CHECK(with_signals("  wire late = divert after 4 ticks\n") == Faults{});
  CHECK(with_signals("  button flush for 20 ticks\n") == Faults{});
}

TEST_CASE("a loop needs memory or a delay in it") {
  CHECK(with_signals("  wire late = not late after 4 ticks\n") == Faults{});
  CHECK(with_signals("  wire shut = parked\n  latch parked on shut off divert\n") == Faults{});
  CHECK(with_signals("  wire shut = not open1\n  wire open1 = not shut\n") ==
        Faults{"loop-of-wires"});
}

TEST_CASE("times lie in their range") {
  CHECK(with_signals("  button flush for 0 ticks\n") == Faults{"duration-out-of-range"});
  CHECK(with_signals("  button flush for 1000001 ticks\n") == Faults{"duration-out-of-range"});
  CHECK(with_signals("  button flush for 1000000 ticks\n") == Faults{});
  CHECK(with_signals("  button flush for 50000 s\n") == Faults{});
  CHECK(with_signals("  button flush for 50001 s\n") == Faults{"duration-out-of-range"});
  CHECK(with_signals("  button flush for 99999999999999999999 s\n") ==
        Faults{"duration-out-of-range"});
  for (std::string const time :
       {"0 ticks", "0 s", "1000001 ticks", "50001 s", "99999999999999999999 ticks"}) {
    CHECK(with_signals("  wire late = divert after " + time + "\n") ==
          Faults{"duration-out-of-range"});
    CHECK(with_signals("  clock beat every " + time + "\n") == Faults{"duration-out-of-range"});
  }
}

TEST_CASE("a wire uses what is declared after it, and the order puts it behind") {
  leat::source::SourceText const source("sample.leat",
                                        "leat 1\nsignals {\n  wire last = middle\n  wire middle = "
                                        "first\n  wire first = a1\n  lever a1\n}\n");
  leat::diagnostics::Sink sink;
  auto const document = leat::grammar::parse(source, sink);
  REQUIRE(sink.empty());
  auto const names = collect_names(document, source, sink);
  UnknownNames unknown(names, document);
  auto const signals = read_signals({document, source, names, unknown, sink}, {});
  CHECK(signals.wire_order == std::vector<leat::model::SignalId>{2, 1, 0});
}

namespace {

using leat::syntax::Expression;
using leat::syntax::ExpressionKind;

Expression random_expression(std::mt19937& random, int depth, int inputs) {
  Expression expression;
  auto const pick = [&](int count) {
    return static_cast<int>(random() % static_cast<unsigned>(count));
  };
  if (depth == 0 || pick(4) == 0) {
    expression.kind = pick(12) == 0 ? ExpressionKind::constant : ExpressionKind::name;
    expression.value = pick(2) == 1;
    expression.name = fmt::format("v{}", pick(inputs));
    return expression;
  }
  constexpr ExpressionKind kinds[] = {ExpressionKind::negation, ExpressionKind::conjunction,
                                      ExpressionKind::disjunction, ExpressionKind::parity};
  expression.kind = kinds[pick(4)];
  auto const operands = expression.kind == ExpressionKind::negation ? 1 : 2 + pick(2);
  for (int i = 0; i < operands; ++i)
    expression.operands.push_back(random_expression(random, depth - 1, inputs));
  return expression;
}

bool value_of(Expression const& expression, unsigned setting) {
  if (expression.kind == ExpressionKind::constant) return expression.value;
  if (expression.kind == ExpressionKind::name)
    return (setting >> std::stoul(expression.name.substr(1)) & 1) != 0;
  if (expression.kind == ExpressionKind::negation)
    return !value_of(expression.operands[0], setting);
  bool value = value_of(expression.operands[0], setting);
  for (std::size_t i = 1; i < expression.operands.size(); ++i) {
    bool const other = value_of(expression.operands[i], setting);
    value = expression.kind == ExpressionKind::conjunction   ? value && other
            : expression.kind == ExpressionKind::disjunction ? value || other
                                                             : value != other;
  }
  return value;
}

}  // namespace

TEST_CASE("a condition is called constant exactly when every setting gives the same") {
  constexpr int inputs = 8;
  leat::syntax::Document document;
  leat::syntax::SignalsDeclaration block;
  for (int i = 0; i < inputs; ++i) {
    auto& signal = block.signals.emplace_back();
    signal.name.text = fmt::format("v{}", i);
  }
  document.declarations.emplace_back(block);
  leat::diagnostics::Sink sink;
  auto const names = collect_names(document, {"sample.leat", ""}, sink);
  ConstantFinder finder(names, Signals{});
  std::mt19937 random(7);
  int constants = 0;
  for (int turn = 0; turn < 3000; ++turn) {
    auto const expression = random_expression(random, 1 + turn % 4, 1 + turn % inputs);
    bool const first = value_of(expression, 0);
    bool is_constant = true;
    for (unsigned setting = 1; setting < 1u << inputs; ++setting)
      is_constant = is_constant && value_of(expression, setting) == first;
    constants += is_constant ? 1 : 0;
    REQUIRE(finder.constant_value(expression) ==
            (is_constant ? std::optional(first) : std::nullopt));
  }
  CHECK(constants > 100);
  CHECK(constants < 2900);
}
