#include <fmt/format.h>

#include <algorithm>

#include "engine/logic/cone.hpp"
#include "lang/render/check_report.hpp"
#include "lang/render/condition.hpp"
#include "lang/render/diagnostic_text.hpp"
#include "lang/render/example.hpp"
#include "lang/render/finding_sentences.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/table_lines.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using findings::Finding;

std::string place_line(Subject const& subject, Finding const& finding, Look look) {
  auto line = location(subject.text, span_of(subject, finding).begin);
  if (!finding.cells.empty()) {
    auto const at = subject.design.grid.place(finding.cells.front());
    line += fmt::format("   {} (at {})", place_words(at), place_code(at));
    auto const more = finding.cells.size() - 1;
    if (more > 0) line += fmt::format(" and {}", counted(more, "more cell"));
  }
  return "    " + painted(look, Role::quiet, line) + "\n";
}

std::string condition_line(JudgedJunction const& judged, std::size_t index) {
  if (!judged.conditions.empty()) return judged.conditions[index];
  auto const& finding = judged.judgement.findings[index];
  if (judged.judgement.variables.empty() || finding.rows.is_empty()) return {};
  return where_words(judged.subject, judged.judgement, finding.rows);
}

std::string trail_line(JudgedJunction const& judged, Finding const& finding) {
  if (finding.inlets.empty() || finding.profiles.empty() || finding.examples.empty()) return {};
  return follow_command(judged.subject, judged.judgement, finding.examples.front(),
                        finding.inlets.front(), finding.profiles.front());
}

std::string setting_of(JudgedJunction const& judged, Finding const& finding) {
  if (finding.examples.empty()) return "";
  return setting_text(judged.subject,
                      assignment_of(judged.subject, judged.judgement, finding.examples.front()));
}

bool has_memory(JudgedJunction const& judged) {
  auto const& signals = judged.subject.design.circuit.signals;
  return std::any_of(judged.judgement.variables.begin(), judged.judgement.variables.end(),
                     [&](model::SignalId s) { return signals[s].is_memory(); });
}

// What a player does to see it, where the setting alone does not say it.
std::string way_lines(JudgedJunction const& judged, Finding const& finding, Look look) {
  if (finding.examples.empty()) return {};
  auto const& first = finding.examples.front();
  auto const steps = player_steps(judged.subject, first.flips);
  if (finding.examples.size() > 1) {
    return worded_line("either", steps, look) +
           worded_line("or", player_steps(judged.subject, finding.examples[1].flips), look);
  }
  if (finding.event) {
    return worded_line("try", steps_then(judged.subject, first.flips, *finding.event), look);
  }
  bool const is_plain = first.flips.empty() || (first.is_fresh && !has_memory(judged));
  return is_plain ? "" : worded_line("try", steps, look);
}

std::string accepted_text(JudgedJunction const& judged, std::size_t index, Look look) {
  auto const& subject = judged.subject;
  auto const& finding = judged.judgement.findings[index];
  auto result = heading_line("accepted", model::row_of(finding.kind).name,
                             sentences_of(subject, finding).headline, look);
  result += place_line(subject, finding, look);
  result += worded_line("when", condition_line(judged, index), look);
  return result +
         worded_line("because", subject.map.acceptances[*finding.accepted_by].reason, look);
}

std::string headline_text(Subject const& subject, Finding const& finding,
                          FindingSentences const& sentences, Look look) {
  return heading_line(word_of(finding.severity), model::row_of(finding.kind).name,
                      sentences.headline, look) +
         place_line(subject, finding, look);
}

// What the wires are that stand for levers here (works/islands.hpp).
std::string wires_line(JudgedJunction const& judged, Look look) {
  constexpr std::size_t most_nodes = 24;
  auto const& map = judged.subject.map;
  auto const& circuit = judged.subject.design.circuit;
  std::string words;
  for (auto variable : judged.judgement.variables) {
    if (circuit.signals[variable].kind != model::SignalKind::wire) continue;
    auto const definition = circuit.signals[variable].definition;
    auto const size = logic::Cones(circuit).of({definition}).circuit.expressions.size();
    words += fmt::format("{}{} is {}", words.empty() ? "" : "; ", map.signals[variable].name,
                         size > most_nodes ? "what many signals make it"
                                           : expression_text(circuit, map.signals, definition));
  }
  return worded_line("where", words, look);
}

// Every plain lever junction has dangers while it switches: they are told in short here, and at
// length by the command that asks for them.
std::string short_text(JudgedJunction const& judged, std::size_t index, Look look) {
  auto const& subject = judged.subject;
  auto const& finding = judged.judgement.findings[index];
  auto const sentences = sentences_of(subject, finding);
  bool const is_everywhere = (judged.judgement.combinations.reachable & ~finding.rows).is_empty();
  auto result = headline_text(subject, finding, sentences, look);
  if (!is_everywhere) result += worded_line("when", condition_line(judged, index), look);
  result += wires_line(judged, look);
  result += worded_line("do", sentences.remedy, look);
  return result + see_line(guard_command(subject), look);
}

}  // namespace

std::string finding_text(JudgedJunction const& judged, std::size_t index, Look look) {
  auto const& subject = judged.subject;
  auto const& finding = judged.judgement.findings[index];
  if (finding.accepted_by) return accepted_text(judged, index, look);
  if (model::is_of_switching(finding.kind)) return short_text(judged, index, look);
  auto const sentences = sentences_of(subject, finding);
  auto result = headline_text(subject, finding, sentences, look);
  if (finding.cells.empty()) {
    auto const excerpt = source_excerpt(subject.text, span_of(subject, finding), 8, look);
    result += fmt::format("\n{}\n", excerpt);
  } else if (auto const* scene = judged.sights[index]) {
    auto const setting = setting_of(judged, finding);
    result +=
        marked_pictures(*scene, finding.cells, setting.empty() ? "" : "with " + setting, look);
  }
  result += worded_line("when", condition_line(judged, index), look);
  result += wires_line(judged, look);
  result += way_lines(judged, finding, look);
  result += worded_line("why", sentences.reason, look);
  result += worded_line("do", sentences.remedy, look);
  return result + see_line(trail_line(judged, finding), look);
}

}  // namespace leat::render
