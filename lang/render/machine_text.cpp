#include <fmt/format.h>

#include <algorithm>

#include "lang/render/columns.hpp"
#include "lang/render/condition.hpp"
#include "lang/render/example.hpp"
#include "lang/render/machine.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using model::SignalKind;

constexpr std::size_t most_values = 32, most_oscillations = 8, most_events = 8, most_columns = 6;
constexpr std::size_t line_columns = 64;

std::string line(std::string_view word, std::string const& text) {
  return "    " + padded(word, 12) + wrapped(text, line_columns, 16) + "\n";
}

std::string power_of_two(std::size_t exponent) {
  return exponent < 32 ? std::to_string(std::uint64_t{1} << exponent)
                       : fmt::format("2^{}", exponent);
}

std::string regaining(MachineSheet const& sheet) {
  if (sheet.without_return.empty()) return "can be regained from every state";
  return fmt::format("cannot be regained from {} of {}, the nearest after: {}",
                     sheet.without_return.size(), counted(sheet.states.size(), "state"),
                     events_words(sheet, events_to(sheet, sheet.without_return.front())));
}

std::string heading(MachineSheet const& sheet, Look look) {
  auto const& names = sheet.subject.map.signals;
  auto text = fmt::format(
      "{}\n", painted(look, Role::strong, "memory of " + counted(sheet.memory.size(), "signal")));
  text += line("memory", listed(names_of(names, sheet.memory), "and", 12));
  text += line("inputs", sheet.inputs.empty() ? "none has a say in the memory"
                                              : listed(names_of(names, sheet.inputs), "and", 12));
  if (!sheet.left_out.empty())
    text += line("left out",
                 listed(names_of(names, sheet.left_out), "and", 12) + ": no say in the memory");
  return text;
}

std::string reach_lines(MachineSheet const& sheet) {
  auto const variables = sheet.inputs.size() + sheet.memory.size();
  return line("states",
              fmt::format("{} of {} are reached", sheet.states.size(), power_of_two(variables))) +
         line("values", fmt::format("{} of {} of the memory are reached", sheet.graph.values.size(),
                                    power_of_two(sheet.memory.size()))) +
         line("as built", regaining(sheet));
}

// What is known where the states were not listed.
std::string counted_lines(MachineSheet const& sheet) {
  if (sheet.states.unended)
    return line("states", "undecided: " + unended_words(*sheet.states.unended));
  if (!sheet.counted) return line("states", "undecided: too many");
  auto const& [states, unquiet] = *sheet.counted;
  auto text =
      line("states", fmt::format("{:.15g} are reached, counted by decision diagrams; too many "
                                 "to be listed",
                                 states));
  if (unquiet.empty()) return text + line("quiet", "after every event");
  return text +
         line("quiet", "not always after " + listed(names_of(sheet.subject.map.signals, unquiet)));
}

// A column for each element while they are few, else one column with the names of what is on.
std::vector<std::string> value_cells(std::vector<std::string> const& names, logic::Code memory) {
  std::vector<std::string> cells;
  for (std::size_t i = 0; i < names.size(); ++i) {
    bool const is_on = (memory >> i & 1u) != 0;
    if (names.size() <= most_columns) {
      cells.emplace_back(is_on ? "on" : "off");
    } else if (is_on) {
      cells.push_back(names[i]);
    }
  }
  if (names.size() <= most_columns) return cells;
  return {cells.empty() ? "none" : listed(cells)};
}

std::string values_table(MachineSheet const& sheet, Look look) {
  auto const names = names_of(sheet.subject.map.signals, sheet.memory);
  std::vector<std::vector<std::string>> lines(1);
  if (names.size() <= most_columns) {
    lines.front() = names;
  } else {
    lines.front().push_back("on");
  }
  lines.front().push_back("reached by");
  auto const& values = sheet.graph.values;
  for (std::size_t v = 0; v < std::min(values.size(), most_values); ++v) {
    lines.push_back(value_cells(names, values[v].memory));
    lines.back().push_back(events_words(sheet, events_to(sheet, values[v].nearest)));
  }
  auto text = fmt::format("\n{}\n\n",
                          painted(look, Role::quiet, "values of the memory, the nearest first"));
  text += aligned(lines, 4);
  if (values.size() > most_values)
    text += fmt::format("    and {} more{}\n", values.size() - most_values,
                        is_listable(sheet) ? ": --as json holds them all" : "");
  return text;
}

