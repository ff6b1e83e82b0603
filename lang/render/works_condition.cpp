#include "lang/render/works_condition.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "engine/logic/diagram_cover.hpp"
#include "lang/render/table_lines.hpp"

namespace leat::render {

using logic::Diagram;
using works::Conditions;
using works::Function;

namespace {

enum class Reading { product, negated_clause };  // of the literals of a product

// The literals with `and` between them; or by de Morgan what their product leaves out, with `or`.
std::string literals_text(logic::Product const& product, std::vector<std::string> const& inputs,
                          Reading reading) {
  std::string text;
  for (auto const& literal : product) {
    if (!text.empty()) text += reading == Reading::product ? " and " : " or ";
    if (literal.is_on != (reading == Reading::product)) text += "not ";
    text += inputs[literal.level];
  }
  return text;
}

std::string terms_text(std::vector<logic::Product> const& products,
                       std::vector<std::string> const& inputs, Reading reading) {
  if (products.size() == 1) return literals_text(products.front(), inputs, reading);
  std::string text;
  for (auto const& product : products) {
    if (!text.empty()) text += reading == Reading::product ? " or " : " and ";
    auto const factor = literals_text(product, inputs, reading);
    text += product.size() > 1 ? fmt::format("({})", factor) : factor;
  }
  return text;
}

bool has_literal_on(logic::Product const& product) {
  return std::any_of(product.begin(), product.end(),
                     [](logic::Literal const& literal) { return literal.is_on; });
}

std::size_t length_of(std::vector<logic::Product> const& products, Reading reading) {
  std::size_t length = 0;
  for (auto const& product : products) {
    for (auto const& literal : product)
      length += literal.is_on == (reading == Reading::product) ? 1u : 2u;
  }
  return length;
}

std::string negated_text(std::vector<logic::Product> const& rest,
                         std::vector<std::string> const& inputs) {
  auto const text = terms_text(rest, inputs, Reading::product);
  bool const is_name = rest.size() == 1 && rest.front().size() == 1 && rest.front().front().is_on;
  return is_name ? fmt::format("not {}", text) : fmt::format("not ({})", text);
}

}  // namespace

std::string condition_expression(Conditions& conditions, Function f,
                                 std::vector<std::string> const& inputs, std::size_t most) {
  return condition_expression(conditions.diagram(), f, conditions.reachable(), inputs, most);
}

std::string condition_expression(Diagram& diagram, Function f, Function reachable,
                                 std::vector<std::string> const& inputs, std::size_t most) {
  auto const needed = diagram.both(f, reachable);
  auto const left_out = diagram.both(reachable, !needed);
  if (needed == Diagram::never) return "off";
  if (left_out == Diagram::never) return "on";
  auto const sum = logic::irredundant_cover(diagram, needed, !left_out, most);
  // One product as it is where something in it is on. Else the sum, all but the other sum, or the
  // clauses of the other one: the first of the shortest.
  if (sum && sum->size() == 1 && has_literal_on(sum->front()))
    return literals_text(sum->front(), inputs, Reading::product);
  auto const plain = sum ? length_of(*sum, Reading::product) : std::string::npos;
  auto const rest = logic::irredundant_cover(diagram, left_out, !needed, most, plain);
  if (!sum && !rest) return "(a condition too long to be written)";
  if (!rest) return terms_text(*sum, inputs, Reading::product);
  auto const negated = length_of(*rest, Reading::product) + 1;
  auto const clauses = length_of(*rest, Reading::negated_clause);
  if (clauses < std::min(plain, negated)) return terms_text(*rest, inputs, Reading::negated_clause);
  return plain <= negated ? terms_text(*sum, inputs, Reading::product)
                          : negated_text(*rest, inputs);
}

std::string condition_words(std::string const& expression) {
  if (expression == "on") return "always";
  if (expression == "off") return "never";
  return fmt::format("when {}", expression);
}

Count combinations_of(Conditions const& conditions, Function f) {
  auto const& diagram = conditions.diagram();
  return std::ldexp(diagram.share(f), static_cast<int>(conditions.variables().size()));
}

std::string where_words(Conditions& conditions, Function f,
                        std::vector<std::string> const& inputs) {
  return fmt::format("{} ({})", condition_expression(conditions, f, inputs),
                     share_words(combinations_of(conditions, f),
                                 combinations_of(conditions, conditions.reachable())));
}

}  // namespace leat::render
