#include "engine/compare/comparison.hpp"
#include "engine/model/joins.hpp"

namespace leat::compare {

namespace {

using Part = PartChange::Part;
using What = PartChange::What;

// Those of one kind that only one of the two has. An effect of wires and memory shows elsewhere, so
// by themselves they change nothing.
template <class Id, class GoneAs, class ComeAs>
void add_missing(Part part, Counterparts<Id> const& same, std::size_t count_after, GoneAs gone_as,
                 ComeAs come_as, std::vector<PartChange>& changes) {
  std::vector<bool> is_known(count_after, false);
  for (Id b = 0; b < same.size(); ++b) {
    if (same[b])
      is_known[*same[b]] = true;
    else
      changes.push_back({gone_as(b), part, What::gone, b, {}});
  }
  for (Id a = 0; a < count_after; ++a) {
    if (!is_known[a]) changes.push_back({come_as(a), part, What::come, {}, a});
  }
}

// Ports of a works that both have: whoever comes in by one that is joined now comes from inside,
// and who leaves by one goes on, so that the works has one end less.
template <class Id, class Test>
void add_joins(Part part, Counterparts<Id> const& same, model::Joins const& before,
               model::Joins const& after, Test is_joined, std::vector<PartChange>& changes) {
  for (Id b = 0; b < same.size(); ++b) {
    if (!same[b]) continue;
    bool const was = is_joined(before, b);
    if (was == is_joined(after, *same[b])) continue;
    auto const what = was ? What::parted : What::joined;
    changes.push_back({was ? Change::other : Change::worse, part, what, b, *same[b]});
  }
}

void add_signals(model::Design const& before, model::Design const& after, Matching const& matching,
                 std::vector<PartChange>& changes) {
  auto const worth = [](model::Signal const& signal) {
    return signal.is_input() ? Change::other : Change::same;
  };
  auto const& was = before.circuit.signals;
  auto const& is = after.circuit.signals;
  add_missing(
      Part::signal, matching.signals, is.size(), [&](auto b) { return worth(was[b]); },
      [&](auto a) { return worth(is[a]); }, changes);
  for (model::SignalId b = 0; b < was.size(); ++b) {
    auto const a = matching.signals[b];
    if (!a) continue;
    bool const is_told = was[b].is_input() || is[*a].is_input();
    auto const grave = is_told ? Change::other : Change::same;
    if (was[b].kind != is[*a].kind) {
      changes.push_back({grave, Part::signal, What::kind, b, *a});
      continue;
    }
    if (was[b].starts_on != is[*a].starts_on)
      changes.push_back({grave, Part::signal, What::start, b, *a});
    if (was[b].ticks != is[*a].ticks)
      changes.push_back({Change::other, Part::signal, What::time, b, *a});
  }
}

void add_bodies(model::Design const& before, model::Design const& after, Matching const& matching,
                std::vector<PartChange>& changes) {
  auto const other = [](auto) { return Change::other; };
  add_missing(Part::body, matching.profiles, after.profiles.size(), other, other, changes);
  for (model::ProfileId b = 0; b < before.profiles.size(); ++b) {
    auto const a = matching.profiles[b];
    if (a && !(before.profiles[b] == after.profiles[*a]))
      changes.push_back({Change::other, Part::body, What::rules, b, *a});
  }
}

}  // namespace

std::vector<PartChange> compare_parts(model::Design const& before, model::Design const& after,
                                      Matching const& matching) {
  std::vector<PartChange> changes;
  auto const worse = [](auto) { return Change::worse; };
  auto const other = [](auto) { return Change::other; };
  add_missing(Part::inlet, matching.inlets, after.inlets.size(), worse, other, changes);
  add_missing(Part::outlet, matching.outlets, after.outlets.size(), worse, other, changes);
  model::Joins const had(before), has(after);
  add_joins(
      Part::inlet, matching.inlets, had, has,
      [](auto const& joins, auto inlet) { return !joins.is_entrance(inlet); }, changes);
  add_joins(
      Part::outlet, matching.outlets, had, has,
      [](auto const& joins, auto outlet) { return joins.is_joined(outlet); }, changes);
  add_signals(before, after, matching, changes);
  add_bodies(before, after, matching, changes);
  for (auto const& row : model::rule_table) {
    auto const number = static_cast<std::uint32_t>(row.rule);
    if (before.practice[row.rule] != after.practice[row.rule])
      changes.push_back({Change::other, Part::practice, What::rules, number, number});
  }
  if (before.outside_is_open != after.outside_is_open)
    changes.push_back({Change::other, Part::outside, What::rules, {}, {}});
  return changes;
}

}  // namespace leat::compare
