#include "tests/lang/grammar/reading_of.hpp"
#include "tests/support/catch.hpp"

using namespace leat::tests;

namespace {

std::string mark(std::string const& line) { return declaration_of("marks {\n  " + line + "\n}\n"); }
std::string mark_fault(std::string const& lines) {
  return reports_of("leat 1\nmarks {\n" + lines + "\n}\n");
}
std::string row_fault(std::string const& lines) {
  return reports_of("leat 1\njunction j {\n  level 0 {\n" + lines + "\n  }\n}\n");
}

constexpr char mark_remedy[] =
    "  > A mark is written: X MATERIAL, X MATERIAL when EXPRESSION else MATERIAL, or X with 'inlet "
    "NAME', "
    "'outlet NAME' or 'plate NAME'\n";

}  // namespace

// ---- materials ----

TEST_CASE("a material and its traits") {
  CHECK(declaration_of("materials { mesh passes water, shows slope,\n bears sources, is source\n"
                       "grille carries, passes bodies }") ==
        "materials[mesh[passes water; shows slope; bears sources; is source]; "
        "grille[carries; passes bodies]]");
}

TEST_CASE("a trait that is none, or is missing") {
  CHECK(reports_of("leat 1\nmaterials {\n  mesh passes watr\n  slab\n}\n") ==
        "3:15 out-of-place\n"
        "  'watr' stands where 'water' or 'bodies' is expected in the material\n"
        "  [watr] 'water' or 'bodies' is expected here\n"
        "  > Perhaps 'water' is meant.\n"
        "4:7 cut-short\n"
        "  The material is cut short: a trait is missing\n"
        "  [] a trait is expected here\n"
        "  > A material is written: NAME TRAIT, TRAIT, with the traits 'carries', 'passes water', "
        "'passes bodies', 'bears sources', 'shows slope' and 'is source'\n");
}

// ---- marks ----

TEST_CASE("marks of a material, switched or not") {
  CHECK(mark("X rock") == "marks[X none  rock?_:_]");
  CHECK(mark("a rock when divert and b else open") == "marks[a none  rock?and(divert,b):open]");
  CHECK(mark("\xe2\x86\x92 sign") == "marks[\xe2\x86\x92 none  sign?_:_]");
  CHECK(mark("a open when x else plate") == "marks[a none  open?x:plate]");
}

TEST_CASE("marks with a role") {
  CHECK(mark("i inlet millhouse") == "marks[i inlet millhouse _]");
  CHECK(mark("k outlet kiln in water") == "marks[k outlet kiln water?_:_]");
  CHECK(mark("P plate passed in rock when a else plate") == "marks[P plate passed rock?a:plate]");
}

TEST_CASE("a mark without a material") {
  CHECK(mark_fault("  X\n  _ open") ==
        std::string("3:4 cut-short\n"
                    "  The mark is cut short: a material, 'inlet', 'outlet' or 'plate' is missing\n"
                    "  [] a material, 'inlet', 'outlet' or 'plate' is expected here\n") +
            mark_remedy);
}

TEST_CASE("a switched mark without its other material") {
  CHECK(mark_fault("  a rock when divert") ==
        std::string("3:21 cut-short\n"
                    "  The mark is cut short: 'else' is missing\n"
                    "  [] 'else' is expected here\n") +
            mark_remedy);
}

TEST_CASE("misspelt words in marks") {
  CHECK(mark_fault("  a rock wen x else open") ==
        "3:10 crowded-line\n"
        "  'wen' follows a mark that is already complete\n"
        "  [wen] the line's end is expected here\n"
        "  > Perhaps 'when' is meant.\n");
  CHECK(mark_fault("  k outlte kiln") ==
        "3:5 misspelt-word\n"
        "  'outlte' is not understood here\n"
        "  [outlte] this may be a misspelt word\n"
        "  > Perhaps 'outlet' is meant.\n");
}

TEST_CASE("two marks on a line") {
  CHECK(mark_fault("  X rock  _ open") ==
        "3:11 crowded-line\n"
        "  '_' follows a mark that is already complete\n"
        "  [_] the line's end is expected here\n"
        "  > Begin each mark on a line of its own.\n");
}

TEST_CASE("a mark of several characters") {
  CHECK(mark_fault("  XX rock") ==
        "3:3 long-mark\n"
        "  'XX' is more than one character\n"
        "  [XX] a mark is a single character\n"
        "  > Begin the line with one character and a blank.\n");
  CHECK(mark_fault("  e\xcc\x81 rock") ==
        "3:3 long-mark\n"
        "  'eU+0301' is more than one character\n"
        "  [e\xcc\x81] a mark is a single character\n"
        "  > Begin the line with one character and a blank.\n");
}

