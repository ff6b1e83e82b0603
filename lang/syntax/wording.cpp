#include "lang/syntax/wording.hpp"

#include <fmt/format.h>

#include <string_view>

#include "lang/syntax/print.hpp"

namespace leat::syntax {

namespace {

std::string quoted(Text const& text) {
  std::string shown = "\"";
  for (char const letter : text.text) {
    if (letter == '"' || letter == '\\') shown += '\\';
    shown += letter;
  }
  return shown + '"';
}

std::string duration(Duration const& duration) {
  return fmt::format("{} {}", duration.amount.value, duration.unit.text);
}

std::string place(PlaceReference const& place) {
  auto const junction = place.junction ? place.junction->text + " " : std::string();
  return fmt::format("{}{} {} {}", junction, place.x.value, place.y.value, place.z.value);
}

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
      out += node.name;
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

std::string choice(MaterialChoice const& choice) {
  if (!choice.control) return choice.material.text;
  return fmt::format("{} when {} else {}", choice.material.text, print(*choice.control),
                     choice.otherwise->text);
}

std::string_view keyword(MarkRole role) {
  switch (role) {
    case MarkRole::inlet:
      return "inlet";
    case MarkRole::outlet:
      return "outlet";
    case MarkRole::plate:
      return "plate";
    case MarkRole::none:
      break;
  }
  return "";
}

std::string listed(std::vector<Word> const& words) {
  std::string shown;
  for (auto const& word : words) {
    shown += &word == &words.front() ? "" : ", ";
    shown += word.text;
  }
  return shown;
}

std::string subject(Clause const& clause) {
  std::string shown;
  if (!clause.events.empty()) shown += "after " + listed(clause.events) + ": ";
  if (clause.body) shown += clause.body->text + " from ";
  if (clause.subject) shown += clause.subject->text + " ";
  return shown;
}

std::string dealing(Clause const& clause) {
  auto const train =
      fmt::format("deals {} every {}", listed(clause.dealt), duration(*clause.duration));
  if (!clause.rounds) return train;
  auto const rounds = clause.rounds->value;
  return fmt::format("{} for {} round{}", train, rounds, rounds == 1 ? "" : "s");
}

std::string predicate(Clause const& clause) {
  auto const& object = clause.object.text;
  switch (clause.kind) {
    case ClauseKind::reaches:
      return "reaches " + object;
    case ClauseKind::may_reach:
      return "may reach " + object;
    case ClauseKind::never_reaches:
      return "never reaches " + object;
    case ClauseKind::never_state:
      return "never " + object;
    case ClauseKind::clears:
      return "clear within " + duration(*clause.duration);
    case ClauseKind::deals:
      return dealing(clause);
    case ClauseKind::findings_none:
      return object.empty() ? "findings none" : "findings none above " + object;
    case ClauseKind::finds:
      break;
  }
  return "finds " + object + (clause.place ? " at " + place(*clause.place) : "");
}

}  // namespace

std::string_view keyword_of(SignalKind kind) {
  switch (kind) {
    case SignalKind::lever:
      return "lever";
    case SignalKind::button:
      return "button";
    case SignalKind::plate:
      return "plate";
    case SignalKind::wire:
      return "wire";
    case SignalKind::latch:
      return "latch";
    case SignalKind::toggle:
      return "toggle";
    case SignalKind::clock:
      break;
  }
  return "clock";
}

std::string print(Expression const& expression) {
  std::string out;
  put(expression, out);
  return out;
}

std::string print(Clause const& clause) { return line_of(clause); }

std::string line_of(SignalDeclaration const& signal) {
  auto line = fmt::format("{:<6} {}", keyword_of(signal.kind), signal.name.text);
  switch (signal.kind) {
    case SignalKind::button:
      line += " for " + duration(*signal.duration);
      break;
    case SignalKind::clock:
      line += " every " + duration(*signal.duration);
      break;
    case SignalKind::wire:
      line += " = " + print(*signal.on);
      if (signal.duration) line += " after " + duration(*signal.duration);
      break;
    case SignalKind::latch:
      line += " on " + print(*signal.on) + " off " + print(*signal.off);
      break;
    case SignalKind::toggle:
      line += " on " + print(*signal.on);
      break;
    case SignalKind::lever:
    case SignalKind::plate:
      break;
  }
  if (signal.starts) line += " starts " + signal.starts->text;
  return line;
}

std::string line_of(MaterialDeclaration const& material) {
  auto const& line = material.name.text;
  return material.traits.empty() ? line : line + " " + listed(material.traits);
}

std::string line_of(MarkDeclaration const& mark) {
  if (mark.role == MarkRole::none)
    return fmt::format("{} {}", mark.glyph.text, choice(*mark.choice));
  auto const line =
      fmt::format("{} {} {}", mark.glyph.text, keyword(mark.role), mark.role_name.text);
  return mark.choice ? line + " in " + choice(*mark.choice) : line;
}

std::string line_of(BodyProperty const& property) {
  if (!property.value) return property.name.text;
  return fmt::format("{} {}", property.name.text, property.value->value);
}

std::string line_of(PracticeSetting const& setting) {
  return fmt::format("{} {}", setting.name.text, setting.value.value);
}

std::string line_of(AcceptDeclaration const& accept) {
  auto line = "accept " + accept.finding.text;
  if (accept.place) line += " at " + place(*accept.place);
  if (accept.condition) line += " when " + print(*accept.condition);
  return line + " because " + quoted(accept.reason);
}

std::string line_of(Clause const& clause) {
  auto line = subject(clause) + predicate(clause);
  if (clause.condition) line += " when " + print(*clause.condition);
  return clause.is_otherwise ? line + " otherwise" : line;
}

std::string head_of(LevelDeclaration const& level) {
  auto const head = fmt::format("level {}", level.lowest.literal.value);
  return level.highest ? fmt::format("{}..{}", head, level.highest->literal.value) : head;
}

std::string head_of(JunctionDeclaration const& junction) {
  auto const head = "junction " + junction.name.text;
  return junction.title ? fmt::format("{} {}", head, quoted(*junction.title)) : head;
}

std::string head_of(ExpectDeclaration const& expect) {
  std::string head = "expect";
  if (expect.title) head = fmt::format("{} {}", head, quoted(*expect.title));
  return expect.junction ? head + " of " + expect.junction->text : head;
}

std::string head_of(TableDeclaration const& table) {
  std::string head = "expect table ";
  if (table.body) head += table.body->text + " from ";
  head += table.inlet.text;
  return table.junction ? head + " of " + table.junction->text : head;
}

}  // namespace leat::syntax
