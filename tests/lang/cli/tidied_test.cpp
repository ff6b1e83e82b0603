#include "lang/cli/tidied.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

#include "lang/cli/files.hpp"
#include "lang/grammar/parse.hpp"
#include "tests/lang/grammar/tree_text.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

namespace fs = std::filesystem;

struct Design {
  std::string name, text;
};

std::string text_of(fs::path const& path) {
  std::ifstream in(path);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

std::vector<fs::path> files_in(std::string const& folder, std::string const& extension) {
  std::vector<fs::path> found;
  for (auto const& entry : fs::directory_iterator(std::string(LEAT_ROOT) + "/" + folder))
    if (entry.path().extension() == extension) found.push_back(entry.path());
  std::sort(found.begin(), found.end());
  return found;
}

// The whole designs among the samples of a document.
void add_samples(fs::path const& document, std::vector<Design>& designs) {
  std::istringstream in(text_of(document));
  bool is_in_sample = false;
  for (std::string line; std::getline(in, line);) {
    if (line == "```") is_in_sample = false;
    if (is_in_sample) designs.back().text += line + "\n";
    bool const is_whole = line.starts_with("```leat") && line.find("fragment") == std::string::npos;
    if (!is_whole) continue;
    is_in_sample = true;
    designs.push_back({document.string(), ""});
  }
}

std::vector<Design> const& all_designs() {
  static auto const designs = [] {
    std::vector<Design> all;
    for (auto const& path : files_in("examples", ".leat"))
      all.push_back({path.string(), text_of(path)});
    for (auto const& path : files_in("docs", ".md")) add_samples(path, all);
    return all;
  }();
  return designs;
}

// What a design says and its comments, none where its text has a fault.
std::optional<std::string> said(std::string const& text) {
  source::SourceText const source("test.leat", text);
  diagnostics::Sink sink;
  auto const document = grammar::parse(source, sink);
  if (!sink.empty()) return std::nullopt;
  auto all = tests::tree_text(document);
  for (auto const& comment : document.comments) {
    std::string shown(source.text(comment.span));
    all += shown.substr(0, shown.find_last_not_of(" \t") + 1) + "\n";
  }
  return all;
}

enum class Outcome { tidied, faulty };

// The laws of tidying: the tree and the comments stay, in their order, and there is nothing left to
// tidy. What has no fault is tidied.
Outcome check_laws(Design const& design) {
  CAPTURE(design.name, design.text);
  source::SourceText text(design.name, design.text);
  diagnostics::Sink sink;
  cli::Disk disk;
  auto const once = cli::tidied(text, disk, sink);
  if (!once) {
    CHECK_FALSE(sink.empty());
    return Outcome::faulty;
  }
  CAPTURE(*once);
  CHECK(said(*once) == said(design.text));
  source::SourceText text_again(design.name, *once);
  auto const twice = cli::tidied(text_again, disk, sink);
  REQUIRE(twice);
  CHECK(*twice == *once);
  return Outcome::tidied;
}

class Mutator {
 public:
  explicit Mutator(unsigned seed) : random_(seed) {}

  std::size_t below(std::size_t bound) {
    return std::uniform_int_distribution<std::size_t>(0, bound - 1)(random_);
  }
  // The same design with other gaps: blanks, tabs, empty lines and comments where lines end.
  std::string respaced(std::string const& text) {
    std::string out;
    for (char const letter : text) {
      if (letter == '\n' && below(4) == 0) out += below(2) == 0 ? " \t" : "# r" + number();
      out += letter;
      if (letter != '\n') continue;
      if (below(5) == 0) out += std::string(1 + below(3), '\n');
      if (below(5) == 0) out += std::string(below(9), ' ') + "# remark " + number() + "\n";
      if (below(5) == 0) out += "\t";
    }
    return out;
  }
  // One edit anywhere, for better or worse.
  std::string edited(std::string text) {
    auto const at = below(text.size()), other = below(text.size());
    auto const count = 1 + below(8);
    switch (below(4)) {
      case 0:
        return text.erase(at, count);
      case 1:
        return text.insert(at, text.substr(other, count));
      case 2:
        return text.insert(at, below(2) == 0 ? "\n" : " ");
      default:
        return text.replace(at, count, text.substr(other, count));
    }
  }

 private:
  std::string number() { return std::to_string(below(1000)); }
  std::mt19937 random_;
};

}  // namespace

TEST_CASE("the laws hold for the examples and the samples of the documents") {
  CHECK(all_designs().size() > 60);
  std::size_t tidied = 0;
  for (auto const& design : all_designs()) tidied += check_laws(design) == Outcome::tidied;
  CHECK(tidied > 50);
}

TEST_CASE("the laws hold for designs with other gaps and more comments") {
  Mutator mutator(21);
  for (int turn = 0; turn < 6; ++turn) {
    for (auto const& design : all_designs()) {
      if (design.text.size() > 6000) continue;
      auto const respaced = mutator.respaced(design.text);
      bool const was_sound = check_laws(design) == Outcome::tidied;
      CHECK((check_laws({design.name, respaced}) == Outcome::tidied) == was_sound);
    }
  }
}

TEST_CASE("the laws hold for designs with an edit anywhere") {
  Mutator mutator(22);
  std::size_t tidied = 0;
  for (int turn = 0; turn < 1000; ++turn) {
    auto const& design = all_designs()[mutator.below(all_designs().size())];
    if (design.text.size() > 6000) continue;
    tidied +=
        check_laws({design.name, mutator.edited(mutator.respaced(design.text))}) == Outcome::tidied;
  }
  CHECK(tidied > 200);
}
