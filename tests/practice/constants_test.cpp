#include <map>
#include <string_view>

#include "engine/model/practice.hpp"
#include "engine/model/profile.hpp"
#include "tests/support/catch.hpp"

using namespace leat::model;

// The figures of the model's text, each with the provenance the text gives it.
TEST_CASE("practice: every constant has the figure and the provenance of the model") {
  struct Wanted {
    int figure;
    Provenance provenance;
  };
  std::map<std::string_view, Wanted> const wanted{
      {"source_strength", {8, Provenance::practice}}, {"source_makers", {2, Provenance::memory}},
      {"eager_makers", {3, Provenance::memory}},      {"hole_search", {4, Provenance::memory}},
      {"step_ticks", {5, Provenance::memory}},        {"falling_slope", {37, Provenance::memory}},
      {"drift_after", {2, Provenance::practice}},     {"sink_cells", {3, Provenance::memory}},
      {"longest_drop", {3, Provenance::practice}},    {"cushion", {2, Provenance::practice}},
      {"cushion_advised", {3, Provenance::practice}}, {"pit_width", {2, Provenance::practice}},
      {"head_run", {2, Provenance::practice}},        {"lift_sources", {1, Provenance::practice}},
      {"edge_drop", {2, Provenance::choice}},         {"swimmer_pool", {16, Provenance::memory}},
      {"ticks_per_second", {20, Provenance::memory}}, {"gravity", {80, Provenance::memory}},
      {"air_drag", {980, Provenance::memory}},        {"water_drag", {800, Provenance::memory}},
      {"water_gravity", {20, Provenance::memory}},    {"upward_stroke", {40, Provenance::memory}},
      {"stroke_chance", {800, Provenance::memory}},   {"water_push", {14, Provenance::memory}},
      {"body_width", {600, Provenance::memory}},      {"body_height", {1950, Provenance::memory}}};
  CHECK(wanted.size() == rule_table.size());
  for (auto const& row : rule_table) {
    INFO(row.name);
    REQUIRE(wanted.count(row.name) == 1);
    CHECK(row.standard == wanted.at(row.name).figure);
    CHECK(row.provenance == wanted.at(row.name).provenance);
  }
}

// Breath from memory; the safe fall is common practice, no source.
TEST_CASE("practice: the default body is one cell wide, two tall, and floats") {
  Profile const walker;
  CHECK(walker == Profile{1, 2, true, 300, 3});
}
