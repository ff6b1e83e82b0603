#include <fmt/format.h>

#include <string>
#include <vector>

#include "lang/check/meaning.hpp"
#include "lang/lower/including.hpp"
#include "lang/lower/lower.hpp"
#include "tests/lang/lower/shelf.hpp"
#include "tests/support/catch.hpp"

// What the files of one design share, and what is each file's own.
namespace {

using namespace leat;
using Texts = std::vector<std::string>;
using Files = std::map<std::string, std::string>;

// A sound file with one junction, whose glyphs can be chosen: the gate, and the port in the west.
struct Parts {
  std::string junction = "turn";
  std::string signals = "  lever divert\n";
  std::string gate = "a rock when divert else open";
  std::string west = "i inlet millhouse";
  std::string more = {};

  std::string text() const {
    return fmt::format(
        "leat 1\nsignals {{\n{}}}\nmarks {{\n  X rock\n  _ open\n  w water\n  {}\n  {}\n"
        "  k outlet kiln\n}}\njunction {} {{\n  level 0 {{\n    |w{}_{}__k|\n    |XXXXXXX|\n"
        "  }}\n  level 1 {{\n    |_______|\n    |XXXXXXX|\n  }}\n}}\n{}",
        signals, gate, west, junction, west.substr(0, 1), gate.substr(0, 1), more);
  }
};

struct Read {
  source::SourceText text;
  diagnostics::Sink sink;
  std::vector<lower::Junction> junctions;

  Read(std::string main, Files files) : text("yard.leat", std::move(main)) {
    lower::Shelf shelf(std::move(files));
    junctions = lower::read_designs(text, shelf, sink);
  }
  std::string place(source::Span span) const {
    auto const at = text.position(span.begin);
    return fmt::format("{}:{}:{}", text.name(at.file), at.line, at.column);
  }
  Texts faults() const {
    Texts found;
    for (auto const& report : sink.sorted())
      found.push_back(report.name + " " + place(report.primary.span));
    return found;
  }
};

std::string const include = "include \"fork.leat\"\n";

}  // namespace

TEST_CASE("a glyph means in each file what that file says") {
  Parts fork{"fork"};
  fork.gate = "k outlet mill";
  fork.west = "_ inlet millhouse";
  auto const other =
      "leat 1\nmarks {\n  k rock\n  X water\n  _ inlet millhouse\n  w outlet mill\n}\n"
      "junction fork {\n  level 0 {\n    |_Xkw|\n  }\n}\n";
  Parts main;
  main.more = include;
  Read const read(main.text(), {{"fork.leat", other}});
  CHECK(read.faults() == Texts{});
  REQUIRE(read.junctions.size() == 1);  // what is included is judged by itself
  Read const alone(Parts{}.text(), {});
  auto const& both = read.junctions.front();
  auto const& one = alone.junctions.front();
  REQUIRE(both.design.grid.size() == one.design.grid.size());
  for (model::Cell cell = 0; cell < one.design.grid.size(); ++cell) {
    auto const& fill = both.design.fills[both.design.fill_of[cell]];
    auto const& expected = one.design.fills[one.design.fill_of[cell]];
    CHECK(fill.powered == expected.powered);
    CHECK(fill.unpowered == expected.unpowered);
    CHECK(fill.control.has_value() == expected.control.has_value());
  }
  CHECK(both.design.inlets.front().cells == one.design.inlets.front().cells);
  CHECK(both.design.outlets.front().cells == one.design.outlets.front().cells);
  CHECK(both.map.outlets.front().name == "kiln");
}

TEST_CASE("a port's place in the text is in the file of its junction") {
  Parts main;
  main.more = {};
  auto text = main.text();
  text.insert(7, include);  // before everything else
  Read const read(text, {{"fork.leat", Parts{"fork"}.text()}});
  CHECK(read.faults() == Texts{});
  REQUIRE(read.junctions.size() == 1);
  CHECK(read.place(read.junctions[0].map.inlets[0].span) == "yard.leat:11:11");
  CHECK(read.place(read.junctions[0].map.span_of({0, 0, 0})) == "yard.leat:16:6");
  CHECK(read.place(read.junctions[0].map.signals[0].span) == "fork.leat:3:9");
}

