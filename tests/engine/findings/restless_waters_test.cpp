#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;

TEST_CASE("restless water: the cells that the next step still changes") {
  Poured const now({{"XXXXX"}, {"w7..."}});
  auto const seen =
      findings::restless_waters({now.arrangement, now.field, nullptr, /*is_settled=*/false});
  REQUIRE(seen.size() == 1);
  CHECK(seen[0].kind == FindingKind::restless_water);
  CHECK(seen[0].cells == std::vector{now.at({2, 0, 1})});
  Poured const falling({{"XXXXX"}, {"w7..5"}});
  auto const both = findings::restless_waters({falling.arrangement, falling.field, nullptr, false});
  REQUIRE(both.size() == 1);
  CHECK(both[0].cells ==
        std::vector{falling.at({2, 0, 1}), falling.at({3, 0, 1}), falling.at({4, 0, 1})});
}

TEST_CASE("no restless water where it has come to rest") {
  Poured const now({{"XXXXX"}, {"w7..."}});
  CHECK(findings::restless_waters({now.arrangement, now.field}).empty());
  CHECK_FALSE(has(judge(remembering()), FindingKind::restless_water));
  CHECK(model::row_of(FindingKind::restless_water).severity == model::Severity::error);
}
