#include "lang/render/works_condition.hpp"

#include <fmt/format.h>

#include <cmath>

#include "engine/logic/diagram_cover.hpp"
#include "lang/render/table_lines.hpp"

namespace leat::render {

using logic::Diagram;
using works::Conditions;
using works::Function;

namespace {

std::string product_text(logic::Product const& product, std::vector<std::string> const& inputs) {
  std::string text;
  for (auto const& literal : product) {
    if (!text.empty()) text += " and ";
    if (!literal.is_on) text += "not ";
    text += inputs[literal.level];
  }
  return text.empty() ? "on" : text;
}

std::string sum_text(std::vector<logic::Product> const& sum,
                     std::vector<std::string> const& inputs) {
  if (sum.empty()) return "off";
  if (sum.size() == 1) return product_text(sum.front(), inputs);
  std::string text;
  for (auto const& product : sum) {
    if (!text.empty()) text += " or ";
    auto const factor = product_text(product, inputs);
    text += product.size() > 1 ? fmt::format("({})", factor) : factor;
  }
  return text;
}

std::size_t length_of(std::vector<logic::Product> const& sum) {
  std::size_t length = 0;
  for (auto const& product : sum) {
    length += product.size();
    for (auto const& literal : product) length += literal.is_on ? 0u : 1u;
  }
  return length;
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
  auto const rest = logic::irredundant_cover(diagram, left_out, !needed, most);
  if (!sum && !rest) return fmt::format("(a condition of more than {} terms)", most);
  bool const is_negated = !sum || (rest && length_of(*rest) + 1 < length_of(*sum));
  if (!is_negated) return sum_text(*sum, inputs);
  auto const text = sum_text(*rest, inputs);
  bool const is_name =
      rest->size() == 1 && rest->front().size() == 1 && rest->front().front().is_on;
  return is_name ? fmt::format("not {}", text) : fmt::format("not ({})", text);
}

std::string condition_words(Conditions& conditions, Function f,
                            std::vector<std::string> const& inputs, std::size_t most) {
  auto const expression = condition_expression(conditions, f, inputs, most);
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
  return fmt::format("{}  ({})", condition_expression(conditions, f, inputs),
                     share_words(combinations_of(conditions, f),
                                 combinations_of(conditions, conditions.reachable())));
}

}  // namespace leat::render
