#include "lang/lower/including.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <variant>
#include <vector>

#include "lang/source/soundness.hpp"
#include "tests/lang/lower/shelf.hpp"
#include "tests/support/catch.hpp"

namespace {

using namespace leat;
using Texts = std::vector<std::string>;

// A design read with what it includes.
struct Reading {
  source::SourceText text;
  lower::Shelf shelf;
  diagnostics::Sink sink;
  syntax::Document document;

  Reading(std::string main, std::map<std::string, std::string> files,
          std::string const& name = "yard.leat")
      : text(name, std::move(main)), shelf(std::move(files)) {
    document = lower::read_with_included(text, shelf, sink);
  }
  std::string place(source::Span span) const {
    auto const at = text.position(span.begin);
    return fmt::format("{}:{}:{}", text.name(at.file), at.line, at.column);
  }
  // The signals in their order, each with its file.
  Texts signals() const {
    Texts found;
    for (auto const& declaration : document.declarations) {
      if (auto const* block = std::get_if<syntax::SignalsDeclaration>(&declaration)) {
        for (auto const& signal : block->signals)
          found.push_back(signal.name.text + " " + place(signal.name.span));
      }
    }
    return found;
  }
  template <class Kind>
  std::ptrdiff_t count() const {
    auto const& all = document.declarations;
    return std::count_if(all.begin(), all.end(),
                         [](auto const& node) { return std::holds_alternative<Kind>(node); });
  }
  Texts faults() const {
    Texts found;
    for (auto const& report : sink.sorted())
      found.push_back(report.name + " " + place(report.primary.span));
    return found;
  }
};

std::string levers(std::string const& name) { return "signals { lever " + name + " }\n"; }

// A chain of so many files, each including the next.
std::map<std::string, std::string> chain(std::size_t files) {
  std::map<std::string, std::string> made;
  for (std::size_t i = 1; i < files; ++i) {
    auto const next = i + 1 < files ? fmt::format("include \"{}.leat\"\n", i + 1) : "";
    made[fmt::format("{}.leat", i)] = "leat 1\n" + next + levers(fmt::format("lever_{}", i));
  }
  return made;
}

}  // namespace

TEST_CASE("an included file's declarations stand where it is included") {
  Reading const read(
      "leat 1\n" + levers("first") + "include \"parts/fork.leat\"\n" + levers("last"),
      {{"parts/fork.leat", "leat 1\n" + levers("fork")}});
  CHECK(read.faults() == Texts{});
  CHECK(read.signals() ==
        Texts{"first yard.leat:2:17", "fork parts/fork.leat:2:17", "last yard.leat:4:17"});
}

TEST_CASE("a path begins at the folder of the file it stands in") {
  Reading const read("leat 1\ninclude \"parts/a.leat\"\n",
                     {{"parts/a.leat", "leat 1\ninclude \"b.leat\"\ninclude \"../c.leat\"\n"},
                      {"parts/b.leat", "leat 1\n" + levers("b")},
                      {"c.leat", "leat 1\n" + levers("c")}});
  CHECK(read.faults() == Texts{});
  CHECK(read.signals() == Texts{"b parts/b.leat:2:17", "c c.leat:2:17"});
}

TEST_CASE("a file is read once, however often and by whichever name it is included") {
  Reading read("leat 1\ninclude \"a.leat\"\ninclude \"b.leat\"\ninclude \"link/c.leat\"\n",
               {{"a.leat", "leat 1\ninclude \"c.leat\"\n" + levers("a")},
                {"b.leat", "leat 1\ninclude \"c.leat\"\n" + levers("b")},
                {"c.leat", "leat 1\n" + levers("c")}});
  CHECK(read.faults() == Texts{});
  CHECK(read.signals() == Texts{"c c.leat:2:17", "a a.leat:3:17", "b b.leat:3:17"});
  CHECK(read.shelf.times_read ==
        std::map<std::string, int>{{"a.leat", 1}, {"b.leat", 1}, {"c.leat", 1}});
}

TEST_CASE("what an included file expects is left to its own run; what it accepts is kept") {
  std::string const judging =
      "accept diagonal because \"seldom\"\nexpect { findings none }\n"
      "expect table millhouse {\n  | route\n  | kiln\n}\n";
  Reading const read("leat 1\ninclude \"a.leat\"\n" + judging, {{"a.leat", "leat 1\n" + judging}});
  CHECK(read.faults() == Texts{});
  CHECK(read.count<syntax::AcceptDeclaration>() == 2);
  CHECK(read.count<syntax::ExpectDeclaration>() == 1);
  CHECK(read.count<syntax::TableDeclaration>() == 1);
  CHECK(read.count<syntax::IncludeDeclaration>() == 0);
}

TEST_CASE("a number that two files declare alike is kept once") {
  Reading const read("leat 1\ninclude \"a.leat\"\nnumber lanes = 8\nnumber rise = 3\n",
                     {{"a.leat", "leat 1\nnumber lanes   =  8\nnumber rise = 2\n"}});
  CHECK(read.faults() == Texts{});
  CHECK(read.count<syntax::NumberDeclaration>() == 3);
  Reading const twice("leat 1\nnumber lanes = 8\nnumber lanes = 8\n", {});
  CHECK(twice.count<syntax::NumberDeclaration>() == 2);
}

TEST_CASE("a file that includes itself is told once, by whichever name") {
  Reading const plain("leat 1\ninclude \"yard.leat\"\n", {});
  CHECK(plain.faults() == Texts{"include-loop yard.leat:2:1"});
  CHECK(plain.sink.sorted().front().headline == "yard.leat includes itself");
  Reading const linked("leat 1\n  include \"link/yard.leat\"\n", {});
  CHECK(linked.faults() == Texts{"include-loop yard.leat:2:3"});
}