TEST_CASE("an included junction is drawn with its own file's marks") {
  source::SourceText text("yard.leat",
                          Parts{"turn", {}, "a rock", "i inlet millhouse", include}.text());
  lower::Shelf shelf(Files{{"fork.leat",
                            "leat 1\nmarks {\n  a inlet east\n  X water\n  i outlet west\n}\n"
                            "junction fork {\n  level 0 {\n    |aXi|\n  }\n}\n"}});
  diagnostics::Sink sink;
  auto const document = lower::read_with_included(text, shelf, sink);
  auto const meaning = check::understand(document, text, sink);
  REQUIRE(sink.empty());
  REQUIRE(meaning.drawings.size() == 2);
  CHECK(meaning.drawings[0].file == 0);
  CHECK(meaning.drawings[1].file == 1);
  REQUIRE(meaning.ports[1].inlets.size() == 1);
  CHECK(meaning.ports[1].inlets[0]->name.text == "east");
  CHECK(meaning.ports[1].outlets[0]->name.text == "west");
  CHECK(meaning.ports[0].inlets[0]->name.text == "millhouse");
}

TEST_CASE("what two files declare word for word alike is one") {
  std::string const more = "body hopper { footprint 1 height 1 }\nmaterials { grate carries }\n";
  Parts fork{"fork", "  lever divert\n  wire late = divert after 4 ticks\n"};
  fork.more = more + "practice { longest_drop 4 }\n";
  Parts main{"turn", "  wire   late =  divert  after 4 ticks\n  lever divert  # again\n"};
  main.more = include + "body hopper {\n footprint 1\n height 1\n}\nmaterials { grate carries }\n" +
              "practice { longest_drop 4 }\n";
  Read const read(main.text(), {{"fork.leat", fork.text()}});
  CHECK(read.faults() == Texts{});
  REQUIRE(read.junctions.size() == 1);
  CHECK(read.junctions[0].design.circuit.signals.size() == 2);
  CHECK(read.junctions[0].design.profiles.size() == 1);
  CHECK(read.junctions[0].design.practice[model::Rule::longest_drop] == 4);
}

TEST_CASE("what two files declare differently is told with both places") {
  Parts fork{"fork", "  lever divert starts on\n"};
  fork.more = "body hopper { footprint 1 height 1 }\nmaterials { grate carries }\n";
  Parts main;
  main.more = include + "body hopper { height 1 footprint 1 }\nmaterials { grate bears sources }\n";
  Read const read(main.text(), {{"fork.leat", fork.text()}});
  CHECK(read.faults() == Texts{"declared-twice yard.leat:24:6", "declared-twice yard.leat:25:13",
                               "declared-twice fork.leat:3:9"});
  auto const found = read.sink.sorted().back();
  CHECK(found.headline == "Two files declare the signal 'divert' differently");
  REQUIRE(found.others.size() == 1);
  CHECK(read.place(found.others[0].span) == "yard.leat:3:9");
}

TEST_CASE("alike twice in one file is still twice") {
  Parts main{"turn", "  lever divert\n  lever divert\n"};
  Read const read(main.text(), {});
  CHECK(read.faults() == Texts{"declared-twice yard.leat:4:9"});
}

TEST_CASE("two files cannot draw junctions of one name") {
  Parts main;
  main.more = include;
  Read const read(main.text(), {{"fork.leat", Parts{}.text()}});
  CHECK(read.faults() == Texts{"declared-twice fork.leat:13:10"});
}

TEST_CASE("a junction whose name is taken is told of once, whatever speaks of it") {
  Parts main;
  main.more =
      "accept pinned at 1 0 0 because \"seldom\"\nexpect of turn { findings none }\n"
      "expect { millhouse reaches kiln }\n";
  auto text = main.text();
  text.insert(7, include);
  Read const read(text, {{"fork.leat", Parts{}.text()}});
  CHECK(read.faults() == Texts{"declared-twice yard.leat:14:10"});
}

TEST_CASE("practice gathers from all files and may not contradict itself") {
  Parts fork{"fork"};
  fork.more = "practice { longest_drop 5 }\n";
  Parts main;
  main.more = include;
  Read const taken(main.text(), {{"fork.leat", fork.text()}});
  REQUIRE(taken.junctions.size() == 1);
  CHECK(taken.junctions[0].design.practice[model::Rule::longest_drop] == 5);
  main.more += "practice { longest_drop 6 }\n";
  Read const read(main.text(), {{"fork.leat", fork.text()}});
  CHECK(read.faults() == Texts{"repeated-practice yard.leat:24:12"});
  CHECK(read.sink.sorted().front().headline == "Two files set longest_drop differently");
}

TEST_CASE("the marks of a file are judged with that file's junctions") {
  Parts fork{"fork"};
  fork.gate = "a rock\n  z water";
  Parts main;
  main.more = include;
  Read const read(main.text(), {{"fork.leat", fork.text()}});
  CHECK(read.faults() == Texts{"unused-mark fork.leat:10:3"});
  Read const library(main.text(), {{"fork.leat", "leat 1\nmarks {\n  z water\n}\n"}});
  CHECK(library.faults() == Texts{});  // it draws nothing, so nothing is unused
}

