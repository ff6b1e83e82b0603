#include "lang/syntax/expression.hpp"

#include "tests/lang/grammar/reading_of.hpp"
#include "tests/support/catch.hpp"

using namespace leat::tests;

TEST_CASE("names and constants") {
  CHECK(expression_of("divert") == "divert");
  CHECK(expression_of("on") == "ON");
  CHECK(expression_of("off") == "OFF");
  CHECK(expression_of("only") == "only");
  CHECK(expression_of("_a1") == "_a1");
  CHECK(expression_of("m\xc3\xbchle") == "m\xc3\xbchle");
}

TEST_CASE("not binds tighter than and, and tighter than xor, xor tighter than or") {
  CHECK(expression_of("not a and b") == "and(not(a),b)");
  CHECK(expression_of("a and b xor c and d") == "xor(and(a,b),and(c,d))");
  CHECK(expression_of("a xor b or c xor d") == "or(xor(a,b),xor(c,d))");
  CHECK(expression_of("a or b and c") == "or(a,and(b,c))");
  CHECK(expression_of("not not a") == "not(not(a))");
}

TEST_CASE("chains are flat and parentheses are kept apart") {
  CHECK(expression_of("a and b and c") == "and(a,b,c)");
  CHECK(expression_of("a xor b xor c") == "xor(a,b,c)");
  CHECK(expression_of("(a and b) and c") == "and(and(a,b),c)");
  CHECK(expression_of("(a or b) and c") == "and(or(a,b),c)");
  CHECK(expression_of("((a))") == "a");
  CHECK(expression_of("not (a or b)") == "not(or(a,b))");
}

TEST_CASE("an expression goes on over lines at its words and parentheses") {
  CHECK(expression_of("a\n  and b or\n c and (\nd\n)") == "or(and(a,b),and(c,d))");
}

TEST_CASE("every node has the span of its own text") {
  std::string const text = "leat 1 signals { wire w = (a or b ) and not c  # why\n}";
  auto const document = document_of(text);
  auto const& wire =
      std::get<leat::syntax::SignalsDeclaration>(document.declarations.at(0)).signals.at(0);
  auto const at = [&](leat::source::Span span) {
    return text.substr(span.begin, span.end - span.begin);
  };
  CHECK(at(wire.span) == "wire w = (a or b ) and not c");
  CHECK(at(wire.on->span) == "(a or b ) and not c");
  CHECK(at(wire.on->operands.at(0).span) == "(a or b )");
  CHECK(at(wire.on->operands.at(0).operands.at(1).span) == "b");
  CHECK(at(wire.on->operands.at(1).span) == "not c");
}

TEST_CASE("a missing operand is shown at the end of what was written") {
  CHECK(reports_of("leat 1\nsignals {\n  wire w = a and  # later\n  lever b\n}\n") ==
        "3:17 cut-short\n"
        "  The wire is cut short: a signal, 'on', 'off', 'not' or '(' is missing\n"
        "  [] a signal, 'on', 'off', 'not' or '(' is expected here\n"
        "  > A wire is written: wire NAME = EXPRESSION, or wire NAME = EXPRESSION after 4 ticks\n");
}

TEST_CASE("a missing parenthesis is one report") {
  CHECK(reports_of("leat 1\nsignals {\n  wire w = (a or b\n  lever c\n}\n") ==
        "3:19 cut-short\n"
        "  The wire is cut short: ')' is missing\n"
        "  [] ')' is expected here\n"
        "  > A wire is written: wire NAME = EXPRESSION, or wire NAME = EXPRESSION after 4 ticks\n");
}

TEST_CASE("a misspelt word between operands is named") {
  CHECK(reports_of("leat 1\nsignals { wire w = a adn b }\n") ==
        "2:22 unknown-entry\n"
        "  'adn' does not begin a signal\n"
        "  [adn] 'lever', 'button', 'plate', 'wire', 'latch', 'toggle', 'clock', 'never', 'for' or "
        "'}' "
        "is expected here\n"
        "  > Perhaps 'and' is meant.\n");
  CHECK(reports_of("leat 1\nsignals { wire w = nto a }\n") ==
        "2:20 misspelt-word\n"
        "  'nto' is not understood here\n"
        "  [nto] this may be a misspelt word\n"
        "  > Perhaps 'not' is meant.\n");
}

TEST_CASE("200 levels are read, 201 are refused, and so are ten thousand") {
  auto const nested = [](std::size_t levels) {
    return std::string(levels, '(') + "a" + std::string(levels, ')');
  };
  auto const file = [](std::string const& text) {
    return "leat 1\nsignals {\n wire w = " + text + "\n}\n";
  };
  CHECK(expression_of(nested(200)) == "a");
  CHECK(reports_of(file(nested(201))) ==
        "3:211 nested-too-deep\n"
        "  An expression is nested more than 200 levels deep\n"
        "  [(] this level is one too many\n"
        "  > Name a part of it by a wire.\n");
  CHECK(faults_of(file(nested(10'000))) == std::vector<std::string>{"3:211 nested-too-deep"});
  std::string many_nots;
  for (int i = 0; i < 10'000; ++i) many_nots += "not ";
  CHECK(faults_of(file(many_nots + "a")) == std::vector<std::string>{"3:811 nested-too-deep"});
}

TEST_CASE("a chain of a hundred thousand operands is flat") {
  std::string chain = "a";
  for (int i = 1; i < 100'000; ++i) chain += " and a";
  auto const document = document_of("leat 1 signals { wire w = " + chain + "\n}");
  auto const& wire =
      std::get<leat::syntax::SignalsDeclaration>(document.declarations.at(0)).signals.at(0);
  CHECK(wire.on->operands.size() == 100'000);
}
