#include "lang/check/events_and_trains.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <string>
#include <utility>

#include "lang/check/resolving.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/diagnostics/near_name.hpp"
#include "lang/syntax/wording.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::Clause;
using syntax::ClauseKind;
using syntax::SignalKind;
using syntax::Word;

constexpr std::size_t most_events = 64, most_bodies = 256, most_listed = 8, most_compared = 2000;

bool is_input(SignalKind kind) {
  return kind == SignalKind::lever || kind == SignalKind::button || kind == SignalKind::plate ||
         kind == SignalKind::clock;
}

bool is_about_findings(Clause const& clause) {
  return clause.kind == ClauseKind::findings_none || clause.kind == ClauseKind::finds;
}

source::Span span_of(std::vector<Word> const& words) {
  return {words.front().span.begin, words.back().span.end};
}

// The condition itself; `otherwise` is the clause's last word.
source::Span condition_span(Clause const& clause) {
  constexpr std::size_t length = std::string_view("otherwise").size();
  return clause.condition ? clause.condition->span
                          : source::Span{clause.span.end - length, clause.span.end};
}

void report_condition(Reading const& reading, Clause const& clause) {
  bool const is_train = clause.kind == ClauseKind::deals;
  auto const* word = clause.condition ? "when" : "otherwise";
  diagnostics::Diagnostic found;
  found.name = Listed("condition-unfit");
  found.primary = {condition_span(clause),
                   is_train ? "a train has no setting of its own to ask for"
                            : "the events leave one setting, with nothing to choose",
                   {}};
  if (is_train) {
    found.headline = fmt::format("A clause that 'deals' cannot have '{}'", word);
    found.remedy =
        "Leave it away; to set the inputs first, begin the clause with 'after NAME, NAME:'.";
  } else {
    found.headline = fmt::format("A clause after events cannot have '{}'", word);
    found.others.push_back({span_of(clause.events), "the events the clause is about", {}});
    found.remedy = "Leave it away, and name what is used to come to that setting before the ':'.";
  }
  reading.sink.report(std::move(found));
}

void report_findings(Reading const& reading, Clause const& clause) {
  reading.sink.report(
      {Listed("findings-after-events"),
       "Findings are not expected after events",
       {span_of(clause.events), "findings are about the whole junction, whatever was done", {}},
       {},
       "Leave 'after ...:' away, or say after it what must hold, such as 'never trapped'."});
}

std::string remedy_for(Reading const& reading, std::string const& name) {
  std::vector<std::string> inputs;
  for (auto const* signal : reading.names.signals.all) {
    if (inputs.size() == most_compared) break;
    if (is_input(signal->kind)) inputs.push_back(signal->name.text);
  }
  if (inputs.empty()) return "Declare a lever, button, plate or clock, and name that.";
  if (auto const near = diagnostics::near_name(name, inputs))
    return fmt::format("The nearest input is '{}'.", *near);
  if (inputs.size() > most_listed) return "Name a lever, button, plate or clock.";
  return fmt::format("Inputs here: {}.", fmt::join(inputs, ", "));
}

void report_no_event(Reading const& reading, Word const& event,
                     syntax::SignalDeclaration const& signal) {
  auto const kind = syntax::keyword_of(signal.kind);
  reading.sink.report(
      {Listed("not-an-event"),
       fmt::format("'{}' is a {}, which only follows other signals", event.text, kind),
       {event.span, "an event is the name of a lever, button, plate or clock", {}},
       {{signal.name.span, fmt::format("declared here as a {}", kind), {}}},
       remedy_for(reading, event.text)});
}

void report_too_many(Reading const& reading, char const* headline, source::Span past,
                     std::string label, char const* remedy) {
  reading.sink.report({Listed("too-many"), headline, {past, std::move(label), {}}, {}, remedy});
}

// How often a list of so many outcomes is dealt; none where that is out of range.
std::optional<std::size_t> rounds_of(Reading const& reading, Clause const& clause) {
  if (!clause.rounds) return 1;
  auto const& rounds = *clause.rounds;
  auto const most = most_bodies / clause.dealt.size();
  bool const is_in_range =
      !rounds.is_too_large && rounds.value >= 1 && static_cast<std::size_t>(rounds.value) <= most;
  if (is_in_range) return static_cast<std::size_t>(rounds.value);
  auto const range = most == 1 ? "1 round" : fmt::format("1 to {} rounds", most);
  reading.sink.report(
      {Listed("rounds-out-of-range"),
       rounds.value < 1 ? "A train of no rounds deals nothing"
                        : fmt::format("The train has more than {} bodies", most_bodies),
       {rounds.span, fmt::format("a list of {} is dealt for {}", clause.dealt.size(), range), {}},
       {},
       most == 1 ? "Write 'for 1 round', or leave it away."
                 : fmt::format("Write a number from 1 to {}.", most)});
  return std::nullopt;
}

}  // namespace

bool is_fit(Reading const& reading, Clause const& clause) {
  bool const has_events = !clause.events.empty();
  if (has_events && is_about_findings(clause)) {
    report_findings(reading, clause);
    return false;
  }
  bool const allows_condition = !has_events && clause.kind != ClauseKind::deals;
  if (allows_condition || (!clause.condition && !clause.is_otherwise)) return true;
  report_condition(reading, clause);
  return false;
}

std::optional<std::vector<model::SignalId>> find_events(Reading const& reading,
                                                        Clause const& clause) {
  if (clause.events.size() > most_events) {
    report_too_many(
        reading, "A clause comes after more events than are run", clause.events[most_events].span,
        fmt::format("number {} of the events", most_events + 1), "Keep to at most 64 events.");
    return std::nullopt;
  }
  std::vector<model::SignalId> found;
  bool has_told = false;  // one report for all events that are signals and no inputs
  for (auto const& event : clause.events) {
    auto const id = reading.names.signals.find(event.text);
    if (!id) {
      reading.unknown.add(NameKind::signal, event);
    } else if (is_input(reading.names.signals.all[*id]->kind)) {
      found.push_back(*id);
    } else if (!std::exchange(has_told, true)) {
      report_no_event(reading, event, *reading.names.signals.all[*id]);
    }
  }
  bool const is_sound = found.size() == clause.events.size();
  return is_sound ? std::optional(std::move(found)) : std::nullopt;
}

std::optional<Train> find_train(Reading const& reading, Sights const& sights, std::size_t junction,
                                Clause const& clause) {
  if (clause.dealt.size() > most_bodies) {
    report_too_many(reading, "The train has more than 256 bodies", clause.dealt[most_bodies].span,
                    fmt::format("number {} of the bodies", most_bodies + 1),
                    "Split it into several trains.");
    return std::nullopt;
  }
  auto const rounds = rounds_of(reading, clause);
  Train once;
  bool is_sound = rounds.has_value();
  for (auto const& word : clause.dealt) {
    once.emplace_back();
    if (word.text == "nothing") continue;
    once.back() = find_outlet(reading, sights, junction, word);
    is_sound = is_sound && once.back();
  }
  if (!is_sound) return std::nullopt;
  Train all;
  for (std::size_t round = 0; round < *rounds; ++round)
    all.insert(all.end(), once.begin(), once.end());
  return all;
}

}  // namespace leat::check
