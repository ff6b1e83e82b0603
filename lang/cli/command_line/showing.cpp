#include <map>

#include "lang/cli/command_line/tree.hpp"

namespace leat::cli {

namespace {

void add_draw(CommandTree& tree) {
  auto const draw = tree.add<DrawOptions>("draw", "the levels as a picture (SVG)");
  if (!draw) return;
  add_file(draw.app, draw->file);
  add_when(draw.app, draw->when);
  add_deeds(draw.app, draw->deeds);
  add_out(draw.app, draw->out);
  draw.app->add_option("--level", draw->levels, "only these levels, counted from 0");
  draw.app->add_option("--section", draw->sections,
                       "seen from the side: \"row 3\" or \"column 5\"");
  draw.app->add_option("--columns", draw->columns, "only these: 20..40");
  draw.app->add_option("--rows", draw->rows, "only these: 20..40");
  draw.app->add_option("--place", draw->place, "of a works, only where this stands");
  draw.app->add_option("--from", draw->inlets, "ways from these inlets only");
  draw.app->add_option("--body", draw->body, "whose ways; else the first one declared");
  draw.app->add_flag("--no-ways", draw->is_without_ways, "without the ways of bodies");
  std::map<std::string, render::Theme> const themes{{"auto", render::Theme::automatic},
                                                    {"light", render::Theme::light},
                                                    {"dark", render::Theme::dark},
                                                    {"paper", render::Theme::paper}};
  draw.app->add_option("--theme", draw->theme, "auto (as the reader prefers), light, dark or paper")
      ->transform(one_of(themes).description(""))
      ->option_text("THEME");
  add_junction(draw.app, draw->junction);
}

void add_bill(CommandTree& tree) {
  auto const bill = tree.add<BillOptions>("bill", "the blocks to bring, and the steps of building");
  if (!bill) return;
  add_file(bill.app, bill->file);
  bill.app->add_flag("--steps", bill->has_steps, "with the steps, level by level from the bottom");
  add_out(bill.app, bill->out);
  add_junction(bill.app, bill->junction);
  add_format(bill.app, bill->format, {"text", "csv", "json"}, "text, csv or json");
}

void add_page(CommandTree& tree) {
  auto const page = tree.add<PageOptions>(
      "page", "one page to flip the levers on, watch the water and send bodies through");
  if (!page) return;
  add_file(page.app, page->file);
  page.app->add_option("NEWER", page->newer,
                       "a newer revision: both side by side, what differs is marked");
  add_out(page.app, page->out);
  add_junction(page.app, page->junction);
}

}  // namespace

void add_showing(CommandTree& tree) {
  add_draw(tree);
  add_bill(tree);
  add_page(tree);
}

}  // namespace leat::cli
