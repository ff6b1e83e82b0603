#include "lang/syntax/print.hpp"

#include <functional>
#include <random>

#include "lang/grammar/parse.hpp"
#include "tests/lang/grammar/reading_of.hpp"
#include "tests/lang/grammar/sample.hpp"
#include "tests/lang/grammar/tree_text.hpp"
#include "tests/support/catch.hpp"

using namespace leat::tests;

namespace {

std::string printed(std::string const& text) {
  return leat::syntax::print(document_of(text), leat::source::SourceText("test.leat", text));
}

std::vector<std::string> comments_of(std::string const& text) {
  std::vector<std::string> comments;
  for (auto const& comment : document_of(text).comments) {
    auto shown = text.substr(comment.span.begin, comment.span.end - comment.span.begin);
    shown.erase(shown.find_last_not_of(" \t") + 1);
    comments.push_back(shown);
  }
  return comments;
}

// The laws of printing: the same tree, the same comments in the same order, and nothing left to
// change.
void check_laws(std::string const& text) {
  CAPTURE(text);
  auto const once = printed(text);
  CAPTURE(once);
  CHECK(tree_text(document_of(once)) == tree_text(document_of(text)));
  CHECK(comments_of(once) == comments_of(text));
  CHECK(printed(once) == once);
}

class Maker {
 public:
  explicit Maker(unsigned seed) : random_(seed) {}

  std::size_t below(std::size_t bound) {
    return std::uniform_int_distribution<std::size_t>(0, bound - 1)(random_);
  }
  std::string expression(int depth) {
    static std::vector<std::string> const atoms{"a", "b", "on", "off", "divert"};
    if (depth == 0 || below(4) == 0) return atoms[below(atoms.size())];
    if (below(4) == 0) return "not " + bracketed(depth - 1);
    static std::vector<std::string> const joints{" and ", " or ", " xor "};
    auto text = bracketed(depth - 1);
    for (auto more = 1 + below(2); more > 0; --more)
      text += joints[below(joints.size())] + bracketed(depth - 1);
    return text;
  }
  // Puts comments and line ends into gaps at random: the text stays the same design.
  std::string strewn(std::string const& text) {
    std::string out;
    bool is_comment = false;
    for (char const letter : text) {
      out += letter;
      if (letter == '#') is_comment = true;
      if (letter == '\n') is_comment = false;
      bool const is_gap = letter == '\n' || (letter == '{' && !is_comment);
      if (is_gap && below(4) == 0) out += " # remark " + std::to_string(below(100)) + "\n";
    }
    return out;
  }

 private:
  std::string bracketed(int depth) {
    auto const inner = expression(depth);
    return below(2) == 0 ? "(" + inner + ")" : inner;
  }
  std::mt19937 random_;
};

}  // namespace

TEST_CASE("the sample prints as it is written in the one style") {
  CHECK(printed("leat   1 # e\nsignals{lever a   lever b\n# own\nwire w=a and( b or not(not a))# "
                "behind\n}"
                "marks{X   rock\na rock when a else open}\n"
                "junction j \"t\"{outside open level 0..1{|X|# row\n|a|}\n# between\nlevel 2{|X| "
                "}}#after\n"
                "expect table  i{a bb|route\n1 0|k,q\n- 1|nothing}\n# last") ==
        "leat 1  # e\n"
        "\n"
        "signals {\n"
        "  lever a\n"
        "  lever b\n"
        "  # own\n"
        "  wire  w = a and (b or not not a)  # behind\n"
        "}\n"
        "\n"
        "marks {\n"
        "  X  rock\n"
        "  a  rock when a else open\n"
        "}\n"
        "\n"
        "junction j \"t\" {\n"
        "  outside open\n"
        "  level 0..1 { |X|  # row\n"
        "               |a| }\n"
        "  # between\n"
        "  level 2 { |X| }\n"
        "}  #after\n"
        "\n"
        "expect table i {\n"
        "  a bb | route\n"
        "  1 0  | k, q\n"
        "  - 1  | nothing\n"
        "}\n"
        "# last\n");
}

TEST_CASE("the laws hold for the sample") { check_laws(sample); }

