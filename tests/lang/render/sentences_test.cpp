#include "lang/render/finding_sentences.hpp"

#include <fstream>
#include <sstream>

#include "lang/render/finding_pages.hpp"
#include "lang/render/words.hpp"
#include "tests/lang/render/render_test_support.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using namespace leat::render;
using findings::Finding;
using model::FindingKind;

namespace {

Finding finding(FindingKind kind, int measured = 0, int limit = 0) {
  Finding result;
  result.kind = kind;
  result.severity = model::row_of(kind).severity;
  result.inlets = {0};
  result.profiles = {0};
  result.outlets = {0, 1};
  result.signals = {0, 1};
  result.measured = measured;
  result.limit = limit;
  return result;
}

std::string headline(FindingKind kind, int measured = 0, int limit = 0) {
  auto const yard = rendered::worded(drawn::draw({{"w.A"}}));
  return sentences_of(yard->subject(), finding(kind, measured, limit)).headline;
}

}  // namespace

TEST_CASE("headlines name bodies, places and figures in the builder's words") {
  CHECK(headline(FindingKind::dry_stand) == "A walker from millhouse comes to stand on dry ground");
  CHECK(headline(FindingKind::split_route) == "A walker from millhouse can end at kiln or press");
  CHECK(headline(FindingKind::hard_landing, 7, 3) ==
        "A walker from millhouse falls 7 cells onto something dry");
  CHECK(headline(FindingKind::thin_cushion, 1, 2) ==
        "A walker from millhouse falls into only 1 cell of water");
  CHECK(headline(FindingKind::stacked_sources, 3, 1) ==
        "A walker from millhouse rises through 3 sources on top of each other");
  CHECK(headline(FindingKind::twin_signals) == "divert and flush always agree");
  CHECK(headline(FindingKind::swimmer_pool, 20, 16) == "20 cells of standing water are joined");
}

TEST_CASE("every kind of finding has three sentences without holes") {
  auto yard = rendered::worded(drawn::draw({{"w.A"}}));
  yard->design.acceptances.push_back({FindingKind::pinned, {}, {}});
  for (auto const& row : model::finding_table) {
    auto told = finding(row.kind, 2, 1);
    told.acceptance = 0;
    if (model::is_of_switching(row.kind)) told.event = 0;
    auto const sentences = sentences_of(yard->subject(), told);
    INFO(row.name << ": " << sentences.headline);
    for (auto const* text : {&sentences.headline, &sentences.reason, &sentences.remedy}) {
      CHECK(text->size() > 15);
      CHECK(text->find('{') == std::string::npos);
      CHECK(text->find("  ") == std::string::npos);
    }
    CHECK(sentences.headline.back() != '.');
    CHECK(sentences.reason.back() == '.');
    CHECK(sentences.remedy.back() == '.');
  }
}

TEST_CASE("an outlet that is never reached is told after what may be the cause") {
  std::vector<Finding> const findings{finding(FindingKind::unreached_outlet),
                                      finding(FindingKind::pinned),
                                      finding(FindingKind::diagonal_current)};
  CHECK(telling_order(findings) == std::vector<std::size_t>{1, 0, 2});
}

TEST_CASE("every finding has its page, and every page its finding") {
  std::string_view const manual = findings_manual;
  std::size_t headings = 0;
  for (auto at = manual.find("\n## "); at != std::string_view::npos;
       at = manual.find("\n## ", at + 1)) {
    ++headings;
  }
  CHECK(headings == model::finding_table.size());
  for (auto const& row : model::finding_table) {
    auto const section = finding_section(manual, row.name);
    INFO(row.name);
    REQUIRE(section);
    CHECK(section_summary(*section).size() > 15);
    CHECK(section->find("**Why it matters.**") != std::string_view::npos);
    CHECK(section->find("**What to do.**") != std::string_view::npos);
    CHECK(finding_page(manual, row.name, {}).find("What to do.") != std::string::npos);
  }
}

TEST_CASE("the manual in the program is the file in docs") {
  std::ifstream file(LEAT_ROOT "/docs/findings.md");
  std::ostringstream content;
  content << file.rdbuf();
  std::string const manual = findings_manual;
  CHECK(manual.front() == '\n');
  CHECK(manual.substr(1) == content.str());
}

TEST_CASE("lists and counts read as a person writes them") {
  CHECK(listed({"a"}) == "a");
  CHECK(listed({"a", "b", "c"}) == "a, b and c");
  CHECK(listed({"a", "b", "c"}, "or", 2) == "a, b or 1 more");
  CHECK(counted(1, "cell") == "1 cell");
  CHECK(counted(0, "cell") == "0 cells");
  CHECK(place_words({4, 3, 0}) == "level 0, row 3, column 4");
  CHECK(place_code({4, 3, 0}) == "4 3 0");
}
