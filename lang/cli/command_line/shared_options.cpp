#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "lang/cli/command_line/tree.hpp"
#include "lang/cli/formats.hpp"

namespace leat::cli {

namespace {

// The formats of a command, from the table of all.
std::string format_words(std::vector<std::string> const& known) {
  std::string text = "formats:\n";
  for (auto const& row : format_table) {
    if (std::find(known.begin(), known.end(), row.name) != known.end())
      text += fmt::format("  {:<10}{:<24}{}\n", row.name, row.media_type, row.purpose);
  }
  text.pop_back();
  return text;
}

}  // namespace

void add_file(CLI::App* command, std::string& file) {
  command->add_option("FILE", file, "the design; - is the standard input")->required();
}

void add_format(CLI::App* command, std::string& format, std::vector<std::string> const& known,
                std::string const& meaning) {
  command->add_option("--as", format, meaning)->check(CLI::IsMember(known));
  command->footer(format_words(known));
}

void add_out(CLI::App* command, std::string& out) {
  command
      ->add_option("-o,--out", out,
                   "write into this file, whole or not at all, instead of the standard output")
      ->option_text("FILE");
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

void add_fail_on(CLI::App* command, model::Severity& fail_on) {
  std::map<std::string, model::Severity> const severities{{"note", model::Severity::note},
                                                          {"warning", model::Severity::warning},
                                                          {"error", model::Severity::error}};
  command
      ->add_option("--fail-on", fail_on,
                   "least severity of a finding that fails: note, warning (as built in) or error")
      ->transform(one_of(severities))
      ->option_text("SEVERITY");
}

}  // namespace leat::cli
