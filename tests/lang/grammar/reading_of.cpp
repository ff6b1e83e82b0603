#include "tests/lang/grammar/reading_of.hpp"

#include "lang/grammar/parse.hpp"
#include "tests/lang/grammar/tree_text.hpp"
#include "tests/support/catch.hpp"

namespace leat::tests {

namespace {

std::string place(source::SourceText const& source, source::Span span) {
  auto const position = source.position(span.begin);
  return std::to_string(position.line) + ":" + std::to_string(position.column);
}

}  // namespace

syntax::Document document_of(std::string const& text) {
  diagnostics::Sink sink;
  auto document = grammar::parse(source::SourceText("test.leat", text), sink);
  INFO(reports_of(text));
  CHECK(sink.empty());
  return document;
}

std::string declaration_of(std::string const& text) {
  auto const document = document_of("leat 1\n" + text);
  REQUIRE(document.declarations.size() == 1);
  return tree_text(document.declarations.front());
}

std::string expression_of(std::string const& text) {
  auto const document = document_of("leat 1 signals { wire w = " + text + "\n}");
  REQUIRE(document.declarations.size() == 1);
  auto const& signals = std::get<syntax::SignalsDeclaration>(document.declarations.front()).signals;
  REQUIRE(signals.size() == 1);
  return tree_text(*signals.front().on);
}

std::string reports_of(std::string const& text) {
  diagnostics::Sink sink;
  source::SourceText const source("test.leat", text);
  grammar::parse(source, sink);
  std::string shown;
  for (auto const& report : sink.sorted()) {
    shown +=
        place(source, report.primary.span) + " " + report.name + "\n  " + report.headline + "\n";
    shown +=
        "  [" + std::string(source.text(report.primary.span)) + "] " + report.primary.text + "\n";
    for (auto const& other : report.others)
      shown += "  " + place(source, other.span) + " [" + std::string(source.text(other.span)) +
               "] " + other.text + "\n";
    if (!report.remedy.empty()) shown += "  > " + report.remedy + "\n";
  }
  return shown;
}

std::vector<std::string> faults_of(std::string const& text) {
  diagnostics::Sink sink;
  source::SourceText const source("test.leat", text);
  grammar::parse(source, sink);
  std::vector<std::string> faults;
  for (auto const& report : sink.sorted())
    faults.push_back(place(source, report.primary.span) + " " + report.name);
  return faults;
}

}  // namespace leat::tests
