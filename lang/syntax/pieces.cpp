#include <fmt/format.h>

#include <string_view>

#include "lang/syntax/print.hpp"

// The pieces of a line: names, numbers, times, texts and expressions.
namespace leat::syntax {

namespace {

// ---- expressions over signals ----

// How tightly a node binds; what binds looser than its surroundings needs parentheses.
int tightness(ExpressionKind kind) {
  switch (kind) {
    case ExpressionKind::disjunction:
      return 0;
    case ExpressionKind::parity:
      return 1;
    case ExpressionKind::conjunction:
      return 2;
    case ExpressionKind::negation:
      return 3;
    case ExpressionKind::constant:
    case ExpressionKind::name:
      break;
  }
  return 4;
}

std::string_view joint(ExpressionKind kind) {
  if (kind == ExpressionKind::disjunction) return " or ";
  return kind == ExpressionKind::parity ? " xor " : " and ";
}

// A name with the numbers in its brackets back in their places.
std::string indexed(std::string const& name, std::vector<Index> const& indices) {
  std::string shown;
  std::size_t at = 0;
  for (auto const& index : indices) {
    shown.append(name, at, index.at - at);
    shown += "[" + print(index.value) + "]";
    at = index.at;
  }
  return shown + name.substr(at);
}

void put(Expression const& node, std::string& out);

// A chain inside a chain of its own kind is another node and keeps its parentheses.
void put_operand(Expression const& operand, ExpressionKind around, std::string& out) {
  bool const is_negation_of_atom =
      around == ExpressionKind::negation && tightness(operand.kind) >= tightness(around);
  bool const is_bare = is_negation_of_atom || tightness(operand.kind) > tightness(around);
  if (!is_bare) out += '(';
  put(operand, out);
  if (!is_bare) out += ')';
}

void put(Expression const& node, std::string& out) {
  switch (node.kind) {
    case ExpressionKind::constant:
      out += node.value ? "on" : "off";
      return;
    case ExpressionKind::name:
      out += indexed(node.name, node.indices);
      return;
    case ExpressionKind::negation:
      out += "not ";
      put_operand(node.operands.front(), node.kind, out);
      return;
    default:
      break;
  }
  for (std::size_t i = 0; i < node.operands.size(); ++i) {
    if (i > 0) out += joint(node.kind);
    put_operand(node.operands[i], node.kind, out);
  }
}

// ---- numbers ----

int tightness(NumberKind kind) {
  switch (kind) {
    case NumberKind::sum:
    case NumberKind::difference:
      return 0;
    case NumberKind::product:
    case NumberKind::quotient:
    case NumberKind::remainder:
      return 1;
    case NumberKind::negation:
      return 2;
    case NumberKind::power:
      return 3;
    case NumberKind::literal:
    case NumberKind::name:
      break;
  }
  return 4;
}

std::string_view sign_of(NumberKind kind) {
  switch (kind) {
    case NumberKind::sum:
      return " + ";
    case NumberKind::difference:
      return " - ";
    case NumberKind::product:
      return " * ";
    case NumberKind::quotient:
      return " / ";
    case NumberKind::remainder:
      return " mod ";
    default:
      break;
  }
  return " ^ ";
}

void put(NumberExpression const& node, std::string& out);

void put_operand(NumberExpression const& operand, bool is_bare, std::string& out) {
  if (!is_bare) out += '(';
  put(operand, out);
  if (!is_bare) out += ')';
}

// Operations of one strength join from the left, powers from the right; a sign may stand bare
// behind a power's sign: `2 ^ -k`.
void put(NumberExpression const& node, std::string& out) {
  auto const here = tightness(node.kind);
  switch (node.kind) {
    case NumberKind::literal:
      out += std::to_string(node.literal.value);
      return;
    case NumberKind::name:
      out += node.name;
      return;
    case NumberKind::negation:
      out += '-';
      put_operand(node.operands.front(), tightness(node.operands.front().kind) >= here, out);
      return;
    default:
      break;
  }
  auto const &left = node.operands.front(), &right = node.operands.back();
  bool const is_power = node.kind == NumberKind::power;
  put_operand(left, is_power ? tightness(left.kind) > here : tightness(left.kind) >= here, out);
  out += sign_of(node.kind);
  put_operand(right,
              is_power ? tightness(right.kind) >= tightness(NumberKind::negation)
                       : tightness(right.kind) > here,
              out);
}

}  // namespace

std::string print(Expression const& expression) {
  std::string out;
  put(expression, out);
  return out;
}

std::string print(NumberExpression const& number) {
  std::string out;
  put(number, out);
  return out;
}

std::string print_bare(NumberExpression const& number) {
  bool const is_signed =
      number.kind == NumberKind::negation && number.operands.front().kind == NumberKind::literal;
  bool const is_bare =
      is_signed || number.kind == NumberKind::literal || number.kind == NumberKind::name;
  return is_bare ? print(number) : fmt::format("({})", print(number));
}

std::string print(Word const& word) { return indexed(word.text, word.indices); }

std::string print(Text const& text) {
  std::string shown = "\"";
  for (char const letter : text.text) {
    if (letter == '"' || letter == '\\') shown += '\\';
    shown += letter;
  }
  return shown + '"';
}

std::string print(Duration const& duration) {
  return fmt::format("{} {}", duration.amount.value, duration.unit.text);
}

}  // namespace leat::syntax
