#pragma once
#include <algorithm>
#include <optional>
#include <vector>

#include "engine/explore/explored.hpp"
#include "engine/logic/cover.hpp"
#include "engine/model/design.hpp"
#include "engine/model/finding_kind.hpp"

namespace leat::findings {

// A body that meets a finding: from which inlet, and in which rows.
struct Meeting {
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  logic::RowSet rows{0};
  std::vector<std::uint32_t> waters;  // the same by waters, as long as rows are not known
};

// Something wrong with a design, as data. Which of the lists are filled depends on the kind; what
// `measured` and `limit` count is said in the catalogue of sentences (lang) and by the rule that
// finds it.
struct Finding {
  model::FindingKind kind{};
  model::Severity severity = model::Severity::note;
  std::vector<model::Cell> cells;      // ascending
  std::vector<model::InletId> inlets;  // from which a body meets it
  std::vector<model::OutletId> outlets;
  std::vector<model::ProfileId> profiles;
  // Who meets it when, within its rows; empty where all of these bodies from all of these inlets
  // meet it in all of them.
  std::vector<Meeting> meetings;
  std::vector<model::SignalId> signals;
  int measured = 0, limit = 0;
  logic::RowSet rows{0};                   // the combinations in which it shows
  std::vector<logic::Cube> condition;      // the same, as widely as can be said
  std::vector<std::uint32_t> waters;       // those in which it shows; empty: whatever the water
  std::vector<explore::Example> examples;  // nearest ways to it; two where they differ in outcome
  std::optional<model::SignalId> event;    // what changes then: an input, or, in a works, a wire
  std::optional<int> ticks;                // switching: how long to wait before the event
  std::optional<std::size_t> accepted_by;  // index into Design::acceptances
  // unlike_record, unrecorded: the kinds of findings that it is about, ascending; none: a route or
  // times.
  std::vector<model::FindingKind> about;
  std::optional<std::size_t>
      expectation;                        // table rows: the expectation of the row, or of the first
  std::optional<std::size_t> acceptance;  // stale_acceptance: the one nothing answers to
};

// An empty finding of a kind, with the kind's own severity.
inline Finding finding_of(model::FindingKind kind) {
  Finding finding;
  finding.kind = kind;
  finding.severity = model::row_of(kind).severity;
  return finding;
}

// Puts a value into an ascending list that holds each once.
template <class Value>
void insert_sorted(std::vector<Value>& values, Value value) {
  auto const at = std::lower_bound(values.begin(), values.end(), value);
  if (at == values.end() || *at != value) values.insert(at, value);
}

}  // namespace leat::findings
