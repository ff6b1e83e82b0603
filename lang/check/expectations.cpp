#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

#include "engine/contract.hpp"
#include "lang/check/clause_subject.hpp"
#include "lang/check/events_and_trains.hpp"
#include "lang/check/resolving.hpp"
#include "lang/check/signals.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/syntax/print.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using model::Claim;
using syntax::Clause;
using syntax::ClauseKind;
using syntax::ExpectDeclaration;

struct StateRow {
  char const* name;
  Claim claim;
};
constexpr std::array<StateRow, 5> states{{{"trapped", Claim::never_trapped},
                                          {"spilled", Claim::never_spilled},
                                          {"split", Claim::never_split},
                                          {"doubtful", Claim::never_doubtful},
                                          {"lost", Claim::never_lost}}};

struct SeverityRow {
  char const* name;
  model::Severity severity;
};
constexpr std::array<SeverityRow, 3> severities{{{"note", model::Severity::note},
                                                 {"warning", model::Severity::warning},
                                                 {"error", model::Severity::error}}};

// The row that a word names. The grammar lets no other words through.
template <class Rows>
auto const& row_named(Rows const& rows, std::string_view name) {
  auto const row = std::find_if(rows.begin(), rows.end(),
                                [&](auto const& candidate) { return name == candidate.name; });
  require(row != rows.end(), "read_expectations: a word that the grammar does not know");
  return *row;
}

// Fills in what the clause's object says; false when it says nothing known.
bool resolve_object(Reading const& reading, Sights const& sights, Clause const& clause,
                    Wanted& wanted) {
  switch (clause.kind) {
    case ClauseKind::reaches:
    case ClauseKind::may_reach:
    case ClauseKind::never_reaches: {
      wanted.claim = clause.kind == ClauseKind::reaches     ? Claim::reaches
                     : clause.kind == ClauseKind::may_reach ? Claim::may_reach
                                                            : Claim::never_reaches;
      if (clause.object.text != "nothing") {
        wanted.outlet = find_outlet(reading, sights, wanted.junction, clause.object);
        return wanted.outlet.has_value();
      }
      require(clause.kind == ClauseKind::reaches, "read_expectations: only 'reaches nothing'");
      wanted.claim = Claim::reaches_nothing;
      return true;
    }
    case ClauseKind::never_state:
      wanted.claim = row_named(states, clause.object.text).claim;
      return true;
    case ClauseKind::clears:
      wanted.claim = Claim::clears;
      return true;
    case ClauseKind::deals: {
      wanted.claim = Claim::deals;
      auto train = find_train(reading, sights, wanted.junction, clause);
      if (train) wanted.dealt = std::move(*train);
      return train.has_value();
    }
    case ClauseKind::findings_none:
      wanted.claim = Claim::no_findings;
      if (!clause.object.text.empty())
        wanted.ceiling = row_named(severities, clause.object.text).severity;
      return true;
    case ClauseKind::finds:
      wanted.claim = Claim::finds;
      wanted.kind = find_finding(reading, clause.object);
      if (!clause.place) return wanted.kind.has_value();
      wanted.place = find_place(reading, sights, wanted.junction, *clause.place);
      return wanted.kind && wanted.place;
  }
  return false;
}

bool resolve_subject(Reading const& reading, Sights const& sights, ClauseSubject const& subject,
                     Wanted& wanted) {
  if (subject.body) wanted.profile = find_profile(reading, *subject.body);
  if (subject.inlet) wanted.inlet = find_inlet(reading, sights, wanted.junction, *subject.inlet);
  return (!subject.body || wanted.profile) && (!subject.inlet || wanted.inlet);
}

// Fills in the clause's time and what is done before it; false when one of them is amiss.
bool resolve_time(Reading const& reading, Clause const& clause, model::Practice const& practice,
                  Wanted& wanted) {
  auto events = find_events(reading, clause);
  if (events) wanted.events = std::move(*events);
  if (!clause.duration) return events.has_value();
  auto const ticks_a_second = practice[model::Rule::ticks_per_second];
  if (!is_in_range(reading, *clause.duration, "The clause", ticks_a_second)) return false;
  wanted.ticks = ticks_of(*clause.duration, ticks_a_second);
  return events.has_value();
}

using Subject = std::pair<std::string, std::string>;

Subject key_of(ClauseSubject const& subject) {
  return {subject.body ? subject.body->text : "", subject.inlet ? subject.inlet->text : ""};
}

// What the clauses of one block have said so far, by whom they speak of.
using SaidBefore = std::map<Subject, std::shared_ptr<std::vector<syntax::Expression const*>>>;

