#include "lang/diagnostics/sink.hpp"

#include "tests/support/catch.hpp"

using leat::diagnostics::Diagnostic;
using leat::diagnostics::Sink;

namespace {

Diagnostic at(std::size_t offset, std::string name) {
  Diagnostic made;
  made.name = std::move(name);
  made.primary.span = {offset, offset + 1};
  return made;
}

}  // namespace

TEST_CASE("reports come sorted by their place, not by the order of the checks") {
  Sink sink;
  CHECK(sink.empty());
  sink.report(at(7, "b"));
  sink.report(at(3, "c"));
  sink.report(at(7, "a"));
  auto const sorted = sink.sorted();
  REQUIRE(sorted.size() == 3);
  CHECK(sorted[0].name == "c");
  CHECK(sorted[1].name == "a");
  CHECK(sorted[2].name == "b");
  CHECK(!sink.empty());
}

TEST_CASE("past the most that is kept, reports are counted") {
  Sink sink;
  for (std::size_t i = 0; i < Sink::most; ++i) sink.report(at(i, "x"));
  CHECK(sink.is_full());
  CHECK(sink.left_out() == 0);
  sink.report(at(0, "late"));
  sink.leave_out();
  CHECK(sink.left_out() == 2);
  CHECK(sink.sorted().size() == Sink::most);
  CHECK(sink.sorted().front().name == "x");
}

TEST_CASE("the same kind of fault at the same words is told once, what is missing each time") {
  Sink sink;
  sink.report(at(3, "a"));
  sink.report(at(3, "a"));
  sink.report(at(3, "b"));
  sink.report(at(4, "a"));
  CHECK(sink.sorted().size() == 3);
  auto missing = at(9, "c");
  missing.primary.span = {9, 9};
  sink.report(missing);
  sink.report(missing);
  CHECK(sink.sorted().size() == 5);
}
