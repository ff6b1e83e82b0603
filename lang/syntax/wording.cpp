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

std::vector<std::string> choice(MaterialChoice const& choice) {
  if (!choice.control) return {choice.material.text};
  return {choice.material.text,
          fmt::format("when {} else {}", print(*choice.control), choice.otherwise->text)};
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
  return "finds " + object;
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

Wording wording_of(SignalDeclaration const& signal) {
  Wording wording{{std::string(keyword_of(signal.kind)), print(signal.name)}, Shape::signal};
  auto& cells = wording.cells;
  switch (signal.kind) {
    case SignalKind::button:
      cells.push_back("for " + print(*signal.duration));
      break;
    case SignalKind::clock:
      cells.push_back("every " + print(*signal.duration));
      break;
    case SignalKind::wire:
      cells.push_back("= " + print(*signal.on));
      if (signal.duration) cells.back() += " after " + print(*signal.duration);
      break;
    case SignalKind::latch:
      cells.push_back("on " + print(*signal.on) + " off " + print(*signal.off));
      break;
    case SignalKind::toggle:
      cells.push_back("on " + print(*signal.on));
      break;
    case SignalKind::lever:
    case SignalKind::plate:
      break;
  }
  if (signal.starts) cells.push_back("starts " + signal.starts->text);
  return wording;
}

Wording wording_of(NeverDeclaration const& never) {
  return {{"never", print(never.condition)}, Shape::signal};
}

Wording wording_of(MaterialDeclaration const& material) {
  Wording wording{{material.name.text}, Shape::material};
  if (!material.traits.empty()) wording.cells.push_back(listed(material.traits));
  return wording;
}

// A mark keeps some distance to its meaning.
Wording wording_of(MarkDeclaration const& mark) {
  Wording wording{{mark.glyph.text + " "}, Shape::mark};
  auto& cells = wording.cells;
  auto const material = mark.choice ? choice(*mark.choice) : std::vector<std::string>();
  if (mark.role == MarkRole::none) {
    cells.insert(cells.end(), material.begin(), material.end());
  } else {
    wording.shape = Shape::port_mark;
    cells.insert(cells.end(), {std::string(keyword(mark.role)), print(mark.role_name)});
    if (mark.choice) cells.push_back("in " + joined(material, " "));
  }
  return wording;
}

Wording wording_of(BodyProperty const& property) {
  Wording wording{{property.name.text}, Shape::setting};
  if (!property.value) return wording;
  auto const value = property.value->value;
  auto const unit = property.name.text != "breath" ? "" : value == 1 ? " tick" : " ticks";
  wording.cells.push_back(std::to_string(value) + unit);
  return wording;
}

Wording wording_of(PracticeSetting const& setting) {
  return {{setting.name.text, std::to_string(setting.value.value)}, Shape::setting};
}

Wording wording_of(AcceptDeclaration const& accept) {
  auto line = "accept " + accept.finding.text;
  if (accept.place) line += " at " + place(*accept.place);
  if (accept.condition) line += " when " + print(*accept.condition);
  return {{line + " because " + print(accept.reason)}};
}

namespace {

Shape shape_of(Clause const& clause) {
  if (clause.kind == ClauseKind::finds) return Shape::finding;
  if (clause.kind == ClauseKind::clears) return Shape::none;
  return clause.body ? Shape::body_route : Shape::route;
}

}  // namespace

Wording wording_of(Clause const& clause) {
  Wording wording{{""}, shape_of(clause)};
  auto& cells = wording.cells;
  if (!clause.events.empty()) cells.back() += "after " + listed(clause.events) + ": ";
  if (clause.body) {
    cells.back() += print(*clause.body);
    cells.emplace_back("from ");
  }
  if (clause.subject) cells.back() += print(*clause.subject) + " ";
  cells.back() += predicate(clause);
  if (clause.place) cells.push_back("at " + place(*clause.place));
  if (clause.condition) cells.push_back("when " + print(*clause.condition));
  if (clause.is_otherwise) cells.emplace_back("otherwise");
  return wording;
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
