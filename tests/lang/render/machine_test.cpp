#include "lang/render/machine.hpp"

#include <nlohmann/json.hpp>

#include "tests/support/catch.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using namespace leat::render;
using model::SignalKind;

namespace {

// A circuit explored, with a name for each signal.
struct Explored {
  Explored(model::Circuit circuit, std::vector<std::string> const& names) {
    design.circuit = std::move(circuit);
    for (auto const& name : names) map.signals.push_back({name, {}});
  }

  MachineSheet sheet() const {
    MachineSheet sheet{{design, map, text}, {}, {}, {}, true, {}, {}, {}, {}, {}};
    logic::Machine const machine(design.circuit);
    for (model::SignalId s = 0; s < design.circuit.signals.size(); ++s) {
      auto const& signal = design.circuit.signals[s];
      if (signal.is_input()) sheet.inputs.push_back(s);
      if (signal.is_memory()) sheet.memory.push_back(s);
    }
    sheet.states = explore::reach(machine);
    if (sheet.states.unquiet_as_built) return sheet;
    sheet.graph = explore::memory_graph(machine, sheet.states, sheet.memory);
    sheet.changes = explore::memory_changes(sheet.states, sheet.graph);
    sheet.without_return = explore::without_return(sheet.states);
    sheet.never_reached = explore::never_reached(sheet.graph, sheet.memory.size());
    return sheet;
  }

  model::Design design;
  source::SourceMap map;
  source::SourceText text{"yard.leat", "leat 1\n"};
};

Explored parked() {
  wired::Circuit circuit;
  auto const ring = circuit.input(SignalKind::button, 2), passed = circuit.input(SignalKind::plate);
  circuit.latch(circuit.of(ring), circuit.of(passed));
  return {circuit.built(), {"ring", "passed", "parked"}};
}

// A latch that is set for good, beside a toggle that can be set only after it.
Explored one_way() {
  wired::Circuit circuit;
  auto const a = circuit.input(), b = circuit.input();
  auto const off = circuit.conjunction(circuit.of(a), circuit.negation(circuit.of(a)));
  auto const first = circuit.latch(circuit.of(a), off);
  circuit.latch(circuit.conjunction(circuit.of(first), circuit.of(b)), off);
  return {circuit.built(), {"a", "b", "first", "second"}};
}

Explored restless() {
  wired::Circuit circuit;
  auto const lever = circuit.input();
  auto const itself = circuit.of(1);
  circuit.latch(circuit.conjunction(circuit.of(lever), circuit.negation(itself)), itself);
  return {circuit.built(), {"divert", "held"}};
}

}  // namespace

TEST_CASE("a latch told: its values and what reaches them") {
  auto const design = parked();
  CHECK(machine_text(design.sheet(), {}) ==
        "memory of 1 signal\n"
        "    memory      parked\n"
        "    inputs      ring and passed\n"
        "    states      5 of 8 are reached\n"
        "    values      2 of 2 of the memory are reached\n"
        "    as built    can be regained from every state\n"
        "\n"
        "values of the memory, the nearest first\n"
        "\n"
        "    parked  reached by\n"
        "    off     as built\n"
        "    on      press ring\n");
}

TEST_CASE("what is never reached, and from where the design as built cannot be regained") {
  auto const design = one_way();
  auto const text = machine_text(design.sheet(), {});
  CHECK(text.find("\nnever reached: not first and second\n") != std::string::npos);
  CHECK(text.find("    values      3 of 4 of the memory are reached\n") != std::string::npos);
  CHECK(
      text.find("    as built    cannot be regained from 6 of 8 states, the nearest after: flip a\n"
                "                on\n") != std::string::npos);
  CHECK(text.find("    on     on      flip a on, flip b on\n") != std::string::npos);
}

TEST_CASE("an oscillation is told with its loop") {
  auto const design = restless();
  auto const text = machine_text(design.sheet(), {});
  CHECK(text.find("\nnever quiet after flip divert on: held keeps changing, the same again every\n"
                  "    2 rounds\n") != std::string::npos);
}

