#include "lang/cli/command_line/tree.hpp"

namespace leat::cli {

namespace {

void add_explain(CommandTree& tree) {
  auto const explain =
      tree.add<ExplainOptions>("explain", "what a finding means and what to do about it");
  if (!explain) return;
  explain.app->add_option("NAME", explain->name, "its short name; none: the list of all");
}

void add_resolve(CommandTree& tree) {
  auto const resolve =
      tree.add<ResolveOptions>("resolve", "the design as it is understood, as JSON");
  if (!resolve) return;
  add_file(resolve.app, resolve->file);
}

}  // namespace

void add_reading(CommandTree& tree) {
  add_explain(tree);
  add_resolve(tree);
}

}  // namespace leat::cli
