#include "lang/grammar/parse.hpp"

#include "lang/source/soundness.hpp"
#include "tests/lang/grammar/reading_of.hpp"
#include "tests/lang/grammar/tree_text.hpp"
#include "tests/support/catch.hpp"

using namespace leat::tests;

namespace {

using Faults = std::vector<std::string>;

std::string tree_of(std::string const& text) {
  leat::diagnostics::Sink sink;
  return tree_text(leat::grammar::parse(leat::source::SourceText("test.leat", text), sink));
}

constexpr char edition_remedy[] = "  > Begin the file with the line: leat 1\n";

}  // namespace

// ---- the edition ----

TEST_CASE("a file begins with its edition") {
  CHECK(tree_text(document_of("leat 1")) == "leat 1\n");
  CHECK(tree_text(document_of("# a remark\n\n  leat 1 # another\n")) == "leat 1\n");
  CHECK(tree_text(document_of("\xef\xbb\xbfleat 1\r\nsignals {\r\n  lever a\r\n}\r\n")) ==
        "leat 1\nsignals[lever a on:_ off:_ for:_ starts:_]\n");
}

TEST_CASE("a file without its edition is one report, and is read on") {
  CHECK(reports_of("signals { lever a }\nmarks { X }\n") ==
        std::string("1:1 edition-missing\n"
                    "  The file does not say which edition of the language it is written in\n"
                    "  [signals] 'leat 1' is expected here\n") +
            edition_remedy +
            "2:10 cut-short\n"
            "  The mark is cut short: a material, 'inlet', 'outlet' or 'plate' is missing\n"
            "  [] a material, 'inlet', 'outlet' or 'plate' is expected here\n"
            "  > A mark is written: X MATERIAL, X MATERIAL when EXPRESSION else MATERIAL, or X "
            "with 'inlet "
            "NAME', 'outlet NAME' or 'plate NAME'\n");
  CHECK(faults_of("") == Faults{"1:1 edition-missing"});
  CHECK(faults_of("laet 1\nsignals { lever a }\n") == Faults{"1:1 edition-missing"});
  CHECK(faults_of("leat\nsignals { lever a }\n") == Faults{"1:1 edition-missing"});
}

TEST_CASE("a file of another edition is one report, and is not read on") {
  CHECK(reports_of("leat 2\nrubbish { here\n") ==
        std::string("1:6 edition-unknown\n"
                    "  The file is written in an edition of the language that is not understood\n"
                    "  [2] edition 1 is the only one understood\n") +
            edition_remedy);
  CHECK(faults_of("leat one\n") == Faults{"1:6 edition-unknown"});
  CHECK(faults_of("leat 1x\n") == Faults{"1:6 edition-unknown"});
  CHECK(faults_of("leat 99999999999999999999\n") == Faults{"1:6 edition-unknown"});
}

TEST_CASE("the edition stands once") {
  CHECK(reports_of("leat 1\nleat 1\nsignals { }\n") ==
        "2:1 edition-misplaced\n"
        "  The edition stands once, at the beginning of the file\n"
        "  [leat] it is said again here\n"
        "  > Remove this line.\n");
}

// ---- declarations ----

TEST_CASE("declarations come in the order of the text") {
  CHECK(tree_text(
            document_of("leat 1\nmarks { }\nsignals { }\nexpect { }\npractice { }\nmarks { }\n")) ==
        "leat 1\nmarks[]\nsignals[]\nexpect title:_ of:_[]\npractice[]\nmarks[]\n");
}

TEST_CASE("a misspelt declaration is one report, whatever its block holds") {
  CHECK(reports_of("leat 1\njunctoin side \"t\" {\n  level 0 { |XX| }\n}\nmarks { X }\n") ==
        "2:1 unknown-declaration\n"
        "  'junctoin' does not begin a declaration\n"
        "  [junctoin] a declaration is expected here\n"
        "  > Perhaps 'junction' is meant.\n"
        "5:10 cut-short\n"
        "  The mark is cut short: a material, 'inlet', 'outlet' or 'plate' is missing\n"
        "  [] a material, 'inlet', 'outlet' or 'plate' is expected here\n"
        "  > A mark is written: X MATERIAL, X MATERIAL when EXPRESSION else MATERIAL, or X with "
        "'inlet "
        "NAME', 'outlet NAME' or 'plate NAME'\n");
}

TEST_CASE("what is close to no declaration") {
  CHECK(reports_of("leat 1\nvillage { houses 3 }\n") ==
        "2:1 unknown-declaration\n"
        "  'village' does not begin a declaration\n"
        "  [village] a declaration is expected here\n"
        "  > A file is made of 'signals', 'materials', 'marks', 'junction', 'works', "
        "'number', 'body', 'practice', 'accept', 'expect' and 'include'.\n");
}

TEST_CASE("whole declarations are not repeated") {
  CHECK(reports_of("leat 1\nfor lane in 0..7 {\n  junction j { }\n}\nsignals { }\n") ==
        "2:1 repetition-misplaced\n"
        "  Whole declarations cannot be repeated by 'for'\n"
        "  [for] no block is open here whose entries could be repeated\n"
        "  > Let 'for' stand inside of 'signals', 'works' or 'expect'.\n");
}

