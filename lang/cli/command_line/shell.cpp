#include "lang/cli/command_line/tree.hpp"

namespace leat::cli {

namespace {

void add_completion(CommandTree& tree) {
  auto const completion =
      tree.add<CompletionOptions>("completion", "a script that completes this command line");
  if (!completion) return;
  completion.app->add_option("SHELL", completion->shell, "bash, zsh or fish")
      ->required()
      ->check(CLI::IsMember({"bash", "zsh", "fish"}));
}

void add_manual(CommandTree& tree) {
  auto const manual = tree.add<ManualOptions>("manual", "a page of the manual, for man");
  if (!manual) return;
  manual.app->add_option("COMMAND", manual->command, "of this command; none: of the program");
}

}  // namespace

// What goes with the program rather than with a design.
void add_shell(CommandTree& tree) {
  add_completion(tree);
  add_manual(tree);
}

}  // namespace leat::cli
