#include "lang/render/waves.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "tests/support/catch.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using namespace leat::render;
using logic::Deed;
using model::SignalKind;

namespace {

// divert, ring (a pulse of 2), late (divert 400 ticks later), parked (set by ring).
struct Yard {
  Yard() {
    wired::Circuit circuit;
    auto const divert = circuit.input();
    auto const ring = circuit.input(SignalKind::button, 2);
    circuit.delay(circuit.of(divert), 400);
    circuit.latch(circuit.of(ring), circuit.of(2));
    design.circuit = circuit.built();
    for (auto const* name : {"divert", "ring", "late", "parked"}) map.signals.push_back({name, {}});
  }
  WavesSheet sheet(std::vector<Deed> deeds, logic::RunLength length = {0, 2000}) const {
    auto recording = logic::record(design.circuit, deeds, length);
    return {{design, map, text}, {0, 1, 2, 3}, std::move(deeds), std::move(recording)};
  }
  model::Design design;
  source::SourceMap map;
  source::SourceText text{"yard.leat", "leat 1\n"};
};

std::vector<std::string> lines_of(std::string const& text) {
  std::vector<std::string> lines(1);
  for (char c : text) {
    if (c == '\n') {
      lines.emplace_back();
    } else {
      lines.back() += c;
    }
  }
  return lines;
}

}  // namespace

TEST_CASE("a pulse of two ticks and a delay of four hundred in one picture") {
  Yard const yard;
  CHECK(waves_text(yard.sheet({{1, 0}, {4, 1}}), 80, {false, true}) ==
        "signals over 402 ticks (20.1 s)\n"
        "    tick 1  divert on\n"
        "    tick 4  ring pressed for 2 ticks\n"
        "\n"
        "    tick     0 1  4 6         ~        401\n"
        "    divert   ..###############~############\n"
        "    ring     .....##..........~............\n"
        "    late     .................~........####\n"
        "    parked   .....############~########....\n"
        "\n"
        "quiet from tick 401 on\n"
        "\n"
        "signs\n"
        "    #    on      .    off      ~    some ticks left out\n");
}

TEST_CASE("the picture keeps to the columns, in bands") {
  Yard const yard;
  std::vector<Deed> deeds;
  for (int tick = 1; tick < 300; tick += 7) deeds.push_back({tick, 0});
  for (std::size_t columns : {40u, 80u, 200u}) {
    auto const lines = lines_of(waves_text(yard.sheet(deeds), columns, {false, true}));
    std::size_t widest = 0;
    for (auto const& line : lines) {
      bool const is_picture =
          line.rfind("    divert", 0) == 0 || line.rfind("    tick     ", 0) == 0;
      if (is_picture) widest = std::max(widest, line.size());
    }
    CHECK(widest <= columns);
    CHECK(widest + 12 > columns);
  }
}

TEST_CASE("plain characters only where asked for, and colours only where asked for") {
  Yard const yard;
  auto const sheet = yard.sheet({{1, 0}});
  for (char c : waves_text(sheet, 80, {false, true})) CHECK(static_cast<unsigned char>(c) < 0x80);
  CHECK(waves_text(sheet, 80, {false, false}).find('\x1b') == std::string::npos);
  CHECK(waves_text(sheet, 80, {true, false}).find('\x1b') != std::string::npos);
}

TEST_CASE("how a run ends is told") {
  Yard const yard;
  CHECK(waves_text(yard.sheet({{1, 0}}), 80, {}).find("\nquiet from tick 401 on\n") !=
        std::string::npos);
  CHECK(waves_text(yard.sheet({}), 80, {}).find("\nquiet throughout\n") != std::string::npos);
  CHECK(waves_text(yard.sheet({{1, 0}}, {50, 50}), 80, {})
            .find("\nnot over after 50 ticks (2.5 s): --for shows more\n") != std::string::npos);
  auto sheet = yard.sheet({{1, 0}});
  sheet.recording.unquiet = {7};
  CHECK(waves_text(sheet, 80, {}).find("did not get quiet within tick 7") != std::string::npos);
}

