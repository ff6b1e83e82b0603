#include "lang/cli/command_line/tree.hpp"

namespace leat::cli {

// What goes with the program rather than with a design.
void add_shell(CommandTree& tree) {
  auto const completion =
      tree.add<CompletionOptions>("completion", "a script that completes this command line");
  completion.app->add_option("SHELL", completion->shell, "bash, zsh or fish")
      ->required()
      ->check(CLI::IsMember({"bash", "zsh", "fish"}));
  auto const manual = tree.add<ManualOptions>("manual", "a page of the manual, for man");
  manual.app->add_option("COMMAND", manual->command, "of this command; none: of the program");
}

}  // namespace leat::cli