std::string never_line(MachineSheet const& sheet) {
  if (!sheet.never_reached)
    return "never reached: too many signals remember to say it as a condition\n";
  if (sheet.never_reached->is_empty()) return "";
  auto const cubes = logic::irredundant_cover(*sheet.never_reached, *sheet.never_reached);
  auto const condition = condition_expression(logic::Statement{logic::Statement::Form::sum, cubes},
                                              names_of(sheet.subject.map.signals, sheet.memory));
  return "never reached: " + wrapped(condition, line_columns, 4) + "\n";
}

// The shortest part, of at most four events, that comes again and again, the last time perhaps
// broken off; 0 if none.
std::size_t repeated_unit(std::vector<Event> const& events) {
  for (std::size_t unit = 1; unit <= 4 && unit < events.size(); ++unit) {
    bool const is_repeated = std::equal(
        events.begin() + static_cast<std::ptrdiff_t>(unit), events.end(), events.begin(),
        [](Event const& a, Event const& b) { return a.input == b.input && a.is_on == b.is_on; });
    if (is_repeated) return unit;
  }
  return 0;
}

std::string loop_words(MachineSheet const& sheet, logic::Oscillation const& oscillation) {
  auto const names = names_of(sheet.subject.map.signals, oscillation.loop);
  return fmt::format("{} {} changing, the same again every {}", listed(names),
                     names.size() == 1 ? "keeps" : "keep",
                     counted(static_cast<std::size_t>(oscillation.period), "round"));
}

std::string oscillations(MachineSheet const& sheet, Look look) {
  std::string text;
  auto const& restless = sheet.graph.restless;
  auto const word = painted(look, Role::error, "never quiet");
  for (std::size_t i = 0; i < std::min(restless.size(), most_oscillations); ++i) {
    auto events = events_to(sheet, restless[i].state);
    events.push_back({sheet.inputs[restless[i].event], restless[i].is_on});
    auto const told = fmt::format("after {}: {}", events_words(sheet, events),
                                  loop_words(sheet, restless[i].oscillation));
    text += word + " " + wrapped(told, line_columns, 4) + "\n";
    if (restless[i].count > 1)
      text += fmt::format("    so in {} of the states\n", restless[i].count);
  }
  if (restless.size() > most_oscillations)
    text += fmt::format("and {} more events that do not get quiet: --as json holds them all\n",
                        restless.size() - most_oscillations);
  return text;
}

}  // namespace

std::string event_words(SignalKind kind, std::string const& name, bool is_on) {
  switch (kind) {
    case SignalKind::button:
      return (is_on ? "press " : "let go of ") + name;
    case SignalKind::plate:
      return (is_on ? "press " : "leave ") + name;
    case SignalKind::clock:
      return name + (is_on ? " goes on" : " goes off");
    default:
      return fmt::format("flip {} {}", name, is_on ? "on" : "off");
  }
}

std::vector<Event> events_to(MachineSheet const& sheet, std::uint32_t state) {
  auto code = sheet.states.codes.front();
  std::vector<Event> events;
  for (auto event : sheet.states.events_to(state)) {
    code ^= logic::Code{1} << event;
    events.push_back({sheet.inputs[event], (code >> event & 1u) != 0});
  }
  return events;
}

std::string events_words(MachineSheet const& sheet, std::vector<Event> const& events) {
  auto const said = [&](std::size_t count) {
    std::string text;
    for (std::size_t i = 0; i < count; ++i) {
      auto const& event = events[i];
      if (i > 0) text += ", ";
      text += event_words(sheet.subject.design.circuit.signals[event.input].kind,
                          sheet.subject.map.signals[event.input].name, event.is_on);
    }
    return text;
  };
  if (events.empty()) return "as built";
  auto const unit = repeated_unit(events);
  if (unit > 0 && events.size() / unit > 2) {
    auto const rest = events.size() % unit;
    return fmt::format("{} times: {}{}{}", events.size() / unit, said(unit),
                       rest > 0 ? "; then " : "", said(rest));
  }
  if (events.size() <= most_events) return said(events.size());
  return fmt::format("{}, and {} more", said(most_events), events.size() - most_events);
}

std::string machine_text(MachineSheet const& sheet, Look look) {
  if (sheet.memory.empty())
    return "The signals remember nothing: what is on follows from the inputs as they stand.\n";
  auto text = heading(sheet, look);
  if (!sheet.is_decided) return text + counted_lines(sheet);
  if (sheet.states.unquiet_as_built)
    return text + "\n" + painted(look, Role::error, "never quiet") +
           " as built: " + loop_words(sheet, *sheet.states.unquiet_as_built) + "\n";
  text += reach_lines(sheet) + values_table(sheet, look);
  auto const more = never_line(sheet) + oscillations(sheet, look);
  return more.empty() ? text : text + "\n" + more;
}

}  // namespace leat::render