TEST_CASE("the laws hold for odd but sound texts") {
  for (std::string const text :
       {"leat 1", "# only\nleat 1 # behind\n# last", "leat 1 signals{}marks{}practice{}",
        "leat 1\njunction j # a\n \"t\" # b\n { # c\n level 0..3 # d\n { # e\n |x| # f\n # g\n } # "
        "h\n # i\n "
        "level 5 { # j\n } outside rock # k\n } # l",
        "leat 1\njunction j { level 1 # }\n { # }\n } level 2 { |}| # }\n }\n # m\n}",
        "leat 1\naccept pinned # a\n at j 1 2 3 # b\n # c\n because \"x # y\" # d\n# e\naccept "
        "pinned because "
        "\"\\\\\\\"\"",
        "leat 1\nexpect table w from i # a\n { # b\n | route # c\n # d\n | k # e\n | k, q # f\n }",
        "leat 1\nexpect table w from i { # a\n a # b\n | route # c\n - | k }",
        "leat 1\nexpect # a\n { # b\n i reaches k # c\n when a and # d\n # e\n b # f\n }",
        "leat 1\nexpect { # a\n after a, # b\n b: # c\n i deals k, # d\n nothing # e\n "
        "every 2 s # f\n for 4 rounds # g\n # h\n clear # i\n within 2 s # j\n }",
        "leat 1\r\nsignals { # a\r\n lever a # b\r\n}\r\n",
        "leat 1\nmaterials { m carries, # a\n # b\n passes water # c\n }\nbody b { # a\n floats # "
        "b\n }\n"})
    check_laws(text);
}

TEST_CASE("the laws hold for random expressions") {
  Maker maker(5);
  for (int i = 0; i < 300; ++i)
    check_laws("leat 1\nsignals {\n  wire w = " + maker.expression(5) + "\n}\n");
}

TEST_CASE("the laws hold for the sample strewn with comments") {
  Maker maker(9);
  for (int i = 0; i < 100; ++i) check_laws(maker.strewn(sample));
}

TEST_CASE("parentheses are printed where the tree needs them, and nowhere else") {
  auto const again = [](std::string const& text) {
    auto const document = document_of("leat 1\nsignals { wire w = " + text + " }\n");
    auto const& signals =
        std::get<leat::syntax::SignalsDeclaration>(document.declarations.at(0)).signals;
    return leat::syntax::print(*signals.at(0).on);
  };
  CHECK(again("(a and b) or (c)") == "a and b or c");
  CHECK(again("(a or b) and c") == "(a or b) and c");
  CHECK(again("(a and b) and c") == "(a and b) and c");
  CHECK(again("not (not (a))") == "not not a");
  CHECK(again("not (a and b)") == "not (a and b)");
  CHECK(again("(a xor b) or (c xor d) and e") == "a xor b or (c xor d) and e");
}

TEST_CASE("a clause prints in one line") {
  auto const document =
      document_of("leat 1\nexpect { walker   from millhouse reaches kiln\n when a\n or b }\n");
  auto const& clauses =
      std::get<leat::syntax::ExpectDeclaration>(document.declarations.at(0)).clauses;
  CHECK(leat::syntax::print(clauses.at(0)) == "walker from millhouse reaches kiln when a or b");
}

TEST_CASE("clauses of events and of time print in one line each") {
  CHECK(printed("leat 1\nexpect { after a,# x\n b :\n i reaches k\n clear\nwithin 1 tick when a\n"
                " w from i clear within 2 s\n i deals k,\n nothing every 2 s for 1 round\n"
                " after a: i deals q every 3 ticks for 20 rounds }\n") ==
        "leat 1\n"
        "\n"
        "expect {\n"
        "  after a, b: i reaches k  # x\n"
        "  clear within 1 tick when a\n"
        "  w from i clear within 2 s\n"
        "  i deals k, nothing every 2 s for 1 round\n"
        "  after a: i deals q every 3 ticks for 20 rounds\n"
        "}\n");
}

TEST_CASE("numbers, works and includes print in the one style") {
  CHECK(printed("leat 1 include   \"a \\\"b\\\".leat\" number  lanes=8# of them\n"
                "works yard\"the yard\"{outside open# wide\nnumber w=12*( lanes+1 )\n"
                "place turn as first at 0 - 3 (w)with b=c,d=not e turned left where n=(2),m=- 1 "
                "mirrored\n"
                "join first.kiln->second[0].mill taking 9 s inlet mine=first.mill\n"
                "outlet k[lanes-1]=f[2][lanes].o}") ==
        "leat 1\n"
        "\n"
        "include \"a \\\"b\\\".leat\"\n"
        "\n"
        "number lanes = 8  # of them\n"
        "\n"
        "works yard \"the yard\" {\n"
        "  outside open  # wide\n"
        "  number w = 12 * (lanes + 1)\n"
        "  place turn as first at 0 -3 w turned left mirrored where n = 2, m = -1 with b = c, d = "
        "not e\n"
        "  join first.kiln -> second[0].mill taking 9 s\n"
        "  inlet  mine         = first.mill\n"
        "  outlet k[lanes - 1] = f[2][lanes].o\n"
        "}\n");
}