TEST_CASE("a dump by the letter of the standard") {
  Yard const yard;
  CHECK(waves_vcd(yard.sheet({{1, 0}, {4, 1}}, {8, 8})) ==
        "$version leat $end\n$timescale 10 ms $end\n$scope module signals $end\n"
        "$var wire 1 ! divert $end\n$var wire 1 \" ring $end\n$var wire 1 # late $end\n"
        "$var wire 1 $ parked $end\n$upscope $end\n$enddefinitions $end\n"
        "#0\n$dumpvars\n0!\n0\"\n0#\n0$\n$end\n"
        "#5\n1!\n#20\n1\"\n1$\n#30\n0\"\n#40\n");
}

TEST_CASE("a dump's unit holds a whole number in each tick where one can") {
  Yard yard;
  auto const unit_at = [&](int ticks_per_second) {
    yard.design.practice.set(model::Rule::ticks_per_second, ticks_per_second);
    auto const dump = waves_vcd(yard.sheet({{1, 0}}, {8, 8}));
    auto const begin = dump.find("$timescale ") + 11;
    auto const first = dump.find("\n#", dump.find("$dumpvars")) + 1;
    return dump.substr(begin, dump.find(" $end", begin) - begin) + " " +
           dump.substr(first, dump.find('\n', first) - first);
  };
  CHECK(unit_at(1) == "1 s #1");
  CHECK(unit_at(10) == "100 ms #1");
  CHECK(unit_at(20) == "10 ms #5");
  CHECK(unit_at(8) == "1 ms #125");
  CHECK(unit_at(1000) == "1 ms #1");
  CHECK(unit_at(64) == "1 us #15625");
  CHECK(unit_at(3) == "1 ns #333333333");
}

TEST_CASE("names that are not ASCII become identifiers that no other name becomes") {
  Yard yard;
  yard.map.signals[0].name = "größe";
  yard.map.signals[1].name = "übung";
  yard.map.signals[2].name = "_übung";
  auto const dump = waves_vcd(yard.sheet({}));
  CHECK(dump.find(" gr$f6$$df$e $end") != std::string::npos);
  CHECK(dump.find(" _$$fc$bung $end") != std::string::npos);
  CHECK(dump.find(" _$fc$bung $end") != std::string::npos);
}

TEST_CASE("codes of many signals differ") {
  Yard yard;
  wired::Circuit circuit;
  yard.map.signals.clear();
  std::vector<model::SignalId> shown;
  for (int i = 0; i < 9000; ++i) {
    shown.push_back(circuit.input());
    auto name = std::to_string(i);
    yard.map.signals.push_back({name.insert(0, 1, 's'), {}});
  }
  yard.design.circuit = circuit.built();
  auto recording = logic::record(yard.design.circuit, {}, {0, 1});
  auto const dump = waves_vcd({{yard.design, yard.map, yard.text}, shown, {}, recording});
  std::vector<std::string> codes;
  for (auto const& line : lines_of(dump)) {
    if (line.rfind("$var wire 1 ", 0) == 0)
      codes.push_back(line.substr(12, line.find(' ', 12) - 12));
  }
  CHECK(codes.size() == 9000);
  std::sort(codes.begin(), codes.end());
  CHECK(std::adjacent_find(codes.begin(), codes.end()) == codes.end());
  CHECK(codes.front() == "!");
}

TEST_CASE("the document tells deeds, values and changes") {
  Yard const yard;
  auto const document = nlohmann::json::parse(waves_document(yard.sheet({{1, 0}, {4, 1}})));
  CHECK(document["format"] == "leat-waves");
  CHECK(document["last_tick"] == 402);
  CHECK(document["is_over"] == true);
  CHECK(document["deeds"][1] == nlohmann::json({{"tick", 4}, {"signal", "ring"}, {"on", true}}));
  CHECK(document["signals"][1] ==
        nlohmann::json(
            {{"name", "ring"}, {"kind", "button"}, {"starts_on", false}, {"changes", {4, 6}}}));
  CHECK(document["signals"][3]["changes"] == nlohmann::json({4, 401}));
}
