#include <fmt/format.h>

#include <map>

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
  if (!expectation.route) return {};
  auto const& map = judged.subject.map;
  return fmt::format("the {} from {} {}", map.profiles[*expectation.profile].name,
                     map.inlets[*expectation.inlet].name,
                     route_words(judged.subject, *expectation.route));
}

std::string steps_text(JudgedJunction const& judged, JudgedExpectation const& expectation) {
  auto const& example = *expectation.example;
  auto steps = player_steps(judged.subject, example.flips);
  auto const open =
      what_does_not_matter(judged.subject, judged.judgement, example.row, expectation.condition);
  return open.empty() ? steps : steps + "  (" + open + ")";
}

std::string example_text(JudgedJunction const& judged, JudgedExpectation const& expectation,
                         Look look) {
  auto const& subject = judged.subject;
  auto const& judgement = judged.judgement;
  std::string result;
  if (!judgement.variables.empty()) {
    if (!expectation.condition.empty())
      result += worded_line(
          "fails when", where_words(judged.subject, judged.judgement, expectation.failing), look);
    result += worded_line("try", steps_text(judged, expectation), look);
  }
  result += worded_line("then", what_happens(judged, expectation), look);
  if (expectation.route) {
    result += see_line(follow_command(subject, judgement, *expectation.example, *expectation.inlet,
                                      *expectation.profile),
                       look);
  }
  return result;
}

std::string findings_words(JudgedJunction const& judged, JudgedExpectation const& expectation) {
  std::vector<model::FindingKind> kinds;
  for (auto i : expectation.findings) kinds.push_back(judged.judgement.findings[i].kind);
  return kinds_words(kinds);
}

std::string clearing_words(JudgedJunction const& judged, JudgedExpectation const& expectation) {
  if (!expectation.measured)
    return "a body may stay inside for ever, so there is no time to wait for";
  return fmt::format("the longest trip takes up to {}",
                     time_words(judged.subject, *expectation.measured));
}

constexpr std::string_view restless_words =
    "Where it speaks of, the signals or the water never come to rest.";

}  // namespace

std::string kinds_words(std::vector<model::FindingKind> const& kinds) {
  std::map<model::FindingKind, std::size_t> counts;
  for (auto kind : kinds) ++counts[kind];
  std::string words;
  for (auto const& [kind, count] : counts) {
    words += fmt::format("{}{}{}", words.empty() ? "" : ", ", model::row_of(kind).name,
                         count > 1 ? fmt::format(" ({})", count) : "");
  }
  return words;
}

std::string_view reason_of(Truthfulness verdict) {
  switch (verdict) {
    case Truthfulness::empty:
      return "No combination makes its condition true, so it says nothing.";
    case Truthfulness::undecided:
      return "It could not be found out: see the summary for what was too much to run.";
    case Truthfulness::holds_within_bounds:
      return "It was found to hold as far as it was looked for: see the summary for what was left "
             "out.";
    case Truthfulness::violated:
      return "Nothing of the kind is found.";
    case Truthfulness::holds:
      break;
  }
  return {};
}

std::string_view remedy_of(Truthfulness verdict) {
  if (verdict == Truthfulness::empty) return "Correct the condition, or remove the expectation.";
  if (verdict == Truthfulness::undecided)
    return "Split the junction, or take signals or delays out of it.";
  return {};
}

std::string outcome_words(JudgedJunction const& judged, std::size_t index) {
  auto const& expectation = judged.judgement.expectations[index];
  auto const claim = judged.subject.design.expectations[index].claim;
  bool const is_violated = expectation.verdict == Truthfulness::violated;
  if (!expectation.findings.empty()) return "found: " + findings_words(judged, expectation);
  if (is_violated && claim == model::Claim::clears) return clearing_words(judged, expectation);
  if (is_violated && claim == model::Claim::deals)
    return "the bodies end at " + dealt_words(judged.subject, expectation.dealt);
  if (expectation.route) return what_happens(judged, expectation);
  return std::string(expectation.never_rests ? restless_words : reason_of(expectation.verdict));
}

std::string expectation_text(JudgedJunction const& judged, std::size_t index, Look look) {
  auto const& expectation = judged.judgement.expectations[index];
  auto const& words = judged.subject.map.expectations[index];
  auto const name = words.title.empty() ? "expectation" : words.title;
  auto result = heading_line(word_of(expectation.verdict), name, words.clause, look);
  result +=
      "    " + painted(look, Role::quiet, location(judged.subject.text, words.span.begin)) + "\n\n";
  result += source_excerpt(judged.subject.text, words.span, 8, look) + "\n";
  auto const claim = judged.subject.design.expectations[index].claim;
  bool const is_violated = expectation.verdict == Truthfulness::violated;
  if (!expectation.findings.empty())
    return result + worded_line("found", findings_words(judged, expectation), look) +
           worded_line("fails when",
                       where_words(judged.subject, judged.judgement, expectation.failing), look);
  if (expectation.example) result += example_text(judged, expectation, look);
  if (is_violated && claim == model::Claim::clears)
    return result + worded_line("then", clearing_words(judged, expectation), look);
  if (is_violated && claim == model::Claim::deals)
    return result +
           worded_line("then",
                       "the bodies end at " + dealt_words(judged.subject, expectation.dealt), look);
  if (expectation.example) return result;
  if (expectation.never_rests) return result + worded_line("why", restless_words, look);
  result += worded_line("why", reason_of(expectation.verdict), look);
  return result + worded_line("do", remedy_of(expectation.verdict), look);
}

}  // namespace leat::render
