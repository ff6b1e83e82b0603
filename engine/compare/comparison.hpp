#pragma once
#include <optional>
#include <vector>

#include "engine/compare/behaviour.hpp"

namespace leat::compare {

// How a difference is to be taken, the gravest last. `same`: it differs without an effect on where
// bodies go. `other`: neither better nor worse by itself, such as another outlet.
enum class Change : std::uint8_t { same, better, other, worse };

using Example = Ground::Example;

// What becomes of one body from one inlet is different in these combinations, and the same in all
// of them before, and after. Ids are those after, but for the fate before.
struct RouteChange {
  Change change = Change::other;
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  works::Fate before, after;
  Function condition = logic::Diagram::never;
  std::optional<Example> example;
  // False: it comes into what could not be solved there, and the fate says nothing.
  bool is_known_before = true, is_known_after = true;
};

// A finding that shows in other combinations than before; one of the two is missing where it was
// not made at all.
struct FindingChange {
  Change change = Change::other;
  std::optional<std::size_t> before, after;  // indices into Behaviour::sightings
  Function gone = logic::Diagram::never, come = logic::Diagram::never;
  std::optional<Example> example;
  // False: the side on which it does not show was not looked through for it.
  bool is_known = true;
};

// Something that takes another time than before; indices into Behaviour::durations. One of the two
// is missing where there was no such time.
struct TimeChange {
  Change change = Change::other;
  std::optional<std::size_t> before, after;
};

// A wire or memory element whose value differs from what it was before.
struct ValueChange {
  model::SignalId before = 0, after = 0;
  Function condition = logic::Diagram::never;
  std::optional<Example> example;
};

// An expectation whose verdict differs from before; one of the two is missing where it was not, or
// is no longer, expected. Indices into Design::expectations.
struct ClaimChange {
  Change change = Change::other;
  std::optional<std::size_t> before, after;
};

// Something that is declared otherwise than before, or by one of the two alone.
struct PartChange {
  enum class Part : std::uint8_t { signal, inlet, outlet, body, practice, outside };
  enum class What : std::uint8_t {
    gone,
    come,
    joined,  // inlet, outlet: something is joined there now, so that it lies inside of the works
    parted,  // nothing is joined there any more
    kind,    // signal: lever, button ...
    start,   // signal: its value as built
    time,    // signal: its pulse, delay or period
    rules,   // body, practice, outside: what holds of it
  };
  Change change = Change::other;
  Part part{};
  What what{};
  std::optional<std::uint32_t> before, after;  // ids; practice: the rule's number
};

struct Comparison {
  std::vector<RouteChange> routes;      // by inlet, then profile, the gravest first
  std::vector<FindingChange> findings;  // the gravest first
  std::vector<TimeChange> times;
  std::vector<ValueChange> values;
  std::vector<ClaimChange> claims;  // by index before, then the new ones
  std::vector<PartChange> parts;
  std::size_t lanes = 0, lanes_changed = 0;  // pairs of an inlet and a body on both sides
  // The groups of a route or the changes of all findings were more than are told.
  bool is_cut = false;
  // Something found in a part of a works shows otherwise where the part stands again.
  bool is_unlike_elsewhere = false;
  // What is not listed was proved the same; false: only as far as both are known.
  bool is_proved = false;
};

// What two revisions that stand on common ground do differently.
//
// Idea: for every inlet and body, what becomes of it is a handful of functions on each side; where
// no two of them differ the routes are the same in every combination, which is the proof. The rest
// is told in groups: from the nearest combination that differs, all that differ in the same way.
// Cost: a few operations on diagrams for each outlet, and for each group that is told.
Comparison compare(Behaviour const& before, Behaviour const& after, Matching const&, Ground&);

// What is declared otherwise, whatever comes of it.
std::vector<PartChange> compare_parts(model::Design const& before, model::Design const& after,
                                      Matching const&);

// The gravest change of all.
Change gravest(Comparison const&);

// How one fate is to be taken after another. Outlets before are by `outlets` those after.
Change change_of(works::Fate const& before, works::Fate const& after,
                 Counterparts<model::OutletId> const& outlets);

// By how much the drawing has moved: the shift that takes the ports before to those after; none
// where they have not moved as one. Cost: linear in the ports.
std::optional<model::Place> shift_of(model::Design const& before, model::Design const& after,
                                     Matching const&);

}  // namespace leat::compare
