#pragma once
#include <fmt/format.h>

#include <string>
#include <string_view>
#include <vector>

#include "lang/check/check.hpp"
#include "lang/grammar/parse.hpp"

// What the checks say about a text, for tests: "name line:column" of each report, in the order of
// the text.
namespace leat::check {

inline std::vector<diagnostics::Diagnostic> reports_on(std::string_view text) {
  source::SourceText const source("sample.leat", std::string(text));
  diagnostics::Sink sink;
  auto const document = grammar::parse(source, sink);
  check(document, source, sink);
  return sink.sorted();
}

inline std::vector<std::string> faults_of(std::string_view text) {
  source::SourceText const source("sample.leat", std::string(text));
  std::vector<std::string> faults;
  for (auto const& report : reports_on(text)) {
    auto const at = source.position(report.primary.span.begin);
    faults.push_back(fmt::format("{} {}:{}", report.name, at.line, at.column));
  }
  return faults;
}

// A file that is sound: one lever, one junction of seven by three cells on two levels. Signals,
// marks and declarations can be added; what is added to the marks is drawn nowhere.
struct Sample {
  std::string signals = "  lever divert\n";
  std::string marks = {};
  std::string level_0 = "|wi_a__k|\n    |XXXbXXX|\n    |XXXqXXX|";
  std::string level_1 = "|_______|\n    |XXX_XXX|\n    |XXX_XXX|";
  std::string more = {};

  std::string text() const {
    return "leat 1\nsignals {\n" + signals +
           "}\nmarks {\n  X rock\n  _ open\n  w water\n  a rock when divert else open\n"
           "  b open when divert else rock\n  i inlet millhouse\n  k outlet kiln\n"
           "  q outlet press\n" +
           marks + "}\njunction turn {\n  level 0 {\n    " + level_0 + "\n  }\n  level 1 {\n    " +
           level_1 + "\n  }\n}\n" + more;
  }
};

using Faults = std::vector<std::string>;

// The names alone.
inline Faults names_of_faults(std::string_view text) {
  Faults names;
  for (auto const& report : reports_on(text)) names.push_back(report.name);
  return names;
}

}  // namespace leat::check