TEST_CASE("an acceptance is for the junctions of its file") {
  Parts fork{"fork"};
  fork.more = "accept still-water because \"a pond\"\naccept pinned at 1 0 0 because \"seldom\"\n";
  Parts main;
  main.more = include + "accept still-water because \"another pond\"\n";
  Read const read(main.text(), {{"fork.leat", fork.text()}});
  CHECK(read.faults() == Texts{});
  REQUIRE(read.junctions.size() == 1);
  REQUIRE(read.junctions[0].map.acceptances.size() == 1);
  CHECK(read.junctions[0].map.acceptances[0].reason == "another pond");
}

TEST_CASE("what is only included cannot be spoken of") {
  Parts main;
  main.more = include +
              "accept pinned at fork 1 0 0 because \"seldom\"\nexpect of fork { findings none }\n";
  Read const read(main.text(), {{"fork.leat", Parts{"fork"}.text()}});
  CHECK(read.faults() ==
        Texts{"drawn-elsewhere yard.leat:24:18", "drawn-elsewhere yard.leat:25:11"});
}

TEST_CASE("names in an included file's own acceptances are looked for in that file") {
  Parts main;
  main.more = include;
  Read const none(main.text(),
                  {{"fork.leat", "leat 1\naccept pinned at 1 0 0 because \"seldom\"\n"}});
  CHECK(none.faults() == Texts{"which-junction fork.leat:2:18"});
}

TEST_CASE("an inlet that only an included file draws is unknown here") {
  Parts fork{"fork"};
  fork.west = "i inlet quarry";
  Parts main;
  main.more = include + "expect { quarry reaches kiln }\n";
  Read const read(main.text(), {{"fork.leat", fork.text()}});
  REQUIRE(read.faults() == Texts{"unknown-inlet yard.leat:24:10"});
  CHECK(read.sink.sorted().front().remedy.find("quarry") == std::string::npos);
}

TEST_CASE("shared signals need not be used or placed here") {
  auto const shared = "leat 1\nsignals {\n  lever divert\n  lever flush\n  plate passed\n}\n";
  Parts main{"turn", {}};
  main.more = include;
  Read const read(main.text(), {{"fork.leat", shared}});
  CHECK(read.faults() == Texts{});
  REQUIRE(read.junctions.size() == 1);
  // `divert` switches the gate, so it is judged here as one's own.
  CHECK(read.junctions[0].design.used_elsewhere == std::vector<model::SignalId>{1, 2});
  Parts own{"turn", "  lever divert\n  plate passed\n"};
  CHECK(Read(own.text(), {}).faults() == Texts{"plate-nowhere yard.leat:4:3"});
}

TEST_CASE("a file that only includes has nothing to judge") {
  Read const read("leat 1\n" + include, {{"fork.leat", Parts{"fork"}.text()}});
  CHECK(read.faults() == Texts{"no-junction yard.leat:1:6"});
}

TEST_CASE("nothing is said of what is absent while an included file is not understood") {
  Parts main{"turn", {}};
  main.more = include;
  Read const missing(main.text(), {});
  CHECK(missing.faults() == Texts{"include-unread yard.leat:22:1"});
  Read const faulty(main.text(), {{"fork.leat", "leat 1\nsignals {\n  levr divert\n}\n"}});
  CHECK(faulty.faults() == Texts{"unknown-entry fork.leat:3:3"});
}

TEST_CASE("a text that stands alone can include nothing") {
  Parts main;
  main.more = include;
  diagnostics::Sink sink;
  CHECK(lower::read_designs({"yard.leat", main.text()}, sink).empty());
  REQUIRE(sink.sorted().size() == 1);
  CHECK(sink.sorted().front().name == "include-unread");
}

namespace {

// A channel of one cell, with its own glyphs: `a` is its inlet, `X` its source, `k` its gate.
std::string const channel =
    "leat 1\nsignals {\n  lever divert\n  lever flush\n}\nmarks {\n  a inlet east\n  X water\n"
    "  k rock when divert else open\n  i outlet west\n}\n"
    "junction channel \"the channel\" {\n  level 0 {\n    |Xaki|\n  }\n}\n";

}  // namespace

