#include "lang/cli/command_line/tree.hpp"

namespace leat::cli {

void add_writing(CommandTree& tree) {
  auto const tidy = tree.add<TidyOptions>("tidy", "put designs into one style, meaning untouched");
  tidy.app
      ->add_option("FILE", tidy->paths,
                   "the designs, or folders of them; - reads the standard input and prints it tidy")
      ->required();
  tidy.app->add_flag("--check", tidy->only_checks, "write nothing, show what would change");
}

}  // namespace leat::cli
