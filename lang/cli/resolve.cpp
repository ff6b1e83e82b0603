#include "lang/cli/commands.hpp"
#include "lang/cli/loaded.hpp"

namespace leat::cli {

Exit run(ResolveOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  std::vector<render::Subject> subjects;
  for (std::size_t i = 0; i < loaded->junctions.size(); ++i) {
    subjects.push_back(loaded->subject(i));
  }
  terminal.result(render::design_document(subjects));
  return Exit::holds;
}

}  // namespace leat::cli
