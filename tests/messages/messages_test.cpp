#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "lang/cli/files.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/lower/lower.hpp"
#include "tests/support/catch.hpp"

// Whole messages. Each folder beside this file holds a design with one fault, `design.leat`, the
// files that it includes, and what is said about it, `expected.txt`: a plain dump of the reports,
// not a rendering. With
// LEAT_APPROVE=1 in the environment the dumps are written anew instead of compared; read the
// difference before keeping it. A folder is named after the report it is about, and after a dot the
// variant.
namespace {

namespace fs = std::filesystem;
using namespace leat;

fs::path const folder = fs::path(LEAT_ROOT) / "tests" / "messages";

std::string nested_loops(std::size_t depth) {
  std::string text;
  for (std::size_t i = 0; i < depth; ++i) text += "  for lane in 0..1 {\n";
  return text + std::string(depth, '}') + "\n";
}

// Texts that are too large to be kept.
// Each works placed in the next one.
std::string nested_works(int levels) {
  std::string text =
      "leat 1\nmarks { w water\n _ open\n i inlet millhouse\n k outlet kiln }\n"
      "junction level0 { level 0 { |wi____k| } level 1 { |_______| } }\n";
  for (int level = 1; level <= levels; ++level)
    text += "works level" + std::to_string(level) + " { place level" + std::to_string(level - 1) +
            " as inner at 0 0 0 }\n";
  return text;
}

std::map<std::string, std::string> const& made_texts() {
  static std::map<std::string, std::string> const texts{
      {"text-too-large", "leat 1\n" + std::string(std::size_t{100} << 20, '#')},
      {"nested-too-deep",
       "leat 1\nsignals {\n  lever divert\n  wire deep = " + std::string(10000, '(') + "divert" +
           std::string(10000, ')') + "\n}\n"},
      {"nested-too-deep.number",
       "leat 1\nnumber deep = " + std::string(10000, '(') + "1" + std::string(10000, ')') + "\n"},
      {"nested-too-deep.repetition", "leat 1\nsignals {\n" + nested_loops(10000) + "}\n"},
      {"nested-too-deep.works", nested_works(60)},
  };
  return texts;
}

std::string content_of(fs::path const& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream content;
  content << file.rdbuf();
  return content.str();
}

// A design is read in its folder, so that what it includes is found there and shown without it.
class Standing {
 public:
  explicit Standing(std::string const& name) : before_(fs::current_path()) {
    fs::current_path(folder / name);
  }
  ~Standing() { fs::current_path(before_); }
  Standing(Standing const&) = delete;
  Standing& operator=(Standing const&) = delete;

 private:
  fs::path before_;
};

std::string text_for(std::string const& name) {
  auto const made = made_texts().find(name);
  return made != made_texts().end() ? made->second : content_of(folder / name / "design.leat");
}

std::vector<std::string> fault_folders() {
  std::vector<std::string> names;
  for (auto const& entry : fs::directory_iterator(folder)) {
    if (entry.is_directory()) names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

std::string line_of(source::SourceText const& source, diagnostics::Label const& label) {
  auto const from = source.position(label.span.begin), to = source.position(label.span.end);
  auto line = fmt::format("{}:{}:{}", source.name(from.file), from.line, from.column);
  if (to.line != from.line)
    line += fmt::format(" to {}:{}", to.line, to.column);
  else
    line += fmt::format(" to {}", to.column);
  if (label.place)
    line += fmt::format(" (cell {} {} {})", label.place->x, label.place->y, label.place->z);
  return fmt::format("  {} {}\n", line, label.text);
}

struct Read {
  source::SourceText source;
  std::vector<diagnostics::Diagnostic> reports;
};

Read read(std::string const& name) {
  Standing const in_folder(name);
  Read read{{"design.leat", text_for(name)}, {}};
  diagnostics::Sink sink;
  cli::Disk disk;
  auto const junctions = lower::read_designs(read.source, disk, sink);
  REQUIRE(junctions.empty());
  read.reports = sink.sorted();
  return read;
}

std::string dump_of(std::string const& name) {
  std::string dump;
  auto const [source, reports] = read(name);
  for (auto const& report : reports) {
    dump +=
        fmt::format("{}: {}\n{}", report.name, report.headline, line_of(source, report.primary));
    for (auto const& other : report.others) dump += line_of(source, other);
    if (!report.remedy.empty()) dump += fmt::format("  > {}\n", report.remedy);
  }
  return dump;
}

bool is_approving() {
  auto const* wish = std::getenv("LEAT_APPROVE");
  return wish != nullptr && std::string(wish) == "1";
}

std::string row_of(std::string const& name) { return name.substr(0, name.find('.')); }

}  // namespace

TEST_CASE("each fault is reported as approved") {
  for (auto const& name : fault_folders()) {
    DYNAMIC_SECTION(name) {
      auto const dump = dump_of(name);
      if (is_approving()) std::ofstream(folder / name / "expected.txt", std::ios::binary) << dump;
      CHECK(dump == content_of(folder / name / "expected.txt"));
    }
  }
}

TEST_CASE("each fault folder is about its own fault, reported first and once") {
  for (auto const& name : fault_folders()) {
    DYNAMIC_SECTION(name) {
      auto const reports = read(name).reports;
      REQUIRE(!reports.empty());
      CHECK(reports.front().name == row_of(name));
      CHECK(reports.size() == 1);
    }
  }
}

TEST_CASE("each row of the catalogue has a fault folder") {
  auto const names = fault_folders();
  for (auto const& row : diagnostics::catalogue) {
    DYNAMIC_SECTION(row.name) {
      CHECK(std::count(names.begin(), names.end(), std::string(row.name)) == 1);
    }
  }
}

TEST_CASE("each message stands alone and says what to do") {
  for (auto const& name : fault_folders()) {
    DYNAMIC_SECTION(name) {
      for (auto const& report : read(name).reports) {
        CHECK(!report.headline.empty());
        CHECK(!report.primary.text.empty());
        CHECK(!report.remedy.empty());
        CHECK(report.headline.find_first_of("\n\t") == std::string::npos);
        CHECK(report.headline.back() != '.');
        CHECK(report.headline.size() < 160);
      }
    }
  }
}
