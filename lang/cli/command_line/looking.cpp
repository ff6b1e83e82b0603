#include "lang/cli/command_line/tree.hpp"

namespace leat::cli {

namespace {

void add_show(CommandTree& tree) {
  auto const show = tree.add<ShowOptions>("show", "the levels with their water in one combination");
  if (!show) return;
  add_file(show.app, show->file);
  add_when(show.app, show->when);
  add_deeds(show.app, show->deeds);
  show.app->add_option("--level", show->level, "only this level, counted from 0");
  show.app->add_flag("--islands", show->is_of_islands,
                     "the pieces that are judged by themselves, and what each depends on");
  add_junction(show.app, show->junction);
  add_format(show.app, show->format, {"text", "json"}, "text or json");
}

void add_follow(CommandTree& tree) {
  auto const follow =
      tree.add<FollowOptions>("follow", "how a body gets where it goes, step by step");
  if (!follow) return;
  add_file(follow.app, follow->file);
  follow.app->add_option("--from", follow->inlet, "the inlet")->required();
  follow.app->add_option("--body", follow->body, "only this body");
  add_when(follow.app, follow->when);
  add_deeds(follow.app, follow->deeds);
  follow.app->add_option("--to", follow->outlet, "only the way to this outlet");
  add_junction(follow.app, follow->junction);
  add_format(follow.app, follow->format, {"text", "json"}, "text or json");
}

void add_guard(CommandTree& tree) {
  auto const guard = tree.add<GuardOptions>(
      "guard", "how long to wait before a change, and what it does to bodies inside");
  if (!guard) return;
  add_file(guard.app, guard->file);
  add_junction(guard.app, guard->junction);
  add_format(guard.app, guard->format, {"text", "json"}, "text or json");
}

void add_train(CommandTree& tree) {
  auto const train =
      tree.add<TrainOptions>("train", "a train of bodies that press the plates themselves");
  if (!train) return;
  add_file(train.app, train->file);
  train.app->add_option("--from", train->inlet, "the inlet")->required();
  train.app->add_option("--body", train->body, "which body; else the first one declared");
  train.app->add_option("--count", train->count, "how many bodies (8)")
      ->check(CLI::Range(1, 1000))
      ->option_text("NUMBER");
  train.app->add_option("--every", train->interval, "the time between two: 40 ticks or 2 s")
      ->required();
  add_deeds(train.app, train->deeds);
  add_junction(train.app, train->junction);
  add_format(train.app, train->format, {"text", "json"}, "text or json");
}

}  // namespace

void add_looking(CommandTree& tree) {
  add_show(tree);
  add_follow(tree);
  add_guard(tree);
  add_train(tree);
}

}  // namespace leat::cli
