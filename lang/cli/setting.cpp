#include <fmt/format.h>

#include "lang/cli/loaded.hpp"
#include "lang/cli/parts.hpp"
#include "lang/render/words.hpp"

namespace leat::cli {

namespace {

std::optional<bool> value_of(std::string_view word) {
  if (word == "on" || word == "1") return true;
  if (word == "off" || word == "0") return false;
  return std::nullopt;
}

bool set_input(render::Subject const& subject, std::string_view part,
               render::Assignment& assignment, std::vector<bool>& is_set, Terminal& terminal) {
  auto const equals = part.find('=');
  std::string const name(trimmed(part.substr(0, std::min(equals, part.size()))));
  auto const value =
      equals == std::string_view::npos ? std::nullopt : value_of(trimmed(part.substr(equals + 1)));
  if (name.empty() || !value) {
    terminal.refuse(fmt::format("--when does not understand '{}'", part),
                    "write NAME=on or NAME=off, with commas between");
    return false;
  }
  auto const id = find_name(subject.map.signals, name, "signal", terminal);
  if (!id) return false;
  if (!subject.design.circuit.signals[*id].is_input()) {
    terminal.refuse(fmt::format("'{}' is a {}: it follows from other signals", name,
                                render::word_of(subject.design.circuit.signals[*id].kind)),
                    "set the inputs that it depends on");
    return false;
  }
  if (is_set[*id]) {
    terminal.refuse(fmt::format("--when sets '{}' twice", name));
    return false;
  }
  is_set[*id] = true;
  assignment[*id] = *value;
  return true;
}

}  // namespace

std::optional<render::Assignment> read_setting(render::Subject const& subject,
                                               std::string const& when, Terminal& terminal) {
  auto const& signals = subject.design.circuit.signals;
  render::Assignment assignment;
  for (model::SignalId s = 0; s < signals.size(); ++s) {
    if (signals[s].is_input()) assignment[s] = signals[s].starts_on;
  }
  std::vector<bool> is_set(signals.size(), false);
  auto parts = parts_of(when);
  if (parts.back().empty()) parts.pop_back();
  for (auto part : parts) {
    if (!set_input(subject, part, assignment, is_set, terminal)) return std::nullopt;
  }
  return assignment;
}

}  // namespace leat::cli