TEST_CASE("a declaration with a fault is left out of the tree, the others are in it") {
  CHECK(
      tree_of("leat 1\nsignals { lever }\nmarks { X rock }\njunction j {\n level 0 {\n |X\n }\n}\n"
              "junction k { level 0 { |X| } }\n") ==
      "leat 1\nmarks[X none  rock?_:_]\njunction k title:_ outside:_[0.._[|X|]]\n");
}

// ---- braces ----

TEST_CASE("a block without its opening brace") {
  CHECK(reports_of("leat 1\nsignals\n  lever a\n}\nmarks { }\n") ==
        "2:8 cut-short\n"
        "  The signals block is cut short: '{' is missing\n"
        "  [] '{' is expected here\n"
        "  > A signals block is written: signals { ... }\n");
}

TEST_CASE("an unclosed block is one report that shows where it was opened") {
  CHECK(reports_of("leat 1\nsignals {\n  lever a\n\nmarks { X rock\n}\n") ==
        "3:10 unclosed-block\n"
        "  A block is not closed before 'marks'\n"
        "  [] a '}' is missing here\n"
        "  2:9 [{] the block is opened here\n"
        "  > Add the '}' after the last line that belongs to the block.\n");
  CHECK(reports_of("leat 1\njunction j {\n  level 0 {\n    |X|\n") ==
        "4:8 unclosed-block\n"
        "  A block is not closed before the file's end\n"
        "  [] a '}' is missing here\n"
        "  3:11 [{] the block is opened here\n"
        "  > Add the '}' after the last line that belongs to the block.\n");
  CHECK(faults_of("leat 1\njunction j {\n  level 0 {\n    |X|\n  level 1 {\n    |X|\n  }\n}\nmarks "
                  "{ }\n") == Faults{"4:8 unclosed-block"});
}

TEST_CASE("a closing brace too many") {
  CHECK(reports_of("leat 1\nsignals { }\n}\nmarks { }\n") ==
        "3:1 stray-brace\n"
        "  This '}' closes nothing\n"
        "  [}] no block is open here\n"
        "  > Remove it, or look for a '}' too many before it.\n");
  CHECK(faults_of("leat 1\njunction j {\n  level 0 { |X| } }\n  level 1 { |X| }\n}\nmarks { }\n") ==
        Faults{"4:3 unknown-declaration"});
}

// ---- several faults ----

TEST_CASE("faults in several blocks are all told in one run") {
  CHECK(
      faults_of(
          "leat 1\nsignals {\n  lever\n  lever good\n  levr x\n}\nmarks {\n  XX rock\n  _ open\n}\n"
          "acept pinned because \"x\"\nexpect \"r\" {\n  millhouse reaches\n}\npractice { head_run "
          "}\n") == Faults{"3:8 cut-short", "5:3 unknown-entry", "8:3 long-mark",
                           "11:1 unknown-declaration", "13:20 cut-short", "15:20 cut-short"});
}

// ---- the bytes ----

TEST_CASE("unsound bytes are one report, and nothing is read") {
  CHECK(reports_of("leat 1\nsignals {\n \xff lever \xff\n") ==
        "3:2 not-utf8\n"
        "  The file is not UTF-8 text (2 places)\n"
        "  [\xff] the byte 0xFF belongs to no character\n"
        "  > Save the file as plain text in UTF-8.\n");
  CHECK(reports_of(std::string("leat 1\n\0", 8)) ==
        "2:1 nul-byte\n  The file holds zero bytes\n  [" + std::string(1, '\0') +
            "] a zero byte stands here\n  > Save the file as plain text in UTF-8.\n");
  CHECK(reports_of("leat 1\rsignals { }") ==
        "1:7 control-character\n"
        "  The file holds a control character\n"
        "  [\r] a carriage return without a line feed stands here\n"
        "  > Remove it; only tabs and line ends are understood.\n");
}

TEST_CASE("a file larger than the bound is one report") {
  leat::diagnostics::Sink sink;
  std::string text = "leat 1\n";
  text.resize(leat::source::largest_text + 1, 'x');
  leat::grammar::parse(leat::source::SourceText("test.leat", text), sink);
  REQUIRE(sink.sorted().size() == 1);
  CHECK(sink.sorted().front().name == "text-too-large");
  CHECK(sink.sorted().front().headline == "The file is larger than 64 MiB and was not read");
}

// ---- comments ----

TEST_CASE("comments are gathered once each, in order") {
  std::string const text =
      "# one\nleat 1 # two\nexpect # three\n table i { # four\n | route\n | k # five\n} # six";
  auto const document = document_of(text);
  std::string gathered;
  for (auto const& comment : document.comments)
    gathered += text.substr(comment.span.begin, comment.span.end - comment.span.begin) + ";";
  CHECK(gathered == "# one;# two;# three;# four;# five;# six;");
}
