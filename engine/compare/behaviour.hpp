#pragma once
#include <optional>
#include <vector>

#include "engine/compare/ground.hpp"
#include "engine/works/judge_works.hpp"

namespace leat::compare {

// A finding as it is compared: what it is about, in the ids of its own revision, and when it shows.
struct Sighting {
  model::FindingKind kind{};
  model::Severity severity = model::Severity::note;
  std::vector<model::InletId> inlets;
  std::vector<model::OutletId> outlets;
  std::vector<model::ProfileId> profiles;
  std::vector<model::SignalId> signals;
  std::optional<model::SignalId> event;
  std::vector<model::Cell> cells;  // ascending; may be left empty where places do not count
  bool is_accepted = false;
  Function condition = logic::Diagram::always;  // on the common ground
  findings::Finding const* finding = nullptr;  // what it was made of; none where it was recorded
  // Where the part of a works that it is found in stands again: when it shows there.
  std::vector<Function> elsewhere{};
  bool is_proved = true;  // false: perhaps no body comes to it (see works::PlantFinding)
};

// How long something takes at most, whatever the combination. A change of which there is nothing
// moves no cell.
struct Duration {
  enum class Kind : std::uint8_t {
    trip,      // of a body, from entering to leaving
    wait,      // before a change, so that no body is inside
    clearing,  // after a change, until all that were inside have left
  };
  Kind kind{};
  model::InletId inlet = 0;      // trip
  model::ProfileId profile = 0;  // trip
  model::SignalId event = 0;     // wait, clearing
  bool goes_on = false;          // wait, clearing
  std::optional<int> ticks;      // none without a bound
  bool is_known = true;          // false: nothing is known of it, nor whether cells are moved
};

// What one revision does, on the common ground; ids are its own.
struct Behaviour {
  std::vector<works::Passage> passages;  // by inlet, then profile; of each pair one at most
  std::vector<Sighting> sightings;
  std::vector<Duration> durations;
  std::vector<verdicts::Truthfulness> verdicts;  // by expectation
  // Kinds of finding that may be there without being told: they were left out, or are in doubt.
  std::vector<model::FindingKind> kinds_unknown;
  // Where bodies go, and what they meet there, was looked at in every combination.
  bool are_routes_whole = true;

  bool was_looked_for(model::FindingKind) const;
  // Nothing of it is unknown: what is not told is not there.
  bool is_whole() const;
};

// `signals`: by own id, the joint signal.
Behaviour behaviour_of(model::Design const&, Judgement const&,
                       std::vector<model::SignalId> const& signals, Ground&);
Behaviour behaviour_of(model::Design const&, works::WorksJudgement const&,
                       std::vector<model::SignalId> const& signals, Ground&);

}  // namespace leat::compare
