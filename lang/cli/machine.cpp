#include <fmt/format.h>

#include "engine/explore/symbolic_states.hpp"
#include "engine/logic/settled_circuit.hpp"
#include "lang/cli/commands.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/render/example.hpp"
#include "lang/render/machine.hpp"
#include "lang/render/words.hpp"

namespace leat::cli {

namespace {

constexpr std::size_t most_nodes = 1024;
constexpr std::size_t most_condition_signals = 12;

// The signals sorted by the part they play; of the others nothing is kept.
render::MachineSheet sorted_signals(render::Subject const& subject, model::Circuit const& settled,
                                    std::vector<bool> const& is_used) {
  render::MachineSheet sheet{subject, {}, {}, {}, false, {}, {}, {}, {}, {}};
  for (model::SignalId s = 0; s < settled.signals.size(); ++s) {
    auto const& signal = settled.signals[s];
    if (signal.is_memory()) sheet.memory.push_back(s);
    if (signal.is_input()) (is_used[s] ? sheet.inputs : sheet.left_out).push_back(s);
  }
  return sheet;
}

// States that are too many to be listed one by one can often be counted.
std::optional<render::MachineSheet::Counted> counted(model::Circuit const& circuit) {
  constexpr std::size_t most_diagram_nodes = std::size_t{1} << 20;
  explore::SymbolicStates const states(circuit, {.most_nodes = most_diagram_nodes});
  if (states.knowledge() != explore::SymbolicStates::Knowledge::complete) return std::nullopt;
  render::MachineSheet::Counted counted{static_cast<double>(states.count()), {}};
  for (std::size_t event = 0; event < states.input_count(); ++event) {
    if (states.unquiet_count(event) > 0) counted.unquiet.push_back(states.variables()[event]);
  }
  return counted;
}

void explore(model::Circuit const& circuit, render::MachineSheet& sheet) {
  if (logic::variables_of(circuit).size() > logic::Machine::most_variables) return;
  logic::Machine const machine(circuit);
  sheet.states = explore::reach(machine);
  if (sheet.states.unquiet_as_built) {
    sheet.is_decided = true;
    return;
  }
  if (!sheet.states.is_complete) {
    auto const unended = sheet.states.unended;
    sheet.states = {};
    sheet.states.unended = unended;
    return;
  }
  sheet.is_decided = true;
  sheet.graph = explore::memory_graph(machine, sheet.states, sheet.memory);
  sheet.without_return = explore::without_return(sheet.states);
  if (sheet.memory.size() <= most_condition_signals)
    sheet.never_reached = explore::never_reached(sheet.graph, sheet.memory.size());
}

// Whether what was asked for can be written; told where not.
bool is_writable(render::MachineSheet const& sheet, MachineOptions const& options,
                 Terminal& terminal) {
  auto const nodes = options.is_full ? sheet.states.size() : sheet.graph.values.size();
  if (options.format == "dot" && nodes > most_nodes) {
    terminal.refuse(
        fmt::format("the graph would have {} nodes; at most {} can be read", nodes, most_nodes),
        options.is_full ? "leave --full away: a node for each value of the memory"
                        : "--as text shows the nearest values");
    return false;
  }
  if (options.format == "json" && !render::is_listable(sheet)) {
    terminal.refuse(fmt::format("{} of the memory, each with its events, are too many to list",
                                render::counted(sheet.graph.values.size(), "value")),
                    "--as text says how many there are and shows the nearest");
    return false;
  }
  return true;
}

std::string written(render::MachineSheet const& sheet, MachineOptions const& options,
                    Terminal const& terminal) {
  if (options.format == "dot") return render::machine_dot(sheet, options.is_full);
  if (options.format == "json") return render::machine_document(sheet);
  return render::machine_text(sheet, terminal.result_look());
}

bool is_ever_restless(render::MachineSheet const& sheet) {
  return sheet.states.unquiet_as_built.has_value() || !sheet.graph.restless.empty();
}

// Why the memory is undecided: what is too many, or which rounds ran out and after which event.
std::string undecided_words(render::MachineSheet const& sheet) {
  if (auto const& unended = sheet.states.unended) {
    auto const& signals = sheet.subject.map.signals;
    auto const when =
        unended->input ? "after " + signals[*unended->input].name + " changes" : "as built";
    return fmt::format("{} {}", render::unended_words(*unended), when);
  }
  return fmt::format(
      "{} and {} are too many to be listed", render::counted(sheet.inputs.size(), "input"),
      render::counted(sheet.memory.size(), "signal that remembers", "signals that remember"));
}

}  // namespace

// Only what has a say in the memory is explored: every other input would double the states and
// change none of them. Delays run with the rest, since pulses that they make can set memory; what
// they hold once all is quiet follows from the other signals and is not told.
Exit run(MachineOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  if (loaded->junctions.empty()) {
    terminal.refuse("the design has no junction");
    return Exit::unusable;
  }
  if (options.is_full && options.format != "dot") {
    terminal.refuse("--full goes with --as dot only");
    return Exit::unusable;
  }
  auto const subject = loaded->subject(0);
  auto const settled = logic::settled_circuit(subject.design.circuit);
  auto const is_used = explore::behind_memory(settled);
  auto const circuit = logic::holding_unused(subject.design.circuit, is_used);
  auto sheet = sorted_signals(subject, settled, is_used);
  explore(circuit, sheet);
  if (!sheet.is_decided) {
    if (!sheet.states.unended) sheet.counted = counted(circuit);
    terminal.refuse("undecided: " + undecided_words(sheet),
                    "leat waves runs single histories of any design");
    if (options.format != "dot") terminal.result(written(sheet, options, terminal));
    return Exit::undecided;
  }
  if (!is_writable(sheet, options, terminal)) return Exit::unusable;
  if (options.format != "text" && !sheet.states.unquiet_as_built)
    sheet.changes = explore::memory_changes(sheet.states, sheet.graph);
  terminal.result(written(sheet, options, terminal));
  return is_ever_restless(sheet) ? Exit::violated : Exit::holds;
}

}  // namespace leat::cli
