#include "lang/cli/command_line/command_line.hpp"
#include "lang/cli/commands.hpp"

namespace leat::cli {

Exit run(CompletionOptions const& options, Terminal& terminal) {
  auto const all = outline();
  terminal.result(options.shell == "bash"  ? render::bash_completion(all)
                  : options.shell == "zsh" ? render::zsh_completion(all)
                                           : render::fish_completion(all));
  return Exit::holds;
}

}  // namespace leat::cli
