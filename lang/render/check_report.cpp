#include "lang/render/check_report.hpp"

#include <fmt/format.h>

#include "lang/render/columns.hpp"
#include "lang/render/diagnostic_text.hpp"
#include "lang/render/example.hpp"
#include "lang/render/finding_sentences.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using verdicts::Truthfulness;

std::string junction_heading(Subject const& subject, Look look) {
  auto text = painted(look, Role::strong, "junction " + subject.map.junction.name);
  if (!subject.map.title.empty()) text += ", " + showable(subject.map.title);
  return text + "\n\n";
}

std::string finding_line(Subject const& subject, findings::Finding const& finding) {
  auto const severity = finding.accepted_by ? "accepted" : word_of(finding.severity);
  auto line = fmt::format("{}: {}: {}: {}", location(subject.text, span_of(subject, finding).begin),
                          severity, model::row_of(finding.kind).name,
                          sentences_of(subject, finding).headline);
  if (!finding.cells.empty()) {
    line += " (" + place_words(subject.design.grid.place(finding.cells.front())) + ")";
  }
  if (finding.accepted_by) {
    line += "; because " + subject.map.acceptances[*finding.accepted_by].reason;
  }
  return showable(line) + "\n";
}

std::vector<std::string> counts(std::vector<std::pair<std::size_t, std::string_view>> const& all) {
  std::vector<std::string> parts;
  for (auto const& [count, word] : all) {
    if (count > 0) parts.push_back(fmt::format("{} {}", count, word));
  }
  return parts;
}

std::string finding_counts(Summary const& summary) {
  std::vector<std::string> parts;
  if (summary.errors > 0) parts.push_back(counted(summary.errors, "error"));
  if (summary.warnings > 0) parts.push_back(counted(summary.warnings, "warning"));
  if (summary.notes > 0) parts.push_back(counted(summary.notes, "note"));
  if (summary.accepted > 0) parts.push_back(fmt::format("{} accepted", summary.accepted));
  return parts.empty() ? "none" : fmt::format("{}", fmt::join(parts, ", "));
}

std::string expectation_counts(Summary const& summary) {
  auto const parts = counts({{summary.held, summary.held == 1 ? "holds" : "hold"},
                             {summary.held_within_bounds, "within bounds"},
                             {summary.violated, "violated"},
                             {summary.empty, "empty"},
                             {summary.undecided, "undecided"}});
  return parts.empty() ? "none" : fmt::format("{}", fmt::join(parts, ", "));
}

std::string combination_words(Summary const& summary) {
  if (summary.unended) return "none was run: " + unended_words(*summary.unended);
  if (!summary.too_many.empty()) {
    return summary.too_many + " are too many: their combinations were not run";
  }
  if (summary.is_restless) return "none was run: the signals never come to rest as built";
  if (summary.has_restless)
    return fmt::format("all {} that come to rest; after some events the signals never do",
                       count_text(summary.combinations));
  if (!summary.has_signals) return "1, nothing is switched";
  if (summary.has_memory)
    return fmt::format("all {} that inputs and memory can come to",
                       count_text(summary.combinations));
  return fmt::format("all {} of the inputs", count_text(summary.combinations));
}

}  // namespace

// An unkept expectation is an error; one that is only not known to hold a warning.
std::string expectation_line(Subject const& subject, std::size_t index, Truthfulness verdict) {
  auto const& words = subject.map.expectations[index];
  bool const is_wrong = verdict == Truthfulness::violated || verdict == Truthfulness::empty;
  std::string name(word_of(verdict));
  for (auto& c : name) c = c == ' ' ? '-' : c;
  return showable(fmt::format("{}: {}: {}: {}", location(subject.text, words.span.begin),
                              is_wrong ? "error" : "warning", name, words.clause)) +
         "\n";
}

std::vector<ToldOpen> open_questions(Subject const& subject, Judgement const& judgement) {
  if (judgement.is_decided) return {};
  auto const& name = subject.map.junction.name;
  if (judgement.unended)
    return {
        {fmt::format("What stands in {} is not known: {}", name, unended_words(*judgement.unended)),
         {}}};
  if (never_rests(judgement))
    return {{fmt::format("The signals of {} never come to rest as built", name), {}}};
  return {{fmt::format("What stands in {} depends on {}, too many to run", name,
                       counted(judgement.variables.size(), "signal")),
           "Let fewer signals switch its cells, or build it of junctions that are placed in a "
           "works."}};
}

std::string open_lines(Subject const& subject, std::vector<ToldOpen> const& questions) {
  std::string result;
  auto const place = location(subject.text, subject.map.junction.span.begin);
  for (auto const& open : questions)
    result += showable(fmt::format("{}: warning: undecided: {}", place, open.headline)) + "\n";
  return result;
}

