#include "lang/render/bill/bill_sheet.hpp"

#include <algorithm>

#include "lang/render/csv.hpp"
#include "tests/lang/render/render_test_support.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using namespace leat::render;

namespace {

BillLine const& line(BillSheet const& sheet, std::string_view what) {
  auto const found =
      std::find_if(sheet.lines.begin(), sheet.lines.end(),
                   [&](BillLine const& candidate) { return candidate.what == what; });
  REQUIRE(found != sheet.lines.end());
  return *found;
}

BillSheet sheet_of(rendered::Worded const& yard) {
  return bill_sheet(yard.subject(), drawn::settled(yard.design).arrangement);
}

}  // namespace

TEST_CASE("a bill counts blocks, sources, switched cells and parts by level") {
  auto const yard =
      rendered::worded(drawn::draw({{"wiasA", "XXXXX", "XXXXX"}, {".....", "XXXXX", "XXXXX"}}));
  auto const sheet = sheet_of(*yard);
  auto const& rock = line(sheet, "rock");
  CHECK(rock.kind == BillKind::block);
  CHECK(rock.levels == std::vector<std::size_t>{5, 5});
  CHECK(rock.spare == 10);
  CHECK(line(sheet, "sign").count == 1);
  CHECK(line(sheet, "water").kind == BillKind::source);
  CHECK(line(sheet, "rock when divert else open").kind == BillKind::switched);
  CHECK(line(sheet, "open").kind == BillKind::kept_open);
  CHECK(line(sheet, "lever").names == std::vector<std::string>{"divert"});
}

TEST_CASE("marks that are made alike are one line") {
  auto const yard = rendered::worded(drawn::draw({{"wi.A"}}));  // i, A and . are open
  auto const sheet = sheet_of(*yard);
  CHECK(line(sheet, "open").count == 3);
  CHECK(std::count_if(sheet.lines.begin(), sheet.lines.end(),
                      [](BillLine const& l) { return l.what == "open"; }) == 1);
}

TEST_CASE("steps go from the floor up, and water comes right after the level that lets it in") {
  using Kind = BuildingStep::Kind;
  auto const yard = rendered::worded(drawn::draw({{"w..A"}, {"...."}}));
  auto const steps = building_steps(sheet_of(*yard));
  std::vector<Kind> kinds;
  for (auto const& step : steps) kinds.push_back(step.kind);
  CHECK(kinds == std::vector<Kind>{Kind::floor, Kind::level, Kind::water, Kind::level, Kind::roof});
}

TEST_CASE("a picture of a step leaves out what nothing reaches, and sources") {
  auto const yard = rendered::worded(drawn::draw({{"XXXX", "XXXX", "wi.A"}}));
  auto const text = steps_text(sheet_of(*yard), {});
  auto const rock = yard->map.fills[yard->design.fill_of[yard->design.grid.cell({0, 0, 0})]].name;
  CHECK(text.find("\n    0\n    1  " + rock + " " + rock + " " + rock + " " + rock +
                  "\n    2  · ") != std::string::npos);
}

TEST_CASE("records of CSV quote what needs it (RFC 4180)") {
  CHECK(csv_record({"a", "b,c", "say \"so\"", ""}) == "a,\"b,c\",\"say \"\"so\"\"\",\r\n");
}
