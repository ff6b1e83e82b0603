#include <fmt/format.h>

#include "lang/render/check_report.hpp"
#include "lang/render/condition.hpp"
#include "lang/render/diagnostic_text.hpp"
#include "lang/render/example.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/table_lines.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using verdicts::JudgedExpectation;
using verdicts::Truthfulness;

std::string route_words(Subject const& subject, tables::Route const& route) {
  std::string words;
  if (route.outlets.empty()) {
    words = "reaches nothing";
  } else {
    words = "reaches " + listed(names_of(subject.map.outlets, route.outlets), "or");
  }
  words += fmt::format(" ({})", word_of(route.verdict));
  if (!route.trapped.empty()) {
    words += fmt::format(", can be trapped at {}",
                         place_code(subject.design.grid.place(route.trapped.front())));
    if (route.trapped.size() > 1) {
      words += fmt::format(" and {}", counted(route.trapped.size() - 1, "more cell"));
    }
  }
  if (route.spills) words += ", can leave the drawing";
  if (route.is_unsure) words += ", hangs on an unsure move";
  return words;
}

std::string what_happens(JudgedJunction const& judged, JudgedExpectation const& expectation) {
  if (!expectation.inlet || !expectation.profile) return {};
  auto const& judgement = judged.judgement;
  auto const setting = judgement.combinations.setting_of_row[*expectation.example];
  auto const& map = judged.subject.map;
  return fmt::format("the {} from {} {}", map.profiles[*expectation.profile].name,
                     map.inlets[*expectation.inlet].name,
                     route_words(judged.subject, judgement.routes.at(setting, *expectation.inlet,
                                                                     *expectation.profile)));
}

std::string example_text(JudgedJunction const& judged, JudgedExpectation const& expectation,
                         Look look) {
  auto const& [subject, judgement, sights] = judged;
  auto const row = *expectation.example;
  auto const inputs = names_of(subject.map.signals, judgement.inputs);
  std::string result;
  if (!inputs.empty()) {
    auto words = condition_words(expectation.failing, inputs);
    if (words.starts_with("when ")) words.erase(0, 5);
    result += worded_line(
        "fails when",
        fmt::format("{}  ({})", words,
                    share_words(expectation.failing.count(), judgement.combinations.row_count())),
        look);
    auto steps = player_steps(subject, judgement, row);
    auto const open = what_does_not_matter(subject, judgement, row, expectation.condition);
    if (!open.empty()) steps += "  (" + open + ")";
    result += worded_line("try", steps, look);
  }
  result += worded_line("then", what_happens(judged, expectation), look);
  if (expectation.inlet && expectation.profile) {
    result += "    " + painted(look, Role::quiet, "see         ") +
              follow_command(subject, assignment_of(judgement, row), *expectation.inlet,
                             *expectation.profile) +
              "\n";
  }
  return result;
}

std::string_view reason_of(Truthfulness verdict) {
  switch (verdict) {
    case Truthfulness::empty:
      return "No combination makes its condition true, so it says nothing.";
    case Truthfulness::undecided:
      return "There are too many combinations to run them all.";
    case Truthfulness::holds_within_bounds:
      return "Only part of the combinations was run.";
    case Truthfulness::violated:
      return "Nothing of the kind is found.";
    case Truthfulness::holds:
      break;
  }
  return {};
}

std::string_view remedy_of(Truthfulness verdict) {
  if (verdict == Truthfulness::empty) return "Correct the condition, or remove the expectation.";
  if (verdict == Truthfulness::undecided) return "Split the junction, or take signals out of it.";
  return {};
}

}  // namespace

std::string expectation_text(JudgedJunction const& judged, std::size_t index, Look look) {
  auto const& expectation = judged.judgement.expectations[index];
  auto const& words = judged.subject.map.expectations[index];
  auto const name = words.title.empty() ? "expectation" : words.title;
  auto result = heading_line(word_of(expectation.verdict), name, words.clause, look);
  result +=
      "    " + painted(look, Role::quiet, location(judged.subject.text, words.span.begin)) + "\n\n";
  result += source_excerpt(judged.subject.text, words.span, 8, look) + "\n";
  if (expectation.example) return result + example_text(judged, expectation, look);
  result += worded_line("why", reason_of(expectation.verdict), look);
  return result + worded_line("do", remedy_of(expectation.verdict), look);
}

}  // namespace leat::render
