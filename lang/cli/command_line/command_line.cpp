#include "lang/cli/command_line/command_line.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <memory>
#include <sstream>

#include "lang/cli/command_line/tree.hpp"
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

// CLI11 does not name a mistyped command, so the first word that is no option is looked at before.
std::optional<Answer> unknown_command(CLI::App const& app, int count,
                                      char const* const* arguments) {
  std::vector<std::string> known;
  for (auto const* command : app.get_subcommands({})) known.push_back(command->get_name());
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

CommandTree::CommandTree(Words only) : only_(std::move(only)) {
  app_.require_subcommand(1);
  app_.set_version_flag("--version", fmt::format("leat {}", version));
  app_.footer(footer());
  app_.get_formatter()->column_width(30);
  std::map<std::string, Colour> const colours{
      {"auto", Colour::automatic}, {"always", Colour::always}, {"never", Colour::never}};
  app_.add_option("--color", options_.colour, "auto, always or never")
      ->transform(one_of(colours))
      ->option_text("WHEN");
  app_.add_flag("--ascii", options_.is_ascii, "draw arrows with plain characters");
  add_judging(*this);
  add_looking(*this);
  add_signals(*this);
  add_showing(*this);
  add_reading(*this);
  add_writing(*this);
  add_shell(*this);
}

namespace {

// Who asks for help is shown every command, and who mistypes one is told one of all.
std::unique_ptr<CommandTree> tree_for(CommandTree::Words words) {
  bool const asks_for_help = std::any_of(words.begin(), words.end(), [](std::string_view word) {
    return word == "-h" || word == "--help";
  });
  if (!asks_for_help) {
    auto named = std::make_unique<CommandTree>(std::move(words));
    if (named->has_commands()) return named;
  }
  return std::make_unique<CommandTree>();
}

}  // namespace

std::variant<Options, Answer> read_command_line(int count, char const* const* arguments) {
  auto const made = tree_for({arguments + std::min(count, 1), arguments + count});
  auto& tree = *made;
  if (count <= 1) return Answer{"", tree.app().help(), Exit::unusable};
  if (auto answer = unknown_command(tree.app(), count, arguments)) return *answer;
  try {
    tree.app().parse(count, const_cast<char**>(arguments));
  } catch (CLI::ParseError const& error) {
    std::ostringstream out, err;
    bool const is_fault = tree.app().exit(error, out, err) != 0;
    auto const text = err.str().empty() ? std::string() : "leat: " + err.str();
    return Answer{out.str(), text, is_fault ? Exit::unusable : Exit::holds};
  }
  return tree.options();
}

}  // namespace leat::cli
