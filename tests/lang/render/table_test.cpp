#include "lang/render/documents.hpp"
#include "lang/render/table_lines.hpp"
#include "tests/lang/render/render_test_support.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using namespace leat::render;

namespace {

// Two lanes by hand: the walker goes by divert, the ox is doubtful while flush is on.
TableSheet sheet() {
  using enum Setting;
  TableSheet sheet;
  sheet.junction = "yard";
  sheet.signals = {"divert", "flush"};
  sheet.row_count = 4;
  auto const certain = body::Verdict::certain;
  Lane walker{"millhouse", "walker", {}, {}, {}};
  walker.destinations = {
      {certain, {"kiln"}, {{off, any}}, {2}, "not divert", "when not divert", 2},
      {body::Verdict::split, {"kiln", "press"}, {{on, any}}, {2}, "divert", "when divert", 2}};
  walker.condensed = {{{certain, {"kiln"}, {}, false, false}, {{off, any}}},
                      {{body::Verdict::split, {"kiln", "press"}, {}, false, false}, {{on, any}}}};
  Lane ox{"millhouse", "ox", {}, {}, {}};
  ox.destinations = {
      {body::Verdict::lost, {}, {{any, off}}, {2}, "not flush", "when not flush", 2},
      {body::Verdict::doubtful, {"press"}, {{any, on}}, {2}, "flush", "when flush", 2}};
  ox.condensed = {{{body::Verdict::lost, {}, {{4, 3, 0}}, false, false}, {{any, off}}},
                  {{body::Verdict::doubtful, {"press"}, {}, true, true}, {{any, on}}}};
  sheet.lanes = {walker, ox};
  return sheet;
}

}  // namespace

TEST_CASE("a condensed table as text") {
  CHECK(table_text(sheet()) ==
        "junction yard\n"
        "\n"
        "  from millhouse, walker\n"
        "\n"
        "    divert  flush  goes to      verdict\n"
        "    0       -      kiln         certain\n"
        "    1       -      kiln, press  split\n"
        "\n"
        "    kiln         when not divert  2 of 4 combinations\n"
        "    kiln, press  when divert      2 of 4 combinations\n"
        "\n"
        "  from millhouse, ox\n"
        "\n"
        "    divert  flush  goes to  verdict\n"
        "    -       0      nothing  lost\n"
        "    -       1      press    doubtful\n"
        "\n"
        "    nothing  when not flush  2 of 4 combinations\n"
        "    press    when flush      2 of 4 combinations\n");
}

TEST_CASE("bodies that go the same ways are told once") {
  auto same = sheet();
  same.lanes[1] = same.lanes[0];
  same.lanes[1].body = "ox";
  auto const groups = grouped(same);
  REQUIRE(groups.size() == 1);
  CHECK(groups[0].bodies == std::vector<std::string>{"walker", "ox"});
}

TEST_CASE("a table as CSV quotes what needs it") {
  auto odd = sheet();
  odd.junction = "yard, \"old\"";
  CHECK(table_csv({odd}) ==
        "junction,inlet,body,divert,flush,verdict,outlets,combinations\r\n"
        "\"yard, \"\"old\"\"\",millhouse,walker,0,-,certain,kiln,2\r\n"
        "\"yard, \"\"old\"\"\",millhouse,walker,1,-,split,kiln;press,2\r\n"
        "\"yard, \"\"old\"\"\",millhouse,ox,-,0,lost,,2\r\n"
        "\"yard, \"\"old\"\"\",millhouse,ox,-,1,doubtful,press,2\r\n");
}

TEST_CASE("tables of several junctions are one as CSV, each signal in a column of its own") {
  auto other = sheet();
  other.junction = "other";
  other.signals = {"flush", "late"};
  other.lanes.pop_back();
  CHECK(table_csv({sheet(), other}) ==
        "junction,inlet,body,divert,flush,late,verdict,outlets,combinations\r\n"
        "yard,millhouse,walker,0,-,-,certain,kiln,2\r\n"
        "yard,millhouse,walker,1,-,-,split,kiln;press,2\r\n"
        "yard,millhouse,ox,-,0,-,lost,,2\r\n"
        "yard,millhouse,ox,-,1,-,doubtful,press,2\r\n"
        "other,millhouse,walker,-,0,-,certain,kiln,2\r\n"
        "other,millhouse,walker,-,1,-,split,kiln;press,2\r\n");
}

TEST_CASE("a table as Markdown keeps bars and underlines of names out of the markup") {
  auto odd = sheet();
  odd.lanes.pop_back();
  odd.junction = "side_yard";
  CHECK(table_markdown(odd) ==
        "## side\\_yard\n"
        "\n"
        "### From millhouse, walker\n"
        "\n"
        "| divert | flush | goes to | verdict |\n"
        "| --- | --- | --- | --- |\n"
        "| 0 | - | kiln | certain |\n"
        "| 1 | - | kiln, press | split |\n"
        "\n"
        "| goes to | condition | combinations |\n"
        "| --- | --- | --- |\n"
        "| kiln | when not divert | 2 of 4 |\n"
        "| kiln, press | when divert | 2 of 4 |\n");
}

TEST_CASE("a table as expectations leaves what is doubtful to a comment") {
  CHECK(table_expect(sheet()) ==
        "expect table walker from millhouse of yard {\n"
        "  divert  flush  | route\n"
        "  0       -      | kiln\n"
        "  1       -      | kiln, press\n"
        "}\n"
        "\n"
        "# doubtful, so not expected: - 1 | press\n"
        "expect table ox from millhouse of yard {\n"
        "  divert  flush  | route\n"
        "  -       0      | nothing\n"
        "}\n");
}

TEST_CASE("a condensed row of the document leaves out what does not matter") {
  auto const document = table_document({sheet()});
  CHECK(document.find("\"divert\": false") != std::string::npos);
  CHECK(document.find("\"trapped\": [[4,3,0]]") != std::string::npos);
  CHECK(document.find("\"condition\": \"not flush\"") != std::string::npos);
}

TEST_CASE("the sheet of a judged junction holds every row once") {
  auto const yard =
      rendered::worded(drawn::draw({{"XXXXAXXXX", "wi..a...B"}, {"XXXX.XXXX", "....a...."}}));
  auto const judged = judge(yard->design);
  auto const full = table_sheet(yard->subject(), judged, {std::nullopt, std::nullopt, true});
  REQUIRE(full.rows.size() == 4);
  REQUIRE(full.lanes.size() == 1);
  CHECK(full.lanes[0].routes.size() == 4);
  Count told = 0;
  for (auto const& d : full.lanes[0].destinations) told += d.combinations;
  CHECK(told == 4);
}
