#include "engine/water/bounds.hpp"

#include <algorithm>

#include "engine/water/influence.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {

// "least-most" of each cell of one row.
std::vector<std::string> bounds_row(model::Design const& design, int y, int z) {
  water::Bounds const bounds(design);
  std::vector<std::string> row;
  for (int x = 0; x < design.grid.width(); ++x) {
    auto const c = design.grid.cell({x, y, z});
    row.push_back(std::to_string(bounds.least(c)) + "-" + std::to_string(bounds.most(c)));
  }
  return row;
}

std::vector<int> columns_of(model::Design const& design, std::vector<model::Cell> cells) {
  std::sort(cells.begin(), cells.end());
  cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
  std::vector<int> columns;
  for (auto c : cells) columns.push_back(design.grid.place(c).x);
  return columns;
}

}  // namespace

TEST_CASE("bounds: water that nothing switches is known, cell by cell, as far as it reaches") {
  auto const design = draw({{"XXXXXXXXXX"}, {"w........."}});
  CHECK(bounds_row(design, 0, 1) == std::vector<std::string>{"8-8", "7-7", "6-6", "5-5", "4-4",
                                                             "3-3", "2-2", "1-1", "0-0", "0-0"});
}

TEST_CASE("bounds: a gate leaves what is before it known, and what is behind it open") {
  auto const design = draw({{"XXXXXX"}, {"w..a.."}});
  CHECK(bounds_row(design, 0, 1) ==
        std::vector<std::string>{"8-8", "7-7", "6-6", "0-5", "0-4", "0-3"});
}

TEST_CASE("bounds: a hole that a gate can open lets water stop before it") {
  // While b is open the water at the third cell goes down there, and no further.
  auto const design = draw({{"XXXXXXX"}, {"XX.XXXX"}, {"XXbXXXX"}, {"w......"}});
  CHECK(bounds_row(design, 0, 3) ==
        std::vector<std::string>{"8-8", "7-7", "6-6", "0-5", "0-4", "0-3", "0-2"});
}

TEST_CASE("bounds: under water that is always there water falls") {
  auto const design = draw({{"XXXXX"}, {"XX..X"}, {"XX.XX"}, {"w..XX"}});
  CHECK(bounds_row(design, 0, 3) == std::vector<std::string>{"8-8", "7-7", "6-6", "0-0", "0-0"});
  CHECK(bounds_row(design, 0, 1)[2] == "8-8");
  CHECK(bounds_row(design, 0, 1)[3] == "7-7");
}

TEST_CASE("bounds: a source that may form between two may be there, and need not") {
  auto const design = draw({{"XXXXX"}, {"w.v.."}});
  water::Bounds const bounds(design);
  auto const c = design.grid.cell({1, 0, 1});
  CHECK(bounds.may_be_source(c));
  CHECK_FALSE(bounds.is_surely_source(c));
  CHECK_FALSE(bounds.is_constant(c));
  CHECK(bounds.least(c) == 7);
}

TEST_CASE("influence: cells of constant water read nothing, others what can change them") {
  auto const design = draw({{"XXXXXXXX"}, {"w..a...."}});
  water::Bounds const bounds(design);
  water::Influence const influence(bounds);
  auto const at = [&](int x) { return influence.reads(design.grid.cell({x, 0, 1})); };
  CHECK(at(2).water.empty());
  CHECK(at(2).material.empty());
  CHECK(columns_of(design, at(3).material) == std::vector<int>{3});
  CHECK(columns_of(design, at(3).water) == std::vector<int>{4});  // what has run on can run back
  CHECK(columns_of(design, at(5).water) == std::vector<int>{4, 6});
  // Strength 1 runs no further, so the cell before it does not depend on it.
  CHECK(columns_of(design, at(6).water) == std::vector<int>{5});
}

TEST_CASE("influence: a preferred side depends on the holes that a gate opens, four cells off") {
  auto const design = draw({{"XXXXXXXXXXX"}, {"XXXXXXXX.XX"}, {"XXXXXXXXbXX"}, {"....w......"}});
  water::Bounds const bounds(design);
  auto const west = design.grid.cell({3, 0, 3}), east = design.grid.cell({5, 0, 3});
  auto const source = design.grid.cell({4, 0, 3});
  CHECK(bounds.preference(source, west) == water::Bounds::Preference::sometimes);
  CHECK(bounds.preference(source, east) == water::Bounds::Preference::always);
  CHECK(columns_of(design, water::Influence(bounds).reads(west).material) == std::vector<int>{8});
}
