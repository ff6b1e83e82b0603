#include "lang/render/example.hpp"

#include <fmt/format.h>

#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::string step_words(model::Signal const& signal, std::string const& name, bool is_on) {
  switch (signal.kind) {
    case model::SignalKind::button:
      return (is_on ? "press " : "let go of ") + name;
    case model::SignalKind::plate:
      return (is_on ? "step on " : "step off ") + name;
    default:
      return fmt::format("flip {} {}", name, is_on ? "on" : "off");
  }
}

// A file name as a shell takes it.
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

}  // namespace

logic::Row row_as_built(Subject const& subject, Judgement const& judged) {
  logic::Row row = 0;
  for (auto input : judged.inputs) {
    row = row << 1 | (subject.design.circuit.signals[input].starts_on ? 1u : 0u);
  }
  return row;
}

Assignment assignment_of(Judgement const& judged, logic::Row row) {
  Assignment assignment;
  for (std::size_t i = 0; i < judged.inputs.size(); ++i) {
    assignment[judged.inputs[i]] = (row >> (judged.inputs.size() - 1 - i) & 1u) != 0;
  }
  return assignment;
}

std::string player_steps(Subject const& subject, Judgement const& judged, logic::Row row) {
  std::string steps;
  for (auto [signal, is_on] : assignment_of(judged, row)) {
    auto const& input = subject.design.circuit.signals[signal];
    if (input.starts_on == is_on) continue;
    steps +=
        (steps.empty() ? "" : ", ") + step_words(input, subject.map.signals[signal].name, is_on);
  }
  return steps.empty() ? "nothing to do: it is so as built" : steps;
}

std::string what_does_not_matter(Subject const& subject, Judgement const& judged, logic::Row row,
                                 std::vector<logic::Cube> const& condition) {
  for (auto const& cube : condition) {
    std::vector<model::SignalId> open;
    bool is_inside = true;
    for (std::size_t i = 0; i < judged.inputs.size(); ++i) {
      bool const is_on = (row >> (judged.inputs.size() - 1 - i) & 1u) != 0;
      if ((cube.care >> i & 1u) == 0) {
        open.push_back(judged.inputs[i]);
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
  std::string text;
  for (auto [signal, is_on] : assignment) {
    if (subject.design.circuit.signals[signal].starts_on == is_on) continue;
    text += fmt::format("{}{}={}", text.empty() ? "" : ", ", subject.map.signals[signal].name,
                        is_on ? "on" : "off");
  }
  return text;
}

std::string follow_command(Subject const& subject, Assignment const& assignment,
                           model::InletId inlet, model::ProfileId profile) {
  auto const setting = setting_text(subject, assignment);
  return fmt::format("leat follow {}{} --from {} --body {}{}", shell_word(subject.text.name()),
                     subject.is_alone ? "" : " --junction " + subject.map.junction.name,
                     subject.map.inlets[inlet].name, subject.map.profiles[profile].name,
                     setting.empty() ? "" : fmt::format(" --when \"{}\"", setting));
}

}  // namespace leat::render
