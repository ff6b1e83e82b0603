#include "lang/cli/setting.hpp"

#include <fmt/format.h>

#include "engine/as_built.hpp"
#include "engine/explore/explored.hpp"
#include "engine/logic/cone.hpp"
#include "engine/logic/settled_circuit.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/parts.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/words.hpp"

namespace leat::cli {

namespace {

using model::SignalId;

constexpr std::string_view how_to_do = "write NAME, NAME on or NAME off, with commas between";

std::optional<bool> value_of(std::string_view word) {
  if (word == "on" || word == "1") return true;
  if (word == "off" || word == "0") return false;
  return std::nullopt;
}

// Whether a signal can be put to a value: inputs, and memory, which then holds it.
bool can_be_put(render::Subject const& subject, SignalId id, Terminal& terminal) {
  auto const settled = logic::settled_circuit(subject.design.circuit);
  if (settled.signals[id].kind != model::SignalKind::wire) return true;
  auto const& circuit = subject.design.circuit;
  std::vector<std::string> inputs;
  for (auto signal : logic::Cones(circuit).of({circuit.signals[id].definition}).signals) {
    bool const can_be_set = circuit.signals[signal].kind != model::SignalKind::wire;
    if (can_be_set) inputs.push_back(subject.map.signals[signal].name);
  }
  terminal.refuse(
      fmt::format("'{}' is a {}: it follows from other signals", subject.map.signals[id].name,
                  render::word_of(circuit.signals[id].kind)),
      inputs.empty() ? "leave it out: it is always the same"
                     : fmt::format("set what it depends on: {}", render::listed(inputs)));
  return false;
}

bool put(render::Subject const& subject, std::string_view part, std::vector<bool>& values,
         std::vector<bool>& is_set, Terminal& terminal) {
  auto const equals = part.find('=');
  std::string const name(trimmed(part.substr(0, std::min(equals, part.size()))));
  auto const value =
      equals == std::string_view::npos ? std::nullopt : value_of(trimmed(part.substr(equals + 1)));
  if (name.empty() || !value) {
    terminal.refuse(fmt::format("--when does not understand '{}'", render::showable(part)),
                    "write NAME=on or NAME=off, with commas between");
    return false;
  }
  auto const id = find_name(subject.map.signals, name, "signal", terminal);
  if (!id || !can_be_put(subject, *id, terminal)) return false;
  if (is_set[*id]) {
    terminal.refuse(fmt::format("--when sets '{}' twice", name));
    return false;
  }
  is_set[*id] = true;
  values[*id] = *value;
  return true;
}

// None where it cannot be understood, which has been told.
std::optional<std::vector<bool>> read_setting(render::Subject const& subject,
                                              std::string const& when, Terminal& terminal) {
  auto values = as_built(subject.design);
  std::vector<bool> is_set(values.size(), false);
  auto parts = parts_of(when);
  if (parts.back().empty()) parts.pop_back();
  for (auto part : parts) {
    if (!put(subject, part, values, is_set, terminal)) return std::nullopt;
  }
  return values;
}

bool refuse_deed(std::string_view part, Terminal& terminal) {
  terminal.refuse(fmt::format("--do does not understand '{}'", render::showable(part)), how_to_do);
  return false;
}

bool do_one(render::Subject const& subject, std::string_view part, std::vector<bool>& is_on,
            std::vector<SignalId>& flips, Terminal& terminal) {
  auto const words = words_of(part);
  if (words.size() > 1 && words[0] == "wait") {
    terminal.refuse("--do needs no wait here: each deed waits until all has settled",
                    "leave the wait out; leat waves runs a script in time");
    return false;
  }
  auto const value = words.size() == 2 ? value_of(words[1]) : std::nullopt;
  if (words.empty() || words.size() > 2 || (words.size() == 2 && !value))
    return refuse_deed(part, terminal);
  auto const id = find_name(subject.map.signals, std::string(words[0]), "signal", terminal);
  if (!id) return false;
  auto const& signal = subject.design.circuit.signals[*id];
  if (!signal.is_input()) {
    terminal.refuse(fmt::format("'{}' is a {}: it follows from other signals", words[0],
                                render::word_of(signal.kind)),
                    "do something to the inputs that it depends on");
    return false;
  }
  if (value) {
    if (is_on[*id] != *value) flips.push_back(*id);
    is_on[*id] = *value;
    return true;
  }
  auto const one = explore::flips_of(subject.design.circuit, {*id});
  flips.insert(flips.end(), one.begin(), one.end());
  if (one.size() % 2 != 0) is_on[*id] = !is_on[*id];
  return true;
}

render::Assignment assignment_of(model::Design const& design, std::vector<bool> const& values) {
  render::Assignment assignment;
  for (auto s : logic::variables_of(logic::settled_circuit(design.circuit)))
    assignment[s] = values[s];
  return assignment;
}

// Found out by judging the design, where that is quick.
render::Standing standing_of(model::Design const& design, std::vector<bool> const& signals) {
  constexpr std::size_t most_variables = 10;
  auto const variables = logic::variables_of(logic::settled_circuit(design.circuit));
  if (variables.empty() || variables.size() > most_variables) return render::Standing::plain;
  Budget budget;
  budget.history.most_changes = 2000;
  budget.switching.most_switchings = 0;
  auto const judged = judge(design, budget);
  if (!judged.is_decided) return render::Standing::plain;
  auto const situation = judged.combinations.situation_of_row[judged.combinations.row_of(signals)];
  if (situation == explore::Combinations::never) return render::Standing::never_reached;
  auto const& waters = judged.combinations.situations[situation];
  if (waters.size() > 1) return render::Standing::several_waters;
  bool const is_fresh = judged.histories.waters[waters.front()].is_fresh;
  return is_fresh ? render::Standing::plain : render::Standing::another_water;
}

}  // namespace

std::optional<std::vector<SignalId>> read_flips(render::Subject const& subject,
                                                std::string const& deeds, Terminal& terminal) {
  std::vector<SignalId> flips;
  auto is_on = as_built(subject.design);
  if (trimmed(deeds).empty()) return flips;
  for (auto part : parts_of(deeds)) {
    if (!do_one(subject, part, is_on, flips, terminal)) return std::nullopt;
  }
  if (!fits_machine(subject.design)) {
    terminal.refuse("the design has too many signals to be run from as built",
                    "put single combinations with --when");
    return std::nullopt;
  }
  return flips;
}

std::optional<Situation> read_situation(render::Subject const& subject, std::string const& when,
                                        std::string const& deeds, Terminal& terminal) {
  if (!trimmed(when).empty() && !trimmed(deeds).empty()) {
    terminal.refuse("--when and --do exclude each other",
                    "--when puts one combination, --do leads to one from as built");
    return std::nullopt;
  }
  if (trimmed(deeds).empty()) {
    auto const values = read_setting(subject, when, terminal);
    if (!values) return std::nullopt;
    auto solved = solve(subject.design, *values);
    auto assignment = assignment_of(subject.design, solved.signals);
    auto const standing = standing_of(subject.design, solved.signals);
    return Situation{std::move(solved), std::move(assignment), {}, standing};
  }
  auto const flips = read_flips(subject, deeds, terminal);
  if (!flips) return std::nullopt;
  auto solved = solve_after(subject.design, *flips);
  if (solved && !solved->is_settled) {
    terminal.refuse("the water never comes to rest after what --do says",
                    "leat check says where it still moves");
    return std::nullopt;
  }
  if (!solved) {
    terminal.refuse("the signals do not come to rest after what --do says, or it takes too long",
                    "leat machine names the loop, or says what is not known");
    return std::nullopt;
  }
  auto assignment = assignment_of(subject.design, solved->signals);
  return Situation{std::move(*solved), std::move(assignment), *flips, render::Standing::plain};
}

}  // namespace leat::cli
