#include "lang/cli/command_line/tree.hpp"

namespace leat::cli {

namespace {

void add_waves(CommandTree& tree) {
  auto const waves = tree.add<WavesOptions>("waves", "the signals over time, tick by tick");
  if (!waves) return;
  add_file(waves.app, waves->file);
  waves.app->add_option("--do", waves->deeds,
                        "what is done: \"divert, wait 20 ticks, ring and flush on, wait 2 s\"");
  waves.app->add_option("--for", waves->duration,
                        "how long the run goes on after that: 20 ticks or 2 s; else until quiet");
  waves.app->add_option("--signals", waves->signals, "only these, with commas between");
  add_format(waves.app, waves->format, {"text", "vcd", "json"}, "text, vcd or json");
}

void add_machine(CommandTree& tree) {
  auto const machine =
      tree.add<MachineOptions>("machine", "what the memory can hold, and how it gets there");
  if (!machine) return;
  add_file(machine.app, machine->file);
  machine.app->add_flag("--full", machine->is_full,
                        "in dot: a node for each setting of the inputs");
  add_format(machine.app, machine->format, {"text", "json", "dot"}, "text, json or dot");
}

}  // namespace

void add_signals(CommandTree& tree) {
  add_waves(tree);
  add_machine(tree);
}

}  // namespace leat::cli
