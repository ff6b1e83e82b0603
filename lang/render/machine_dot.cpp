#include <fmt/format.h>

#include <map>

#include "lang/render/machine.hpp"

namespace leat::render {

namespace {

// Names hold letters, digits and `_`, so a label needs no escape but that of its line ends.
std::string on_names(MachineSheet const& sheet, std::vector<model::SignalId> const& signals,
                     logic::Code values, std::string_view between, std::string_view none) {
  std::string text;
  for (std::size_t i = 0; i < signals.size(); ++i) {
    if ((values >> i & 1u) == 0) continue;
    if (!text.empty()) text += between;
    text += sheet.subject.map.signals[signals[i]].name;
  }
  return text.empty() ? std::string(none) : text;
}

class Graph {
 public:
  explicit Graph(MachineSheet const& sheet) : sheet_(sheet) {}

  std::string of_memory() {
    auto const& values = sheet_.graph.values;
    for (std::uint32_t v = 0; v < values.size(); ++v) add_node(v, memory_words(values[v].memory));
    for (auto const& change : sheet_.changes)
      add_edge(change.from, change.to, change.event, change.is_on, change.is_always);
    return finished();
  }

  std::string of_states() {
    auto const& states = sheet_.states;
    auto const& values = sheet_.graph.values;
    for (std::uint32_t s = 0; s < states.size(); ++s) {
      auto const memory = values[sheet_.graph.value_of[s]].memory;
      add_node(s,
               fmt::format("{}\\nwith {}", memory_words(memory),
                           on_names(sheet_, sheet_.inputs, states.codes[s], ", ", "no input on")));
      for (std::uint32_t event = 0; event < states.events; ++event)
        add_edge(s, states.after(s, event), event, (states.codes[s] >> event & 1u) == 0, true);
    }
    return finished();
  }

 private:
  std::string memory_words(logic::Code memory) const {
    if (sheet_.memory.empty()) return "no memory";
    return on_names(sheet_, sheet_.memory, memory, "\\n", "all off");
  }

  void add_node(std::uint32_t number, std::string const& label) {
    nodes_ += fmt::format("  s{} [label=\"{}\"{}];\n", number, label,
                          number == 0 ? ", peripheries=2, tooltip=\"as built\"" : "");
  }

  void add_edge(std::uint32_t from, std::uint32_t to, std::uint32_t event, bool is_on,
                bool is_always) {
    auto const input = sheet_.inputs[event];
    auto words = event_words(sheet_.subject.design.circuit.signals[input].kind,
                             sheet_.subject.map.signals[input].name, is_on);
    if (!is_always) words += ", at times";
    auto& label = edges_[{from, to}];
    if (!label.empty()) label += "\\n";
    label += words;
  }

  std::string finished() {
    std::string edges;
    bool has_restless = false;
    for (auto const& [ends, label] : edges_) {
      bool const is_restless = ends.second == explore::States::none;
      has_restless = has_restless || is_restless;
      edges += fmt::format("  s{} -> {} [label=\"{}\"];\n", ends.first,
                           is_restless ? "restless" : fmt::format("s{}", ends.second), label);
    }
    if (has_restless) nodes_ += "  restless [label=\"never quiet\", shape=plain];\n";
    return "digraph machine {\n  rankdir=LR;\n  node [shape=box];\n" + nodes_ + edges + "}\n";
  }

  MachineSheet const& sheet_;
  std::string nodes_;
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::string> edges_;
};

}  // namespace

std::string machine_dot(MachineSheet const& sheet, bool is_full) {
  Graph graph(sheet);
  return is_full ? graph.of_states() : graph.of_memory();
}

}  // namespace leat::render