std::string junction_report(JudgedJunction const& judged, Look look) {
  std::string result = junction_heading(judged.subject, look);
  auto const& findings = judged.judgement.findings;
  auto const order = telling_order(findings);
  for (auto i : order) {
    if (!findings[i].accepted_by) result += finding_text(judged, i, look) + "\n";
  }
  for (auto i : order) {
    if (findings[i].accepted_by) result += finding_text(judged, i, look) + "\n";
  }
  for (std::size_t i = 0; i < judged.judgement.expectations.size(); ++i) {
    if (judged.judgement.expectations[i].verdict == Truthfulness::holds) continue;
    result += expectation_text(judged, i, look) + "\n";
  }
  return result;
}

std::string junction_lines(JudgedJunction const& judged) {
  std::string result;
  for (auto i : telling_order(judged.judgement.findings)) {
    result += finding_line(judged.subject, judged.judgement.findings[i]);
  }
  for (std::size_t i = 0; i < judged.judgement.expectations.size(); ++i) {
    auto const verdict = judged.judgement.expectations[i].verdict;
    if (verdict != Truthfulness::holds) result += expectation_line(judged.subject, i, verdict);
  }
  return result;
}

void add(Summary& summary, model::Design const& design, Judgement const& judgement) {
  ++summary.junctions;
  summary.combinations += static_cast<Count>(judgement.combinations.reachable.count());
  summary.has_signals = summary.has_signals || !judgement.variables.empty();
  for (auto variable : judgement.variables)
    summary.has_memory = summary.has_memory || design.circuit.signals[variable].is_memory();
  if (judgement.is_decided) {
    summary.is_history_left_out |= !judgement.histories.is_followed;
    summary.is_switching_left_out |= !judgement.switchings.is_complete;
  }
  summary.has_restless = summary.has_restless || judgement.has_restless;
  summary.is_restless = summary.is_restless || never_rests(judgement);
  if (judgement.unended)
    summary.unended = judgement.unended;
  else if (!judgement.is_decided && !never_rests(judgement))
    summary.too_many = counted(judgement.variables.size(), "signal");
  count_findings(summary, judgement.findings);
  for (auto const& expectation : judgement.expectations)
    count_verdict(summary, expectation.verdict);
}

void count_findings(Summary& summary, std::vector<findings::Finding> const& findings) {
  for (auto const& finding : findings) {
    if (finding.accepted_by) {
      ++summary.accepted;
    } else if (finding.severity == model::Severity::error) {
      ++summary.errors;
    } else {
      ++(finding.severity == model::Severity::warning ? summary.warnings : summary.notes);
    }
  }
}

void count_verdict(Summary& summary, Truthfulness verdict) {
  switch (verdict) {
    case Truthfulness::holds:
      ++summary.held;
      break;
    case Truthfulness::holds_within_bounds:
      ++summary.held_within_bounds;
      break;
    case Truthfulness::violated:
      ++summary.violated;
      break;
    case Truthfulness::empty:
      ++summary.empty;
      break;
    case Truthfulness::undecided:
      ++summary.undecided;
      break;
  }
}

std::string summary_text(Summary const& summary, Look look) {
  auto result = painted(look, Role::strong, showable(summary.file)) + "\n";
  if (summary.faults > 0) {
    auto words = counted(summary.faults + summary.faults_left_out, "fault");
    if (summary.faults_left_out > 0) words += fmt::format(", {} shown", summary.faults);
    return result +
           fmt::format("    design          {}; nothing was judged\n    verdict         {}\n",
                       words, painted(look, Role::error, summary.verdict));
  }
  result += fmt::format("    findings        {}\n", finding_counts(summary));
  result += fmt::format("    expectations    {}\n", expectation_counts(summary));
  result += fmt::format("    combinations    {}\n", combination_words(summary));
  if (summary.is_by_regions)
    result += "    regions         nothing is said of bodies inside while cells change\n";
  if (!summary.kinds_left_out.empty())
    result += fmt::format("    left out        not looked for in all combinations: {}\n",
                          kinds_words(summary.kinds_left_out));
  if (summary.is_in_doubt)
    result += "    promises        some findings are left out: a 'never' may bar them\n";
  if (summary.is_history_left_out)
    result += "    history         left out, too many changes: each combination with fresh water\n";
  else if (summary.is_switching_left_out)
    result += "    switching       left out, too many changes: nothing is said of bodies inside\n";
  return result + fmt::format("    verdict         {}\n",
                              painted(look, role_of(summary.verdict), summary.verdict));
}

std::string summary_line(Summary const& summary) {
  if (summary.faults > 0) {
    return fmt::format("{}: {}; {}\n", showable(summary.file), summary.verdict,
                       counted(summary.faults + summary.faults_left_out, "fault"));
  }
  return fmt::format("{}: {}; findings: {}; expectations: {}\n", showable(summary.file),
                     summary.verdict, finding_counts(summary), expectation_counts(summary));
}

}  // namespace leat::render
