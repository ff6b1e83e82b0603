#include "lang/cli/command_line/tree.hpp"

namespace leat::cli {

void add_reading(CommandTree& tree) {
  auto const explain =
      tree.add<ExplainOptions>("explain", "what a finding means and what to do about it");
  explain.app->add_option("NAME", explain->name, "its short name; none: the list of all");
  auto const resolve =
      tree.add<ResolveOptions>("resolve", "the design as it is understood, as JSON");
  add_file(resolve.app, resolve->file);
}

}  // namespace leat::cli
