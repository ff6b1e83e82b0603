#include <map>

#include "lang/cli/command_line/tree.hpp"

namespace leat::cli {

namespace {

void add_check(CommandTree& tree) {
  auto const check = tree.add<CheckOptions>("check", "judge designs: findings and expectations");
  if (!check) return;
  check.app
      ->add_option("FILE", check->files,
                   "the designs, or folders: every *.leat in them; - is the standard input")
      ->required();
  add_fail_on(check.app, check->fail_on);
  add_format(check.app, check->format,
             {"text", "lines", "json", "sarif", "junit", "csv", "markdown"},
             "text (on a terminal), lines (elsewhere), json, sarif, junit, csv or markdown");
  add_out(check.app, check->out);
  check.app
      ->add_option("--jobs", check->jobs,
                   "how many files are judged at a time; else as many as there are processors")
      ->check(CLI::Range(1, 1024))
      ->option_text("NUMBER");
}

void add_table(CommandTree& tree) {
  auto const table = tree.add<TableOptions>("table", "where every body goes, in all combinations");
  if (!table) return;
  add_file(table.app, table->file);
  table.app->add_flag("--full", table->is_full, "a row for each combination");
  table.app->add_flag("--fresh", table->is_fresh,
                      "each combination with fresh water, as if it had been built so");
  add_format(table.app, table->format, {"text", "markdown", "csv", "json", "expect"},
             "text, markdown, csv, json, or expect to paste into the design");
  table.app->add_option("--from", table->inlet, "only this inlet");
  table.app->add_option("--body", table->body, "only this body");
  add_junction(table.app, table->junction);
}

void add_compare(CommandTree& tree) {
  auto const compare = tree.add<CompareOptions>(
      "compare", "what a new revision of a design does differently from an old one");
  if (!compare) return;
  compare.app->add_option("OLD", compare->before, "the design before")->required();
  compare.app->add_option("NEW", compare->after, "the design after; - is the standard input")
      ->required();
  compare.app
      ->add_option("--renamed", compare->renamings,
                   "what has another name now: divert=turn; may be given several times")
      ->option_text("OLD=NEW");
  std::map<std::string, compare::Change> const changes{{"better", compare::Change::better},
                                                       {"changed", compare::Change::other},
                                                       {"worse", compare::Change::worse}};
  compare.app
      ->add_option("--fail-on", compare->fail_on,
                   "least change that fails: better, changed (as built in) or worse")
      ->transform(one_of(changes))
      ->option_text("CHANGE");
  add_format(compare.app, compare->format, {"text", "json"}, "text or json");
}

void add_record(CommandTree& tree) {
  auto const record = tree.add<RecordOptions>(
      "record", "write down what a design does, to hold it against that from then on");
  if (!record) return;
  record.app->add_option("FILE", record->file, "the design; its record is FILE.record.json")
      ->required();
  record.app
      ->add_option("--accept", record->accepted,
                   "what has changed as it is meant to: a route as INLET/BODY, a finding by its "
                   "name, times, or all; may be given several times")
      ->option_text("WHAT");
}

}  // namespace

void add_judging(CommandTree& tree) {
  add_check(tree);
  add_table(tree);
  add_compare(tree);
  add_record(tree);
}

}  // namespace leat::cli