TEST_CASE("characters that cannot be marks") {
  auto const refused = [](std::string const& glyph, std::string const& reason) {
    CHECK(
        mark_fault("  " + glyph + " rock") ==
        "3:3 unfit-mark\n  A character that " + reason + " cannot be a mark\n  [" + glyph +
            "] this character " + reason +
            "\n  > Choose a visible character that is one cell wide, so that drawings line up.\n");
  };
  refused("|", "has a meaning of its own in the language");
  refused("\"", "has a meaning of its own in the language");
  refused("{", "has a meaning of its own in the language");
  refused("\xe5\xad\x97", "is two cells wide");
  refused("\xf0\x9f\x90\x84", "is two cells wide");
  refused("\xcc\x81", "joins the character before it");
  refused("\xe2\x80\x8b", "is not visible");
  refused("\xc2\xa0", "is not visible");
  refused("\xe2\x80\x8d", "is not visible");
  refused("\xee\x80\x80", "is not visible");
}

// ---- junctions ----

TEST_CASE("a junction with its title, surroundings and levels") {
  CHECK(declaration_of("junction side \"the kiln turn\" {\n  outside open\n"
                       "  level 0 { |XX|\n            |i#| }\n  level 2..6 {\n    |..|  # all "
                       "alike\n  }\n}\n") ==
        "junction side title:\"the kiln turn\" outside:open[0.._[|XX|; |i#|]; 2..6[|..|]]");
  CHECK(declaration_of("junction j { level 0 { || } level 1 { } }") ==
        "junction j title:_ outside:_[0.._[||]; 1.._[]]");
}

TEST_CASE("spans of levels and rows") {
  std::string const text = "leat 1\njunction j {\n  level 2..6 { |ab| }\n}\n# end\n";
  auto const document = document_of(text);
  auto const& junction = std::get<leat::syntax::JunctionDeclaration>(document.declarations.at(0));
  auto const at = [&](leat::source::Span span) {
    return text.substr(span.begin, span.end - span.begin);
  };
  CHECK(at(junction.levels.at(0).span) == "level 2..6");
  CHECK(at(junction.levels.at(0).rows.at(0).span) == "ab");
  CHECK(at(junction.span) == "junction j {\n  level 2..6 { |ab| }\n}");
}

TEST_CASE("a row without its closing bar") {
  CHECK(row_fault("    |XX\n    |XX|") ==
        "4:8 open-row\n"
        "  A row has no closing bar\n"
        "  [] a closing '|' is missing here\n"
        "  > Draw each row between two bars on one line: |....|\n");
}

TEST_CASE("a row without its opening bar") {
  CHECK(row_fault("    XX|\n    |XX|") ==
        "4:5 unknown-entry\n"
        "  'XX' does not begin a row\n"
        "  [XX] a row such as |....| or '}' is expected here\n"
        "  > Draw each row between two bars on one line: |....|\n");
}

TEST_CASE("a tab in a row, and text after it") {
  CHECK(row_fault("    |X\tX|\n    |XX| XX") ==
        "4:7 tab-in-row\n"
        "  A row holds a tab\n"
        "  [\t] a tab stands here\n"
        "  > Draw each cell with one mark; a tab has no width of its own.\n"
        "5:10 text-after-row\n"
        "  Something follows a row on its line\n"
        "  [XX] the line's end is expected here\n"
        "  > Draw one row a line; a remark after it begins with '#'.\n");
}

TEST_CASE("a level without a number, and a misspelt one") {
  CHECK(reports_of("leat 1\njunction j {\n  level { |X| }\n  levl 1 { |X| }\n}\n") ==
        "3:9 out-of-place\n"
        "  '{' stands where a level's number is expected in the level\n"
        "  [{] a level's number is expected here\n"
        "  > A level is written: level 0 { |....| }, or level 2..6 { |....| } to draw it on each\n"
        "4:3 unknown-entry\n"
        "  'levl' does not begin a level\n"
        "  [levl] 'level', 'outside', 'number' or '}' is expected here\n"
        "  > Perhaps 'level' is meant.\n");
}

TEST_CASE("surroundings that are none, or are said twice") {
  CHECK(reports_of("leat 1\njunction j {\n  outside air\n}\njunction k {\n outside open\n outside "
                   "rock\n}\n") ==
        "3:11 out-of-place\n"
        "  'air' stands where 'open' or 'rock' is expected in the line of the surroundings\n"
        "  [air] 'open' or 'rock' is expected here\n"
        "  > A line of the surroundings is written: outside open, or outside rock\n"
        "7:10 outside-twice\n"
        "  A junction says twice what is outside it\n"
        "  [rock] said again here\n"
        "  6:10 [open] said first here\n"
        "  > Keep one of the two lines.\n");
}