TEST_CASE("a works places what another file draws, with that file's marks") {
  Parts main;
  main.more =
      "include \"channel.leat\"\nworks yard {\n  place turn as first at 0 0 0\n"
      "  place channel as second at 0 4 0\n  join first.kiln -> second.east\n}\n"
      "expect of yard { first.millhouse reaches second.west when not divert }\n";
  Read const read(main.text(), {{"channel.leat", channel}});
  CHECK(read.faults() == Texts{});
  REQUIRE(read.junctions.size() == 2);
  auto const& design = read.junctions[1].design;
  auto const& map = read.junctions[1].map;
  CHECK(map.junction.name == "yard");
  auto const fill = [&](model::Place at) {
    return design.fills[design.fill_of[design.grid.cell(at)]];
  };
  CHECK(fill({0, 4, 0}).powered == model::material::water);  // the channel's X
  CHECK(fill({0, 1, 0}).powered == model::material::rock);   // the turn's X
  CHECK(fill({2, 4, 0}).control.has_value());                // the channel's k
  CHECK(!fill({6, 0, 0}).control.has_value());               // the turn's k
  CHECK(read.place(map.span_of({2, 4, 0})) == "channel.leat:14:8");
  CHECK(read.place(map.span_of({0, 1, 0})) == "yard.leat:16:6");
  CHECK(design.expectations.size() == 1);
  // The turn by itself follows `divert`; `flush` switches nothing, but it is the channel's file that
  // declares it.
  REQUIRE(map.signals.size() == 2);
  CHECK(design.used_elsewhere == std::vector<model::SignalId>{0, 1});
}

TEST_CASE("a file may hold nothing but works of what it includes") {
  auto const yard =
      "leat 1\ninclude \"channel.leat\"\nworks yard {\n"
      "  place channel as only at 0 0 0\n}\n";
  Read const read(yard, {{"channel.leat", channel}});
  CHECK(read.faults() == Texts{});
  REQUIRE(read.junctions.size() == 1);
  CHECK(read.junctions[0].map.junction.name == "yard");
  CHECK(read.junctions[0].map.inlets[0].name == "only.east");
}

TEST_CASE("works that are only included are placed, not judged") {
  auto const yard =
      "leat 1\ninclude \"channel.leat\"\nworks yard {\n"
      "  place channel as only at 0 0 0\n}\nexpect { findings none }\n";
  auto const main =
      "leat 1\ninclude \"yard.leat\"\nworks plant {\n  place yard as north at 0 0 0\n"
      "  place yard as south at 0 3 0\n}\n";
  source::SourceText text("plant.leat", main);
  lower::Shelf shelf(Files{{"yard.leat", yard}, {"channel.leat", channel}});
  diagnostics::Sink sink;
  auto const junctions = lower::read_designs(text, shelf, sink);
  REQUIRE(sink.empty());
  REQUIRE(junctions.size() == 1);
  CHECK(junctions[0].map.junction.name == "plant");
  CHECK(junctions[0].map.inlets[1].name == "south.only.east");
  CHECK(junctions[0].design.expectations.empty());
}

TEST_CASE("an included works cannot be spoken of, and its name is taken") {
  auto const yard =
      "leat 1\ninclude \"channel.leat\"\nworks yard {\n"
      "  place channel as only at 0 0 0\n}\n";
  Parts main;
  main.more = "include \"other.leat\"\nexpect of yard { findings none }\n";
  Read const spoken(main.text(), {{"other.leat", yard}, {"channel.leat", channel}});
  CHECK(spoken.faults() == Texts{"drawn-elsewhere yard.leat:24:11"});
  Parts same{"yard"};
  same.more = "include \"other.leat\"\n";
  Read const taken(same.text(), {{"other.leat", yard}, {"channel.leat", channel}});
  CHECK(taken.faults() == Texts{"declared-twice other.leat:3:7"});
}

TEST_CASE("numbers are one space of names over all files") {
  auto const rows =
      "leat 1\nnumber lanes = 2\nsignals {\n  for lane in 0..lanes - 1 { lever turn[lane] }\n}\n";
  Parts main{"turn", "  for lane in 0..lanes - 1 { lever turn[lane] }\n  wire divert = turn[0]\n"};
  main.more = {};
  auto text = main.text();
  text.insert(7, "include \"rows.leat\"\n");
  Read const read(text, {{"rows.leat", rows}});
  CHECK(read.faults() == Texts{});
  REQUIRE(read.junctions.size() == 1);
  CHECK(read.junctions[0].map.signals.size() == 3);
  text.insert(7, "number lanes = 3\n");
  Read const other(text, {{"rows.leat", rows}});
  auto const faults = other.faults();
  REQUIRE(faults.size() == 1);
  CHECK(faults[0] == "declared-twice rows.leat:2:8");
}
