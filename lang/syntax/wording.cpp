#include "lang/syntax/wording.hpp"

#include <fmt/format.h>

#include <string_view>

#include "lang/syntax/print.hpp"

namespace leat::syntax {

namespace {

std::string place(PlaceReference const& place) {
  auto const junction = place.junction ? place.junction->text + " " : std::string();
  return fmt::format("{}{} {} {}", junction, place.x.value, place.y.value, place.z.value);
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
    shown += print(word);
  }
  return shown;
}

std::string subject(Clause const& clause) {
  std::string shown;
  if (!clause.events.empty()) shown += "after " + listed(clause.events) + ": ";
  if (clause.body) shown += print(*clause.body) + " from ";
  if (clause.subject) shown += print(*clause.subject) + " ";
  return shown;
}

std::string dealing(Clause const& clause) {
  auto const train =
      fmt::format("deals {} every {}", listed(clause.dealt), print(*clause.duration));
  if (!clause.rounds) return train;
  auto const rounds = clause.rounds->value;
  return fmt::format("{} for {} round{}", train, rounds, rounds == 1 ? "" : "s");
}

std::string predicate(Clause const& clause) {
  auto const object = print(clause.object);
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
      return "clear within " + print(*clause.duration);
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

std::string print(Clause const& clause) { return line_of(clause); }

std::string line_of(SignalDeclaration const& signal) {
  auto line = fmt::format("{:<6} {}", keyword_of(signal.kind), print(signal.name));
  switch (signal.kind) {
    case SignalKind::button:
      line += " for " + print(*signal.duration);
      break;
    case SignalKind::clock:
      line += " every " + print(*signal.duration);
      break;
    case SignalKind::wire:
      line += " = " + print(*signal.on);
      if (signal.duration) line += " after " + print(*signal.duration);
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

std::string line_of(NeverDeclaration const& never) { return "never  " + print(never.condition); }

std::string line_of(MaterialDeclaration const& material) {
  auto const& line = material.name.text;
  return material.traits.empty() ? line : line + " " + listed(material.traits);
}

std::string line_of(MarkDeclaration const& mark) {
  if (mark.role == MarkRole::none)
    return fmt::format("{} {}", mark.glyph.text, choice(*mark.choice));
  auto const line =
      fmt::format("{} {} {}", mark.glyph.text, keyword(mark.role), print(mark.role_name));
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
  return line + " because " + print(accept.reason);
}

std::string line_of(Clause const& clause) {
  auto line = subject(clause) + predicate(clause);
  if (clause.condition) line += " when " + print(*clause.condition);
  return clause.is_otherwise ? line + " otherwise" : line;
}

std::string head_of(LevelDeclaration const& level) {
  auto const head = "level " + print_bare(level.lowest);
  return level.highest ? fmt::format("{}..{}", head, print_bare(*level.highest)) : head;
}

std::string head_of(JunctionDeclaration const& junction) {
  auto const head = "junction " + junction.name.text;
  return junction.title ? fmt::format("{} {}", head, print(*junction.title)) : head;
}

std::string head_of(ExpectDeclaration const& expect) {
  std::string head = "expect";
  if (expect.title) head = fmt::format("{} {}", head, print(*expect.title));
  return expect.junction ? head + " of " + expect.junction->text : head;
}

std::string head_of(TableDeclaration const& table) {
  std::string head = "expect table ";
  if (table.body) head += table.body->text + " from ";
  head += print(table.inlet);
  return table.junction ? head + " of " + table.junction->text : head;
}

}  // namespace leat::syntax
