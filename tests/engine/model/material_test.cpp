#include "engine/model/material.hpp"

#include "tests/support/catch.hpp"

using namespace leat::model;

// The table of model section 1, row by row.
TEST_CASE("the built-in materials have the traits of the model's table") {
  struct Traits {
    bool source, water_enters, body_enters, carries, bears_sources, shows_slope, plate;
  };
  auto const has = [](MaterialId id, Traits t) {
    auto const& m = built_in_materials[id];
    return m == Material{t.source,        t.water_enters, t.body_enters, t.carries,
                         t.bears_sources, t.shows_slope,  t.plate};
  };
  CHECK(has(material::rock, {false, false, false, true, true, false, false}));
  CHECK(has(material::open, {false, true, true, false, false, true, false}));
  CHECK(has(material::water, {true, true, true, false, false, true, false}));
  CHECK(has(material::sign, {false, false, true, false, true, false, false}));
  CHECK(has(material::plate, {false, false, true, false, false, false, true}));
}
