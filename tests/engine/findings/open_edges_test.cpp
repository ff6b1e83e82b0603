#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

namespace {
model::Design edge(int depth) {
  std::vector<Level> levels{{"XXX"}};
  levels.insert(levels.end(), static_cast<std::size_t>(depth), {"XX."});
  levels.push_back({"wi."});
  levels.push_back({"..."});
  return draw(levels);
}
}  // namespace

TEST_CASE("open edge: water runs with the body over an edge, two cells deep or more") {
  auto const design = edge(2);
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::open_edge);
  CHECK(places(design, finding) == Places{"2 0 3"});
  CHECK(finding.measured == 2);
  CHECK(finding.severity == model::Severity::note);
}

TEST_CASE("no open edge: a sign ends the flow, or the drop is one cell") {
  CHECK_FALSE(has(judge(shaft(4, 2)), FindingKind::open_edge));
  CHECK_FALSE(has(judge(edge(1)), FindingKind::open_edge));
}
