#include "lang/cli/options.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <map>
#include <sstream>

#include "lang/diagnostics/near_name.hpp"

namespace leat::cli {

namespace {

constexpr std::string_view version = LEAT_VERSION;

std::string footer() {
  std::string text = "exit codes, of several the gravest (4, 2, 1, 3, 0 in this order):\n";
  for (auto const& row : exit_table) {
    text += fmt::format("  {}  {}\n", static_cast<int>(row.code), row.meaning);
  }
  return text +
         "\nexamples:\n"
         "  leat check yard.leat\n"
         "  leat table yard.leat --as markdown\n"
         "  leat follow yard.leat --from millhouse --when \"divert=on\"\n"
         "  leat waves yard.leat --do \"divert, wait 2 s, flush\"\n"
         "\nresults go to the standard output, everything else to the standard error;\n"
         "NO_COLOR and CLICOLOR_FORCE are heeded; - reads a design from the standard input";
}

// Everything CLI11 needs to keep alive while it reads.
struct CommandLine {
  CLI::App app{"leat: verifies creature conveyors of running water before they are built", "leat"};
  Options options;
  CheckOptions check;
  TableOptions table;
  ShowOptions show;
  FollowOptions follow;
  GuardOptions guard;
  TrainOptions train;
  WavesOptions waves;
  MachineOptions machine;
  ExplainOptions explain;
  ResolveOptions resolve;
};

CLI::App* add_command(CommandLine& line, std::string const& name, std::string const& purpose) {
  auto* command = line.app.add_subcommand(name, purpose);
  command->fallthrough()->footer("");
  return command;
}

void add_file(CLI::App* command, std::string& file) {
  command->add_option("FILE", file, "the design; - is the standard input")->required();
}

void add_format(CLI::App* command, std::string& format, std::vector<std::string> const& known,
                std::string const& meaning) {
  command->add_option("--as", format, meaning)->check(CLI::IsMember(known));
}

void add_when(CLI::App* command, std::string& when) {
  command->add_option("--when", when,
                      "what does not stand as built: \"divert=on, flush=off\" (or 1, 0)");
}

void add_deeds(CLI::App* command, std::string& deeds) {
  command->add_option(
      "--do", deeds,
      "what is done from as built, each once all has settled: \"divert, ring, flush "
      "on\"");
}

void add_junction(CLI::App* command, std::string& junction) {
  command->add_option("--junction", junction, "only this junction of the design");
}

void add_check(CommandLine& line) {
  auto* command = add_command(line, "check", "judge designs: findings and expectations");
  command->add_option("FILE", line.check.files, "the designs; - is the standard input")->required();
  std::map<std::string, model::Severity> const severities{{"note", model::Severity::note},
                                                          {"warning", model::Severity::warning},
                                                          {"error", model::Severity::error}};
  command
      ->add_option("--fail-on", line.check.fail_on,
                   "least severity of a finding that fails: note, warning (as built in) or error")
      ->transform(CLI::CheckedTransformer(severities).description(""))
      ->option_text("SEVERITY");
  add_format(command, line.check.format, {"text", "lines", "json"},
             "text (on a terminal), lines (elsewhere) or json");
}

void add_table(CommandLine& line) {
  auto* command = add_command(line, "table", "where every body goes, in all combinations");
  add_file(command, line.table.file);
  command->add_flag("--full", line.table.is_full, "a row for each combination");
  command->add_flag("--fresh", line.table.is_fresh,
                    "each combination with fresh water, as if it had been built so");
  add_format(command, line.table.format, {"text", "markdown", "csv", "json", "expect"},
             "text, markdown, csv, json, or expect to paste into the design");
  command->add_option("--from", line.table.inlet, "only this inlet");
  command->add_option("--body", line.table.body, "only this body");
  add_junction(command, line.table.junction);
}

void add_show(CommandLine& line) {
  auto* command = add_command(line, "show", "the levels with their water in one combination");
  add_file(command, line.show.file);
  add_when(command, line.show.when);
  add_deeds(command, line.show.deeds);
  command->add_option("--level", line.show.level, "only this level, counted from 0");
  command->add_flag("--islands", line.show.is_of_islands,
                    "the pieces that are judged by themselves, and what each depends on");
  add_junction(command, line.show.junction);
  add_format(command, line.show.format, {"text", "json"}, "text or json");
}

void add_follow(CommandLine& line) {
  auto* command = add_command(line, "follow", "how a body gets where it goes, step by step");
  add_file(command, line.follow.file);
  command->add_option("--from", line.follow.inlet, "the inlet")->required();
  command->add_option("--body", line.follow.body, "only this body");
  add_when(command, line.follow.when);
  add_deeds(command, line.follow.deeds);
  command->add_option("--to", line.follow.outlet, "only the way to this outlet");
  add_junction(command, line.follow.junction);
  add_format(command, line.follow.format, {"text", "json"}, "text or json");
}

void add_guard(CommandLine& line) {
  auto* command = add_command(
      line, "guard", "how long to wait before a change, and what it does to bodies inside");
  add_file(command, line.guard.file);
  add_junction(command, line.guard.junction);
  add_format(command, line.guard.format, {"text", "json"}, "text or json");
}

void add_train(CommandLine& line) {
  auto* command = add_command(line, "train", "a train of bodies that press the plates themselves");
  add_file(command, line.train.file);
  command->add_option("--from", line.train.inlet, "the inlet")->required();
  command->add_option("--body", line.train.body, "which body; else the first one declared");
  command->add_option("--count", line.train.count, "how many bodies (8)")
      ->check(CLI::Range(1, 1000))
      ->option_text("NUMBER");
  command->add_option("--every", line.train.interval, "the time between two: 40 ticks or 2 s")
      ->required();
  add_deeds(command, line.train.deeds);
  add_junction(command, line.train.junction);
  add_format(command, line.train.format, {"text", "json"}, "text or json");
}

void add_waves(CommandLine& line) {
  auto* command = add_command(line, "waves", "the signals over time, tick by tick");
  add_file(command, line.waves.file);
  command->add_option("--do", line.waves.deeds,
                      "what is done: \"divert, wait 20 ticks, ring and flush on, wait 2 s\"");
  command->add_option("--for", line.waves.duration,
                      "how long the run goes on after that: 20 ticks or 2 s; else until quiet");
  command->add_option("--signals", line.waves.signals, "only these, with commas between");
  add_format(command, line.waves.format, {"text", "vcd", "json"}, "text, vcd or json");
}

void add_machine(CommandLine& line) {
  auto* command = add_command(line, "machine", "what the memory can hold, and how it gets there");
  add_file(command, line.machine.file);
  command->add_flag("--full", line.machine.is_full,
                    "in dot: a node for each setting of the inputs");
  add_format(command, line.machine.format, {"text", "json", "dot"}, "text, json or dot");
}

void add_rest(CommandLine& line) {
  auto* explain = add_command(line, "explain", "what a finding means and what to do about it");
  explain->add_option("NAME", line.explain.name, "its short name; none: the list of all");
  auto* resolve = add_command(line, "resolve", "the design as it is understood, as JSON");
  add_file(resolve, line.resolve.file);
}

void add_everything(CommandLine& line) {
  auto& app = line.app;
  app.require_subcommand(1);
  app.set_version_flag("--version", fmt::format("leat {}", version));
  app.footer(footer());
  app.get_formatter()->column_width(30);
  std::map<std::string, Colour> const colours{
      {"auto", Colour::automatic}, {"always", Colour::always}, {"never", Colour::never}};
  app.add_option("--color", line.options.colour, "auto, always or never")
      ->transform(CLI::CheckedTransformer(colours).description(""))
      ->option_text("WHEN");
  app.add_flag("--ascii", line.options.is_ascii, "draw arrows with plain characters");
  add_check(line);
  add_table(line);
  add_show(line);
  add_follow(line);
  add_guard(line);
  add_train(line);
  add_waves(line);
  add_machine(line);
  add_rest(line);
}

CommandOptions chosen(CommandLine const& line) {
  auto const is = [&](char const* name) { return line.app.got_subcommand(name); };
  if (is("check")) return line.check;
  if (is("table")) return line.table;
  if (is("show")) return line.show;
  if (is("follow")) return line.follow;
  if (is("guard")) return line.guard;
  if (is("train")) return line.train;
  if (is("waves")) return line.waves;
  if (is("machine")) return line.machine;
  if (is("explain")) return line.explain;
  return line.resolve;
}

// CLI11 does not name a mistyped command, so the first word that is no option is looked at before.
std::optional<Answer> unknown_command(CommandLine const& line, int count,
                                      char const* const* arguments) {
  std::vector<std::string> known;
  for (auto const* command : line.app.get_subcommands({})) known.push_back(command->get_name());
  for (int i = 1; i < count; ++i) {
    std::string const word = arguments[i];
    if (word == "--color") ++i;
    if (word.starts_with("-")) continue;
    if (std::find(known.begin(), known.end(), word) != known.end()) return std::nullopt;
    auto const near = diagnostics::near_name(word, known);
    return Answer{"",
                  fmt::format("leat: there is no command '{}'\n{}", word,
                              near ? fmt::format("      did you mean '{}'?\n", *near)
                                   : std::string("      leat --help lists the commands\n")),
                  Exit::unusable};
  }
  return std::nullopt;
}

}  // namespace

std::variant<Options, Answer> read_command_line(int count, char const* const* arguments) {
  CommandLine line;
  add_everything(line);
  if (count <= 1) return Answer{"", line.app.help(), Exit::unusable};
  if (auto answer = unknown_command(line, count, arguments)) return *answer;
  try {
    line.app.parse(count, const_cast<char**>(arguments));
  } catch (CLI::ParseError const& error) {
    std::ostringstream out, err;
    bool const is_fault = line.app.exit(error, out, err) != 0;
    auto const text = err.str().empty() ? std::string() : "leat: " + err.str();
    return Answer{out.str(), text, is_fault ? Exit::unusable : Exit::holds};
  }
  line.options.command = chosen(line);
  return line.options;
}

}  // namespace leat::cli
