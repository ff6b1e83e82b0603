#include <fmt/format.h>

#include <algorithm>

#include "lang/cli/command_line/command_line.hpp"
#include "lang/cli/commands.hpp"
#include "lang/diagnostics/near_name.hpp"
#include "lang/render/columns.hpp"

namespace leat::cli {

Exit run(ManualOptions const& options, Terminal& terminal) {
  auto const all = outline();
  if (options.command.empty()) {
    terminal.result(render::manual_page(all));
    return Exit::holds;
  }
  std::vector<std::string> known;
  for (auto const& command : all.commands) {
    known.push_back(command.name);
    if (command.name != options.command) continue;
    terminal.result(render::manual_page(all, command));
    return Exit::holds;
  }
  auto const near = diagnostics::near_name(options.command, known);
  terminal.refuse(fmt::format("there is no command '{}'", render::showable(options.command)),
                  near ? fmt::format("did you mean '{}'?", *near)
                       : std::string("leat --help lists the commands"));
  return Exit::unusable;
}

}  // namespace leat::cli
