#include "lang/render/difference.hpp"

#include <algorithm>
#include <random>
#include <sstream>
#include <vector>

#include "tests/support/catch.hpp"

using namespace leat::render;

namespace {

std::string difference(std::string const& one, std::string const& other) {
  return line_difference("yard.leat", one, other, {}, false);
}

std::vector<std::string> lines_of(std::string const& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

// The fewest lines to take out and put in, by the table of longest common parts (common practice,
// no source).
std::size_t fewest_edits(std::vector<std::string> const& one, std::vector<std::string> const& two) {
  std::vector<std::vector<std::size_t>> common(one.size() + 1,
                                               std::vector<std::size_t>(two.size() + 1));
  for (std::size_t i = 1; i <= one.size(); ++i)
    for (std::size_t j = 1; j <= two.size(); ++j)
      common[i][j] = one[i - 1] == two[j - 1] ? common[i - 1][j - 1] + 1
                                              : std::max(common[i - 1][j], common[i][j - 1]);
  return one.size() + two.size() - 2 * common.back().back();
}

// The new text, made from the old one as the difference says; and how many lines it changes.
struct Applied {
  std::string text;
  std::size_t edits = 0;
};

Applied applied(std::string const& old_text, std::string const& difference) {
  auto const old_lines = lines_of(old_text);
  std::size_t at = 0;
  Applied out;
  for (auto const& line : lines_of(difference)) {
    if (line.starts_with("---") || line.starts_with("+++")) continue;
    if (line.starts_with("@@")) {
      std::size_t begin = std::stoul(line.substr(4)), count = 1;
      auto const comma = line.find(','), blank = line.find(' ', 4);
      if (comma < blank) count = std::stoul(line.substr(comma + 1));
      for (auto const end = count == 0 ? begin : begin - 1; at < end; ++at)
        out.text += old_lines[at] + "\n";
      continue;
    }
    if (line[0] != '+') REQUIRE(old_lines.at(at++) == line.substr(1));
    if (line[0] != '-') out.text += line.substr(1) + "\n";
    out.edits += line[0] != ' ';
  }
  for (; at < old_lines.size(); ++at) out.text += old_lines[at] + "\n";
  return out;
}

}  // namespace

TEST_CASE("texts of the same bytes have no difference") {
  CHECK(difference("", "").empty());
  CHECK(difference("a\nb", "a\nb").empty());
}

TEST_CASE("a change is shown with three lines around it, and changes near each other together") {
  CHECK(difference("1\n2\n3\n4\n5\n6\n7\n8\n9\n", "1\n2\n3\n4\nfive\n6\n7\n8\n9\n") ==
        "--- yard.leat\n+++ yard.leat\n@@ -2,7 +2,7 @@\n 2\n 3\n 4\n-5\n+five\n 6\n 7\n 8\n");
  CHECK(difference("a\n1\n2\n3\n4\n5\n6\nb\n", "A\n1\n2\n3\n4\n5\n6\nB\n") ==
        "--- yard.leat\n+++ yard.leat\n@@ -1,8 +1,8 @@\n-a\n+A\n 1\n 2\n 3\n 4\n 5\n 6\n-b\n+B\n");
  CHECK(difference("", "a\n") == "--- yard.leat\n+++ yard.leat\n@@ -0,0 +1 @@\n+a\n");
}

TEST_CASE("a line that does not end is told") {
  CHECK(difference("a", "a\n") ==
        "--- yard.leat\n+++ yard.leat\n@@ -1 +1 @@\n-a\n\\ No newline at end of file\n+a\n");
}

TEST_CASE("for a terminal, nothing of the text is obeyed") {
  auto const shown = line_difference("y", "# \x1b[31m\tred\n", "", {}, true);
  CHECK(shown.find('\x1b') == std::string::npos);
  CHECK(shown.find("# ?[31m\tred") != std::string::npos);
}

TEST_CASE("random texts: the difference makes the new one of the old one, by the fewest lines") {
  std::mt19937 random(11);
  auto const below = [&](int bound) {
    return std::uniform_int_distribution<>(0, bound - 1)(random);
  };
  for (int turn = 0; turn < 500; ++turn) {
    auto const text = [&] {
      std::string made;
      for (int lines = below(30); lines > 0; --lines)
        made += std::string(1, "abcde"[below(5)]) + "\n";
      return made;
    };
    auto const one = text(), other = text();
    CAPTURE(one, other);
    auto const made = applied(one, difference(one, other));
    CHECK(made.text == other);
    CHECK(made.edits == fewest_edits(lines_of(one), lines_of(other)));
  }
}

TEST_CASE("texts that have thousands of lines of their own are told as wholly different") {
  std::string one, other;
  for (int i = 0; i < 5000; ++i) {
    one += "a" + std::to_string(i) + "\n";
    other += "b" + std::to_string(i) + "\n";
  }
  CHECK(applied("first\n" + one, difference("first\n" + one, "first\n" + other)).text ==
        "first\n" + other);
}
