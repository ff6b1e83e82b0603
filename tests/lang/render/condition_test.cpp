#include "lang/render/condition.hpp"

#include "tests/support/catch.hpp"

using namespace leat;
using namespace leat::render;

namespace {

std::vector<std::string> const names{"divert", "flush", "late"};

logic::RowSet rows_of(std::vector<logic::Row> const& rows) {
  logic::RowSet set(3);
  for (auto row : rows) set.insert(row);
  return set;
}

std::string said(std::vector<logic::Row> const& rows) {
  return condition_expression(rows_of(rows), logic::RowSet(3, true), names);
}

// Whether an expression that uses only `and`, `or`, `not` and brackets is true in a row.
struct Reader {
  std::string text;
  logic::Row row;
  std::size_t at = 0;

  void skip() {
    while (at < text.size() && text[at] == ' ') ++at;
  }
  bool takes(std::string const& word) {
    skip();
    if (text.compare(at, word.size(), word) != 0) return false;
    auto const end = at + word.size();
    if (word != "(" && word != ")" && end < text.size() && std::isalpha(text[end])) return false;
    at = end;
    return true;
  }
  bool sum() {
    bool value = product();
    while (takes("or")) value = product() || value;
    return value;
  }
  bool product() {
    bool value = literal();
    while (takes("and")) value = literal() && value;
    return value;
  }
  bool literal() {
    if (takes("not")) return !literal();
    if (takes("(")) {
      bool const value = sum();
      REQUIRE(takes(")"));
      return value;
    }
    if (takes("on")) return true;
    if (takes("off")) return false;
    for (std::size_t i = 0; i < names.size(); ++i) {
      if (takes(names[i])) return (row >> (2 - i) & 1u) != 0;
    }
    FAIL("no literal at " << text.substr(at));
    return false;
  }
};

}  // namespace

TEST_CASE("conditions are said as expressions of the language") {
  CHECK(said({}) == "off");
  CHECK(said({0, 1, 2, 3, 4, 5, 6, 7}) == "on");
  CHECK(said({4, 5}) == "divert and not flush");
  CHECK(said({4, 5, 6, 7}) == "divert");
  CHECK(said({0, 1, 2, 3}) == "not divert");
  CHECK(said({1, 3, 4, 5, 6, 7}) == "divert or late");
  CHECK(said({3, 5, 7}) == "late and (divert or flush)");
  CHECK(said({0, 1, 2, 3, 4, 5, 6}) == "not (divert and flush and late)");
}

TEST_CASE("for a reader, all and nothing are always and never") {
  CHECK(condition_words(rows_of({}), logic::RowSet(3, true), names) == "never");
  CHECK(condition_words(rows_of({0, 1, 2, 3, 4, 5, 6, 7}), logic::RowSet(3, true), names) ==
        "always");
  CHECK(condition_words(rows_of({4, 5, 6, 7}), logic::RowSet(3, true), names) == "when divert");
}

TEST_CASE("every condition over three inputs is true in exactly its rows") {
  for (unsigned set = 0; set < 256; ++set) {
    std::vector<logic::Row> rows;
    for (logic::Row row = 0; row < 8; ++row) {
      if ((set >> row & 1u) != 0) rows.push_back(row);
    }
    auto const text = said(rows);
    INFO(text);
    for (logic::Row row = 0; row < 8; ++row) {
      Reader reader{text, row};
      CHECK(reader.sum() == ((set >> row & 1u) != 0));
      CHECK(reader.at == text.size());
    }
  }
}

TEST_CASE("expressions of a circuit keep the brackets they need") {
  using enum model::Operator;
  model::Circuit circuit;
  auto const a = circuit.add({signal, 0, 0}), b = circuit.add({signal, 1, 0});
  auto const both = circuit.add({conjunction, a, b});
  auto const either = circuit.add({disjunction, both, b});
  auto const none = circuit.add({negation, either, 0});
  auto const odd = circuit.add({parity, none, circuit.add({constant, 1, 0})});
  std::vector<source::Named> const signals{{"a", {}}, {"b", {}}};
  CHECK(expression_text(circuit, signals, either) == "(a and b) or b");
  CHECK(expression_text(circuit, signals, none) == "not ((a and b) or b)");
  CHECK(expression_text(circuit, signals, odd) == "not ((a and b) or b) xor on");
}
