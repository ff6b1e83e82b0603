#include <fmt/format.h>

#include <algorithm>

#include "lang/cli/commands.hpp"
#include "lang/diagnostics/near_name.hpp"
#include "lang/render/finding_pages.hpp"

namespace leat::cli {

Exit run(ExplainOptions const& options, Terminal& terminal) {
  auto const look = terminal.result_look();
  if (options.name.empty()) {
    terminal.result(render::finding_list(render::findings_manual, look));
    return Exit::holds;
  }
  auto const known = render::explained_names();
  if (std::find(known.begin(), known.end(), options.name) == known.end()) {
    auto const near = diagnostics::near_name(options.name, known);
    terminal.refuse(
        fmt::format("there is no finding '{}'", options.name),
        near ? fmt::format("did you mean '{}'?", *near) : "leat explain lists the names");
    return Exit::unusable;
  }
  terminal.result(render::finding_page(render::findings_manual, options.name, look));
  return Exit::holds;
}

}  // namespace leat::cli
