#include "engine/compare/comparison.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using compare::Change;
using works::Fate;

namespace {

Fate fate(std::vector<model::OutletId> outlets, bool is_trapped = false) {
  Fate fate;
  fate.outlets = std::move(outlets);
  fate.is_trapped = is_trapped;
  return fate;
}

// Outlet 0 before is outlet 1 after, 1 is 0, and 2 is gone.
compare::Counterparts<model::OutletId> const swapped{1, 0, std::nullopt};

}  // namespace

TEST_CASE("changes: a body that no longer arrives, may be trapped or may split is worse off") {
  CHECK(compare::change_of(fate({0}), fate({}), swapped) == Change::worse);
  CHECK(compare::change_of(fate({0}), fate({1}, true), swapped) == Change::worse);
  CHECK(compare::change_of(fate({0}), fate({0, 1}), swapped) == Change::worse);
}

TEST_CASE("changes: a trouble that goes, with the way kept, is better; another outlet is other") {
  CHECK(compare::change_of(fate({}, true), fate({1}), swapped) == Change::better);
  CHECK(compare::change_of(fate({0}, true), fate({1}), swapped) == Change::better);
  CHECK(compare::change_of(fate({0}), fate({0}), swapped) == Change::other);
  CHECK(compare::change_of(fate({2}), fate({0}), swapped) == Change::other);
  // One trouble for another is no gain.
  CHECK(compare::change_of(fate({}), fate({0, 1}), swapped) == Change::worse);
}