TEST_CASE("numbers of a file stand together") {
  CHECK(printed("leat 1 number a=1 number b=2\ninclude \"x\" include \"y\" number c=3\nmarks{}") ==
        "leat 1\n"
        "\n"
        "number a = 1\n"
        "number b = 2\n"
        "\n"
        "include \"x\"\n"
        "include \"y\"\n"
        "\n"
        "number c = 3\n"
        "\n"
        "marks { }\n");
}

TEST_CASE("loops print nested, with their comments") {
  CHECK(printed("leat 1 signals{lever a for i in 0..2*n-1{# each\nlever b[i]# one\n"
                "never b[i]and a for j in i..(2){wire c[i][j]=a\n# last in the inner\n}# behind\n"
                "for k in 0..0{# empty\n}\n# last in the outer\n}never a lever d}") ==
        "leat 1\n"
        "\n"
        "signals {\n"
        "  lever a\n"
        "  for i in 0..2 * n - 1 {  # each\n"
        "    lever b[i]  # one\n"
        "    never b[i] and a\n"
        "    for j in i..2 {\n"
        "      wire c[i][j] = a\n"
        "      # last in the inner\n"
        "    }  # behind\n"
        "    for k in 0..0 {  # empty\n"
        "    }\n"
        "    # last in the outer\n"
        "  }\n"
        "  never a\n"
        "  lever d\n"
        "}\n");
}

TEST_CASE("levels and numbers of a junction keep their order") {
  CHECK(printed("leat 1 junction j{number a=1 level 0{|X|}number b=a outside open level a..(b+2)"
                "{|X|} number c=3}") ==
        "leat 1\n"
        "\n"
        "junction j {\n"
        "  number a = 1\n"
        "  level 0          { |X| }\n"
        "  number b = a\n"
        "  outside open\n"
        "  level a..(b + 2) { |X| }\n"
        "  number c = 3\n"
        "}\n");
}

TEST_CASE("a table's columns are as wide as its headings with their brackets") {
  CHECK(printed("leat 1\nexpect table first.i of y { a[0] b.c[n-1] | route\n 1 0 | k[1].o\n }") ==
        "leat 1\n"
        "\n"
        "expect table first.i of y {\n"
        "  a[0] b.c[n - 1] | route\n"
        "  1    0          | k[1].o\n"
        "}\n");
}

TEST_CASE("the laws hold for works and loops with comments in odd places") {
  for (std::string const text :
       {"leat 1\nworks y # a\n \"t\" # b\n { # c\n place a # d\n as b # e\n at 0 0 0 # f\n with c "
        "= "
        "d, # g\n e = f # h\n # i\n for k # j\n in 0..1 # k\n { # l\n } # m\n outside open # n\n } "
        "# o",
        "leat 1\nexpect { for i in 0..1 { # a\n for j in 0..1 { # b\n x reaches y # c\n # d\n } # "
        "e\n "
        "} # f\n a never split # g\n for k in 1..0 { } # h\n }",
        "leat 1\nsignals { for a in 0..1 { for b in 0..1 { for c in 0..1 { } never x } lever y } "
        "never "
        "z }",
        "leat 1\nnumber n = 2 # b\n + 3 # c\n# d\ninclude \"x # y\" # f\n# g\nnumber m = n # h\n# "
        "i\nnumber o = 1"})
    check_laws(text);
}

TEST_CASE("the laws hold for random numbers") {
  std::mt19937 random(3);
  auto const below = [&](int bound) {
    return std::uniform_int_distribution<>(0, bound - 1)(random);
  };
  std::function<std::string(int)> const number = [&](int depth) -> std::string {
    static std::vector<std::string> const joints{" + ", " - ", " * ", " / ", " mod ", " ^ "};
    if (depth == 0 || below(5) == 0) return below(2) == 0 ? std::to_string(below(20)) : "lane";
    auto const inner = [&] {
      auto const text = number(depth - 1);
      return below(2) == 0 ? "(" + text + ")" : text;
    };
    if (below(5) == 0) return "-" + inner();
    return inner() + joints[static_cast<std::size_t>(below(6))] + inner();
  };
  for (int i = 0; i < 300; ++i)
    check_laws("leat 1\nnumber n = " + number(4) + "\njunction j { level (" + number(3) + ")..(" +
               number(1) + ") { |x| } }\nsignals { lever a[" + number(2) + "] }\n");
}