TEST_CASE("long sequences are told short: what repeats once, of others the beginning") {
  auto const design = parked();
  auto const sheet = design.sheet();
  Event const on{0, true}, off{0, false}, pressed{1, true}, left{1, false};
  CHECK(events_words(sheet, {}) == "as built");
  CHECK(events_words(sheet, {on, off, on, off}) ==
        "press ring, let go of ring, press ring, let go of ring");
  CHECK(events_words(sheet, {on, off, on, off, on, off}) == "3 times: press ring, let go of ring");
  CHECK(events_words(sheet, {on, off, pressed, left, on, off, pressed, left, on, off}) ==
        "press ring, let go of ring, press passed, leave passed, press ring, let go of ring, "
        "press passed, leave passed, and 2 more");
}

TEST_CASE("a design without memory is told in one line") {
  wired::Circuit circuit;
  circuit.input();
  Explored const design(circuit.built(), {"divert"});
  CHECK(machine_text(design.sheet(), {}) ==
        "The signals remember nothing: what is on follows from the inputs as they stand.\n");
  auto const dot = machine_dot(design.sheet(), false);
  CHECK(dot.find("s0 [label=\"no memory\", peripheries=2") != std::string::npos);
}

TEST_CASE("the graph of a latch, by its memory and by its states") {
  auto const design = parked();
  CHECK(machine_dot(design.sheet(), false) ==
        "digraph machine {\n"
        "  rankdir=LR;\n"
        "  node [shape=box];\n"
        "  s0 [label=\"all off\", peripheries=2, tooltip=\"as built\"];\n"
        "  s1 [label=\"parked\"];\n"
        "  s0 -> s1 [label=\"press ring\"];\n"
        "  s1 -> s0 [label=\"let go of ring, at times\\npress passed, at times\"];\n"
        "}\n");
  auto const full = machine_dot(design.sheet(), true);
  CHECK(full.find("  s0 [label=\"all off\\nwith no input on\", peripheries=2") !=
        std::string::npos);
  CHECK(full.find("[label=\"parked\\nwith ring, passed\"];\n") != std::string::npos);
}

TEST_CASE("what is never quiet has a node of its own") {
  auto const design = restless();
  auto const dot = machine_dot(design.sheet(), false);
  CHECK(dot.find("  restless [label=\"never quiet\", shape=plain];\n") != std::string::npos);
  CHECK(dot.find("  s0 -> restless [label=\"flip divert on\"];\n") != std::string::npos);
}

TEST_CASE("events by kind of input") {
  CHECK(event_words(SignalKind::lever, "divert", true) == "flip divert on");
  CHECK(event_words(SignalKind::lever, "divert", false) == "flip divert off");
  CHECK(event_words(SignalKind::button, "ring", true) == "press ring");
  CHECK(event_words(SignalKind::button, "ring", false) == "let go of ring");
  CHECK(event_words(SignalKind::plate, "passed", true) == "press passed");
  CHECK(event_words(SignalKind::plate, "passed", false) == "leave passed");
  CHECK(event_words(SignalKind::clock, "beat", true) == "beat goes on");
  CHECK(event_words(SignalKind::clock, "beat", false) == "beat goes off");
}

TEST_CASE("the document of the machine") {
  auto const design = one_way();
  auto const document = nlohmann::json::parse(machine_document(design.sheet()));
  CHECK(document["format"] == "leat-machine");
  CHECK(document["values"].size() == 3);
  CHECK(document["values"][0]["events"].empty());
  CHECK(document["never_reached"] == nlohmann::json::array({{{"first", false}, {"second", true}}}));
  CHECK(document["without_return"]["states"] == 6);
  CHECK(document["without_return"]["events"].dump() == R"([["a",true]])");
  CHECK(document["oscillations"].empty());
  auto const other = restless();
  auto const unquiet = nlohmann::json::parse(machine_document(other.sheet()));
  CHECK(unquiet["changes"][0]["to"].is_null());
  CHECK(unquiet["oscillations"][0]["loop"] == nlohmann::json({"held"}));
  CHECK(unquiet["oscillations"][0]["period"] == 2);
}
