#include "lang/render/example.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/as_built.hpp"
#include "lang/render/condition.hpp"
#include "lang/render/machine.hpp"
#include "lang/render/table_lines.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

// How often the steps from `at` on begin with the same `length` steps, one after the other.
std::size_t times(std::vector<std::string> const& steps, std::size_t at, std::size_t length) {
  std::size_t count = 1;
  auto const begin = steps.begin() + static_cast<std::ptrdiff_t>(at);
  while (at + (count + 1) * length <= steps.size() &&
         std::equal(begin, begin + static_cast<std::ptrdiff_t>(length),
                    begin + static_cast<std::ptrdiff_t>(count * length)))
    ++count;
  return count;
}

}  // namespace

std::string shell_word(std::string const& text) {
  bool is_plain = !text.empty();
  for (char c : text) {
    auto const is_letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                           (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
    is_plain =
        is_plain && (is_letter || std::string_view("_-./,+=:").find(c) != std::string_view::npos);
  }
  if (is_plain) return text;
  std::string result = "'";
  for (char c : text) result += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return result + "'";
}

bool never_rests(Judgement const& judged) { return !judged.is_decided && !judged.findings.empty(); }

std::string unended_words(explore::Unended const& unended) {
  return fmt::format("{} rounds did not tell whether the signals come to rest", unended.rounds);
}

Assignment assignment_of(Judgement const& judged, logic::Row row) {
  Assignment assignment;
  for (std::size_t i = 0; i < judged.variables.size(); ++i) {
    assignment[judged.variables[i]] = (row >> (judged.variables.size() - 1 - i) & 1u) != 0;
  }
  return assignment;
}

Assignment assignment_of(Subject const& subject, Judgement const& judged,
                         explore::Example const& example) {
  auto const& signals = subject.design.circuit.signals;
  Assignment levers;
  for (auto flip : example.flips) {
    bool const is_own =
        std::find(judged.variables.begin(), judged.variables.end(), flip) != judged.variables.end();
    if (!is_own) levers[flip] = !levers.try_emplace(flip, signals[flip].starts_on).first->second;
  }
  auto assignment = assignment_of(judged, example.row);
  std::erase_if(assignment, [&](auto const& entry) {
    return signals[entry.first].kind == model::SignalKind::wire;
  });
  assignment.merge(levers);
  return assignment;
}

std::vector<std::string> step_words(Subject const& subject,
                                    std::vector<model::SignalId> const& flips) {
  std::vector<bool> is_on;
  for (auto const& signal : subject.design.circuit.signals) is_on.push_back(signal.starts_on);
  std::vector<std::string> steps;
  for (auto flip : flips) {
    is_on[flip] = !is_on[flip];
    steps.push_back(event_words(subject.design.circuit.signals[flip].kind,
                                subject.map.signals[flip].name, is_on[flip]));
  }
  return steps;
}

// A pair of steps that comes three times or more is said once.
std::string player_steps(Subject const& subject, std::vector<model::SignalId> const& flips) {
  auto const steps = step_words(subject, flips);
  std::string words;
  for (std::size_t at = 0; at < steps.size();) {
    auto const pairs = times(steps, at, 2);
    bool const is_repeated = pairs >= 3;
    if (!words.empty()) words += ", ";
    words += is_repeated ? fmt::format("{} and {}, {} times", steps[at], steps[at + 1], pairs)
                         : steps[at];
    at += is_repeated ? 2 * pairs : 1;
  }
  return words.empty() ? "nothing to do: it is so as built" : words;
}

BeforeEvent before_event(Subject const& subject, std::vector<model::SignalId> const& flips,
                         model::SignalId event) {
  BeforeEvent before{flips, event};
  if (subject.design.circuit.signals[event].is_input()) return before;
  before.switched = before.flips.back();
  before.flips.pop_back();
  return before;
}

std::string steps_then(Subject const& subject, std::vector<model::SignalId> const& flips,
                       model::SignalId event) {
  auto const [before, switched] = before_event(subject, flips, event);
  auto all = before;
  all.push_back(switched);
  auto const last = step_words(subject, all).back();
  return before.empty() ? last : player_steps(subject, before) + ", then " + last;
}

std::string where_words(Subject const& subject, Judgement const& judged,
                        logic::RowSet const& rows) {
  auto const& reachable = judged.combinations.reachable;
  auto words = condition_words(rows, reachable, names_of(subject.map.signals, judged.variables));
  if (words.starts_with("when ")) words.erase(0, 5);
  if ((rows & reachable).is_empty()) return words;
  return fmt::format("{} ({})", words, share_words(rows.count(), reachable.count()));
}

std::string dealt_words(Subject const& subject,
                        std::vector<std::optional<model::OutletId>> const& outlets) {
  std::vector<std::string> names;
  for (auto outlet : outlets)
    names.push_back(outlet ? subject.map.outlets[*outlet].name : "nothing");
  return fmt::format("{}", fmt::join(names, ", "));
}

std::string what_does_not_matter(Subject const& subject, Judgement const& judged, logic::Row row,
                                 std::vector<logic::Cube> const& condition) {
  for (auto const& cube : condition) {
    std::vector<model::SignalId> open;
    bool is_inside = true;
    for (std::size_t i = 0; i < judged.variables.size(); ++i) {
      bool const is_on = (row >> (judged.variables.size() - 1 - i) & 1u) != 0;
      if ((cube.care >> i & 1u) == 0) {
        open.push_back(judged.variables[i]);
      } else if (((cube.value >> i & 1u) != 0) != is_on) {
        is_inside = false;
      }
    }
    if (!is_inside) continue;
    if (open.empty()) return {};
    return fmt::format("{} {} not matter", listed(names_of(subject.map.signals, open)),
                       open.size() == 1 ? "does" : "do");
  }
  return {};
}

std::string setting_text(Subject const& subject, Assignment const& assignment) {
  auto const built = as_built(subject.design);
  std::string text;
  for (auto [signal, is_on] : assignment) {
    if (built[signal] == is_on) continue;
    text += fmt::format("{}{}={}", text.empty() ? "" : ", ", subject.map.signals[signal].name,
                        is_on ? "on" : "off");
  }
  return text;
}

std::string situation_text(Subject const& subject, Assignment const& assignment,
                           std::vector<model::SignalId> const& flips) {
  if (!flips.empty()) return player_steps(subject, flips);
  auto const setting = setting_text(subject, assignment);
  return setting.empty() ? "everything as built" : setting;
}

std::string_view caveat_of(Standing standing) {
  switch (standing) {
    case Standing::never_reached:
      return "no list of events from as built leads to this combination";
    case Standing::several_waters:
      return "with fresh water; by switching it comes with other waters too, see leat check";
    case Standing::another_water:
      return "with fresh water; by switching it comes with another water, see --do";
    case Standing::plain:
      break;
  }
  return {};
}

std::string script_of(Subject const& subject, std::vector<model::SignalId> const& flips) {
  std::vector<bool> is_on;
  for (auto const& signal : subject.design.circuit.signals) is_on.push_back(signal.starts_on);
  std::string script;
  for (auto flip : flips) {
    is_on[flip] = !is_on[flip];
    script += fmt::format("{}{} {}", script.empty() ? "" : ", ", subject.map.signals[flip].name,
                          is_on[flip] ? "on" : "off");
  }
  return script;
}

std::string way_option(Subject const& subject, Judgement const& judged,
                       explore::Example const& example) {
  if (!example.is_fresh) return fmt::format(" --do \"{}\"", script_of(subject, example.flips));
  auto const setting = setting_text(subject, assignment_of(subject, judged, example));
  return setting.empty() ? "" : fmt::format(" --when \"{}\"", setting);
}

std::string follow_command(Subject const& subject, model::InletId inlet, model::ProfileId profile,
                           std::string const& way) {
  return fmt::format("leat follow {}{} --from {} --body {}{}", shell_word(subject.text.name()),
                     subject.is_alone ? "" : " --junction " + subject.map.junction.name,
                     subject.map.inlets[inlet].name, subject.map.profiles[profile].name, way);
}

std::string follow_command(Subject const& subject, Judgement const& judged,
                           explore::Example const& example, model::InletId inlet,
                           model::ProfileId profile) {
  return follow_command(subject, inlet, profile, way_option(subject, judged, example));
}

std::string guard_command(Subject const& subject) {
  return fmt::format("leat guard {}{}", shell_word(subject.text.name()),
                     subject.is_alone ? "" : " --junction " + subject.map.junction.name);
}

std::string time_words(Subject const& subject, int ticks) {
  auto const per_second = subject.design.practice[model::Rule::ticks_per_second];
  return fmt::format("{} ({:g} s)", counted(static_cast<std::size_t>(ticks), "tick"),
                     static_cast<double>(ticks) / per_second);
}

}  // namespace leat::render
