#include "lang/render/condition.hpp"

#include <fmt/format.h>

#include <bit>

namespace leat::render {

namespace {

std::string bracketed(std::string const& text) { return fmt::format("({})", text); }
std::string negated(std::string const& text) { return fmt::format("not {}", text); }

// The inputs that a cube or a clause names, with a word between them.
template <class Term>
std::string literals_text(Term const& term, std::vector<std::string> const& inputs,
                          std::string_view between) {
  std::string result;
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    if ((term.care >> i & 1u) == 0) continue;
    if (!result.empty()) result += between;
    if ((term.value >> i & 1u) == 0) result += "not ";
    result += inputs[i];
  }
  return result;
}

// Several of them, those of more than one input in brackets, with the other word between them.
template <class Term>
std::string terms_text(std::vector<Term> const& terms, std::vector<std::string> const& inputs,
                       std::string_view inside, std::string_view between) {
  if (terms.size() == 1) return literals_text(terms.front(), inputs, inside);
  std::string result;
  for (auto const& term : terms) {
    if (!result.empty()) result += between;
    auto const text = literals_text(term, inputs, inside);
    result += std::popcount(term.care) > 1 ? bracketed(text) : text;
  }
  return result;
}

std::string sum_text(std::vector<logic::Cube> const& cubes,
                     std::vector<std::string> const& inputs) {
  if (cubes.empty()) return "off";
  bool const is_always = cubes.size() == 1 && cubes.front().care == 0;
  return is_always ? "on" : terms_text(cubes, inputs, " and ", " or ");
}

bool is_two_sided(model::Operator op) {
  return op == model::Operator::conjunction || op == model::Operator::disjunction ||
         op == model::Operator::parity;
}

std::string_view operator_word(model::Operator op) {
  if (op == model::Operator::conjunction) return " and ";
  return op == model::Operator::disjunction ? " or " : " xor ";
}

// An expression with the operators still to be written around it.
struct Pending {
  std::string text;
  model::Operator op;
};

std::string operand(Pending const& inner, model::Operator outer) {
  bool const needs_brackets = is_two_sided(inner.op) && inner.op != outer;
  return needs_brackets ? bracketed(inner.text) : inner.text;
}

Pending written(model::Circuit const& circuit, std::vector<source::Named> const& signals,
                model::ExpressionId id) {
  using enum model::Operator;
  auto const& node = circuit.expressions[id];
  switch (node.op) {
    case constant:
      return {node.left != 0 ? "on" : "off", constant};
    case signal:
      return {signals[node.left].name, signal};
    case negation:
      return {negated(operand(written(circuit, signals, node.left), negation)), negation};
    default:
      break;
  }
  auto const left = written(circuit, signals, node.left);
  auto const right = written(circuit, signals, node.right);
  std::string text = operand(left, node.op);
  text += operator_word(node.op);
  text += operand(right, node.op);
  return {std::move(text), node.op};
}

}  // namespace

std::string condition_expression(logic::Statement const& statement,
                                 std::vector<std::string> const& inputs) {
  using Form = logic::Statement::Form;
  if (statement.form == Form::product)
    return terms_text(statement.clauses, inputs, " or ", " and ");
  auto const sum = sum_text(statement.cubes, inputs);
  if (statement.form == Form::sum) return sum;
  bool const is_one_name = statement.cubes.size() == 1 &&
                           std::popcount(statement.cubes.front().care) == 1 &&
                           statement.cubes.front().value != 0;
  return negated(is_one_name ? sum : bracketed(sum));
}

std::string condition_expression(logic::RowSet const& rows, logic::RowSet const& reachable,
                                 std::vector<std::string> const& inputs) {
  return condition_expression(logic::shortest_statement(rows, reachable), inputs);
}

std::string condition_words(logic::RowSet const& rows, logic::RowSet const& reachable,
                            std::vector<std::string> const& inputs) {
  if (rows.is_empty()) return "never";
  if ((reachable & ~rows).is_empty()) return "always";
  return fmt::format("when {}", condition_expression(rows, reachable, inputs));
}

std::string expression_text(model::Circuit const& circuit,
                            std::vector<source::Named> const& signals, model::ExpressionId id) {
  return written(circuit, signals, id).text;
}

}  // namespace leat::render
