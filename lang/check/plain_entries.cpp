#include <fmt/format.h>

#include <utility>

#include "lang/check/unfold.hpp"

// What is plain of each kind of entry: no numbers in brackets, and literals for numbers.
namespace leat::check {

using syntax::Expression;
using syntax::Index;
using syntax::NumberDeclaration;
using syntax::NumberExpression;
using syntax::NumberKind;
using syntax::Word;

bool Unfolder::plain(NumberExpression& number, Numbers const& numbers) {
  if (number.kind == NumberKind::literal && !number.literal.is_too_large) return true;
  auto const value = evaluate(number, numbers);
  if (!value) return false;
  NumberExpression literal;
  literal.literal = {*value, false, number.span};
  literal.span = number.span;
  number = std::move(literal);
  return true;
}

std::optional<std::string> Unfolder::plain_name(std::string const& name,
                                                std::vector<Index> const& indices,
                                                Numbers const& numbers) {
  std::string made;
  std::size_t at = 0;
  for (auto const& index : indices) {
    auto const value = evaluate(index.value, numbers);
    if (!value) return std::nullopt;
    made.append(name, at, index.at - at);
    made += '[';
    made += fmt::format_int(*value).c_str();
    made += ']';
    at = index.at;
  }
  return made.append(name, at);
}

bool Unfolder::plain(Word& word, Numbers const& numbers) {
  if (word.indices.empty()) return true;
  auto name = plain_name(word.text, word.indices, numbers);
  if (!name) return false;
  word.text = std::move(*name);
  word.indices.clear();
  return true;
}

bool Unfolder::plain(std::vector<Word>& words, Numbers const& numbers) {
  bool is_sound = true;
  for (auto& word : words) is_sound = plain(word, numbers) && is_sound;
  return is_sound;
}

bool Unfolder::plain(Expression& node, Numbers const& numbers) {
  bool is_sound = true;
  for (auto& operand : node.operands) is_sound = plain(operand, numbers) && is_sound;
  if (node.indices.empty()) return is_sound;
  auto name = plain_name(node.name, node.indices, numbers);
  if (!name) return false;
  node.name = std::move(*name);
  node.indices.clear();
  return is_sound;
}

bool Unfolder::plain(syntax::SignalDeclaration& node, Numbers const& numbers) {
  return all_plain(numbers, node.name, node.on, node.off);
}

bool Unfolder::plain(syntax::NeverDeclaration& node, Numbers const& numbers) {
  return plain(node.condition, numbers);
}

bool Unfolder::plain(syntax::Clause& node, Numbers const& numbers) {
  return all_plain(numbers, node.events, node.body, node.subject, node.object, node.dealt,
                   node.condition);
}

bool Unfolder::plain(NumberDeclaration& node, Numbers const& scope) {
  auto const value = scope.find(node.name.text);
  if (!value) return false;
  NumberExpression literal;
  literal.literal = {*value, false, node.value.span};
  literal.span = node.value.span;
  node.value = std::move(literal);
  return true;
}

bool Unfolder::plain(syntax::PlaceDeclaration& node, Numbers const& numbers) {
  bool is_sound = all_plain(numbers, node.name, node.x, node.y, node.z);
  for (auto& number : node.numbers) is_sound = plain(number.value, numbers) && is_sound;
  for (auto& signal : node.signals)
    is_sound = all_plain(numbers, signal.name, signal.value) && is_sound;
  return is_sound;
}

bool Unfolder::plain(syntax::JoinDeclaration& node, Numbers const& numbers) {
  return all_plain(numbers, node.outlet, node.inlet);
}

bool Unfolder::plain(syntax::PortDeclaration& node, Numbers const& numbers) {
  return all_plain(numbers, node.name, node.port);
}

bool Unfolder::plain(syntax::MarkDeclaration& node, Numbers const& numbers) {
  bool const is_named = plain(node.role_name, numbers);
  return (!node.choice || plain(node.choice->control, numbers)) && is_named;
}

bool Unfolder::plain(syntax::TableRow& node, Numbers const& numbers) {
  return plain(node.outlets, numbers);
}

// A level that is written out keeps its mark of being too large: what levels there may be is asked
// elsewhere.
bool Unfolder::plain(syntax::LevelDeclaration& level, syntax::JunctionDeclaration const& junction,
                     Numbers const& numbers) {
  auto const made_plain = [&](NumberExpression& number) {
    return number.kind == NumberKind::literal || plain(number, numbers);
  };
  bool const is_known = made_plain(level.lowest);
  if ((level.highest && !made_plain(*level.highest)) || !is_known) return false;
  auto const& lowest = level.lowest;
  auto const& highest = level.highest ? *level.highest : lowest;
  if (lowest.literal.value >= 0 && highest.literal.value >= 0) return true;
  report_below_ground(lowest.literal.value < 0 ? lowest : highest, junction);
  return false;
}

}  // namespace leat::check