TEST_CASE("a loop is told with each of its includes, and without what leads to it") {
  Reading const read("leat 1\ninclude \"a.leat\"\n",
                     {{"a.leat", "leat 1\n\ninclude \"b.leat\"\n"},
                      {"b.leat", "leat 1\n\n\ninclude \"c.leat\"\n"},
                      {"c.leat", "leat 1\n\n\n\ninclude \"a.leat\"\n"}});
  CHECK(read.faults() == Texts{"include-loop c.leat:5:1"});
  auto const found = read.sink.sorted().front();
  CHECK(found.headline ==
        "Files include each other in a loop: a.leat -> b.leat -> c.leat -> a.leat");
  REQUIRE(found.others.size() == 2);
  CHECK(found.primary.text == "c.leat includes a.leat");
  CHECK(read.place(found.others[0].span) == "a.leat:3:1");
  CHECK(found.others[0].text == "a.leat includes b.leat");
  CHECK(read.place(found.others[1].span) == "b.leat:4:1");
}

TEST_CASE("two loops are two reports, and the rest is read all the same") {
  Reading const read("leat 1\ninclude \"a.leat\"\ninclude \"yard.leat\"\n" + levers("last"),
                     {{"a.leat", "leat 1\ninclude \"yard.leat\"\n" + levers("a")}});
  CHECK(read.faults() == Texts{"include-loop yard.leat:3:1", "include-loop a.leat:2:1"});
  CHECK(read.signals() == Texts{"a a.leat:3:17", "last yard.leat:4:17"});
}

TEST_CASE("a file that is missing is told once, at its first include") {
  Reading const read("leat 1\ninclude \"no.leat\"\ninclude \"a.leat\"\n  include \"no.leat\"\n",
                     {{"a.leat", "leat 1\ninclude \"no.leat\"\n"}});
  CHECK(read.faults() == Texts{"include-unread yard.leat:2:1"});
  CHECK(read.sink.sorted().front().headline == "no.leat is not there");
}

TEST_CASE("an include without a name names no file") {
  Reading const read("leat 1\ninclude \"\"\ninclude \"  \"\n", {});
  CHECK(read.faults() == Texts{"include-unread yard.leat:2:1", "include-unread yard.leat:3:1"});
}

TEST_CASE("the faults of several files come in one run, file after file") {
  Reading const read("leat 1\ninclude \"a.leat\"\ninclude \"b.leat\"\nsignals { levr x }\n",
                     {{"a.leat", "leat 1\nmarks { XX rock }\nmarks { X rck\n"},
                      {"b.leat", "signals { lever b }\n"}});
  auto const faults = read.faults();
  REQUIRE(faults.size() == 4);
  CHECK(faults[0].ends_with(" yard.leat:4:11"));
  CHECK(faults[1].ends_with(" a.leat:2:9"));
  CHECK(faults[2].find(" a.leat:") != std::string::npos);
  CHECK(faults[3] == "edition-missing b.leat:1:1");
}

TEST_CASE("a file that is no text tells where, and who includes it") {
  Reading const read("leat 1\ninclude \"a.leat\"\n", {{"a.leat", "leat 1\n\xff\xfe\n"}});
  CHECK(read.faults() == Texts{"not-utf8 a.leat:2:1"});
  auto const found = read.sink.sorted().front();
  REQUIRE(found.others.size() == 1);
  CHECK(read.place(found.others[0].span) == "yard.leat:2:1");
}

TEST_CASE("1000 files are read, however deep they lie, and 1001 are not") {
  Reading const most("leat 1\ninclude \"1.leat\"\n", chain(lower::most_files));
  CHECK(most.faults() == Texts{});
  CHECK(most.text.file_count() == lower::most_files);
  CHECK(most.signals().front() == "lever_999 999.leat:2:17");
  CHECK(most.signals().size() == lower::most_files - 1);
  Reading const more("leat 1\ninclude \"1.leat\"\n", chain(lower::most_files + 3));
  CHECK(more.faults() == Texts{"too-many 999.leat:2:1"});
}

TEST_CASE("a loop of 1000 files is told in bounded space") {
  auto files = chain(lower::most_files);
  files["999.leat"] = "leat 1\ninclude \"yard.leat\"\n";
  Reading const read("leat 1\ninclude \"1.leat\"\n", files);
  CHECK(read.faults() == Texts{"include-loop 999.leat:2:1"});
  CHECK(read.sink.sorted().front().headline == "Files include each other in a loop of 1000 files");
  CHECK(read.sink.sorted().front().others.size() < 30);
}

TEST_CASE("files that are together too large are refused, and reading ends there") {
  auto const half = "leat 1\n#" + std::string(source::largest_text / 2, '.') + "\n";
  Reading read("leat 1\ninclude \"a.leat\"\ninclude \"b.leat\"\ninclude \"c.leat\"\n",
               {{"a.leat", half}, {"b.leat", half}, {"c.leat", half}});
  CHECK(read.faults() == Texts{"text-too-large yard.leat:3:1"});
  CHECK(read.shelf.times_read.count("c.leat") == 0);
}

TEST_CASE("very many includes of one file are bounded") {
  std::string text = "leat 1\n";
  for (std::size_t i = 0; i <= lower::most_includes; ++i) text += "include \"a.leat\"\n";
  Reading const read(text + "include \"no.leat\"\n", {{"a.leat", "leat 1\n"}});
  CHECK(read.faults() == Texts{fmt::format("too-many yard.leat:{}:1", lower::most_includes + 2)});
}
