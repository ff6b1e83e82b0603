#include "lang/cli/command_line/tree.hpp"

namespace leat::cli {

namespace {

void add_tidy(CommandTree& tree) {
  auto const tidy = tree.add<TidyOptions>("tidy", "put designs into one style, meaning untouched");
  if (!tidy) return;
  tidy.app
      ->add_option("FILE", tidy->paths,
                   "the designs, or folders of them; - reads the standard input and prints it tidy")
      ->required();
  tidy.app->add_flag("--check", tidy->only_checks, "write nothing, show what would change");
}

void add_watch(CommandTree& tree) {
  auto const watch = tree.add<WatchOptions>(
      "watch", "judge designs each time they are saved, and tell what they do otherwise");
  if (!watch) return;
  watch.app->add_option("FILE", watch->paths, "the designs, or folders of them")->required();
  add_fail_on(watch.app, watch->fail_on);
  add_format(watch.app, watch->format, {"text", "lines"},
             "text (on a terminal) or lines (elsewhere)");
}

}  // namespace

// While a design is being written.
void add_writing(CommandTree& tree) {
  add_tidy(tree);
  add_watch(tree);
}

}  // namespace leat::cli