void report_first_otherwise(Reading const& reading, Clause const& clause) {
  reading.sink.report({Listed("otherwise-alone"),
                       "'otherwise' follows no condition",
                       {clause.span,
                        "no earlier clause of this block says when for the same body "
                        "and inlet",
                        {}},
                       {},
                       "Write the clause with 'when' before it, or leave 'otherwise' away."});
}

// A condition that the clause may not have is reported, and no `otherwise` speaks of it.
bool resolve_condition(Reading const& reading, Clause const& clause, SaidBefore& earlier,
                       Subject const& subject, Wanted& wanted) {
  if (!is_fit(reading, clause)) return false;
  auto& said = earlier[subject];
  if (!said) said = std::make_shared<std::vector<syntax::Expression const*>>();
  if (clause.is_otherwise) {
    if (said->empty()) report_first_otherwise(reading, clause);
    wanted.condition.unless = {said, said->size()};
    return !said->empty();
  }
  if (!clause.condition) return true;
  wanted.condition.when = &*clause.condition;
  said->push_back(&*clause.condition);
  return true;
}

// Signals of places, such as `second.late`, are those of the works that is meant.
bool has_known_places(Reading const& reading, Sights const& sights, Clause const& clause,
                      std::size_t junction) {
  if (!clause.condition) return true;
  bool is_sound = true;
  for_each_name(*clause.condition, [&](syntax::Expression const& name) {
    if (name.name.find('.') == std::string::npos) return;
    if (has_signal(reading, sights, junction, name.name)) return;
    reading.unknown.add(NameKind::signal, {name.name, name.span});
    is_sound = false;
  });
  return is_sound;
}

// What bodies do one after the other, or how long they take, is asked of what is placed.
bool is_fit_for_works(Reading const& reading, Sights const& sights, Clause const& clause,
                      std::size_t junction) {
  bool const is_in_time = clause.kind == ClauseKind::deals || clause.kind == ClauseKind::clears ||
                          !clause.events.empty();
  if (junction < sights.drawings.size() || !is_in_time) return true;
  reading.sink.report(
      {Listed("works-in-time"),
       "A works is not asked what happens in time",
       {clause.span, "events, trains and times to clear are asked of junctions", {}},
       {{name_of(reading.names, junction).span,
         fmt::format("'{}' is a works", name_of(reading.names, junction).text), {}}},
       "Ask it of the junction that is placed, or say what must hold in every combination."});
  return false;
}

std::optional<syntax::Word> junction_named(ExpectDeclaration const& block, Clause const& clause) {
  if (clause.place && clause.place->junction) return clause.place->junction;
  return block.junction;
}

bool is_block_sound(Reading const& reading, ExpectDeclaration const& block) {
  if (!block.clauses.empty() || !reading.is_whole) return true;
  reading.sink.report({Listed("expects-nothing"),
                       "An 'expect' block expects nothing",
                       {block.span, "no clause stands between its braces", {}},
                       {},
                       "Write what must hold, such as 'findings none', or remove the block."});
  return false;
}

// As written; but where numbers stand in brackets, with their values: a repeated clause is several.
std::string clause_text(Reading const& reading, syntax::Clause const& clause) {
  auto const written = reading.source.text(clause.span);
  bool const has_numbers = written.find('[') != std::string_view::npos;
  return has_numbers ? syntax::print(clause) : one_line(written);
}

}  // namespace

std::vector<Wanted> read_expectations(Reading const& reading, Sights const& sights,
                                      model::Practice const& practice) {
  std::vector<Wanted> found;
  if (reading.names.judged().draws_nothing()) return found;
  for (auto const* block : all_of<ExpectDeclaration>(reading.document)) {
    if (!is_block_sound(reading, *block)) continue;
    SaidBefore earlier;
    for (auto const& clause : block->clauses) {
      Wanted wanted;
      auto const subject = subject_of(clause, reading.names);
      bool is_sound = resolve_condition(reading, clause, earlier, key_of(subject), wanted);
      is_sound = resolve_time(reading, clause, practice, wanted) && is_sound;
      auto const junction = find_junction(reading, sights, junction_named(*block, clause),
                                          subject.inlet, clause.span);
      if (!junction) continue;
      wanted.junction = *junction;
      is_sound = has_known_places(reading, sights, clause, *junction) && is_sound;
      is_sound = is_fit_for_works(reading, sights, clause, *junction) && is_sound;
      is_sound = resolve_subject(reading, sights, subject, wanted) && is_sound;
      is_sound = resolve_object(reading, sights, clause, wanted) && is_sound;
      if (!is_sound) continue;
      if (block->title) wanted.title = block->title->text;
      wanted.clause = clause_text(reading, clause);
      wanted.span = clause.span;
      found.push_back(std::move(wanted));
    }
  }
  return found;
}

}  // namespace leat::check
