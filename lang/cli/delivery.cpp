#include "lang/cli/delivery.hpp"

#include <fmt/format.h>

#include "lang/cli/written_file.hpp"
#include "lang/render/columns.hpp"

namespace leat::cli {

Exit deliver(std::string_view text, std::string const& path, Terminal& terminal) {
  if (path.empty() || path == "-") {
    terminal.result(text);
    return Exit::holds;
  }
  if (auto const fault = write_file(path, text)) {
    terminal.refuse(fault->headline, fault->remedy);
    return Exit::unusable;
  }
  terminal.narrate(fmt::format("{} written\n", render::showable(path)));
  return Exit::holds;
}

}  // namespace leat::cli
