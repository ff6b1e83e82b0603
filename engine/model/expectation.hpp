#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "engine/model/circuit.hpp"
#include "engine/model/finding_kind.hpp"
#include "engine/model/grid.hpp"
#include "engine/model/profile.hpp"

// What a design says should be true of it. Ids only; a missing id means "for every one".
namespace leat::model {

// The clauses an expectation can make.
enum class Claim : std::uint8_t {
  reaches,          // the route is certain and ends at `outlet`
  may_reach,        // `outlet` is among the outlets reached
  never_reaches,    // `outlet` is not among them
  reaches_nothing,  // no outlet is reached
  never_trapped,
  never_spilled,
  never_split,
  never_doubtful,
  never_lost,
  no_findings,  // none above `ceiling` (accepted ones do not count)
  finds,        // a finding of `kind` (at `cell`, where given) is made
  clears,       // every body has left within `ticks` of entering, however the signals stand
  deals,        // a train of bodies, one each `ticks`, ends at `dealt` in the order of entering
};

struct Expectation {
  Claim claim = Claim::reaches;
  std::optional<std::uint32_t> inlet{};
  std::optional<ProfileId> profile{};
  std::optional<std::uint32_t> outlet{};
  std::optional<ExpressionId> condition{};  // the combinations it speaks of; none: all
  std::optional<Severity> ceiling{};        // no_findings: findings up to this severity are allowed
  std::optional<FindingKind> kind{};        // finds
  std::optional<Cell> cell{};               // finds
  // What is done from as built, one event after the other, each once all has settled: a lever is
  // flipped, a clock changes, a button or plate is pressed and let go. Where there are events, the
  // claim is about the state after them alone.
  std::vector<SignalId> events{};
  int ticks = 0;                                      // clears, deals
  std::vector<std::optional<std::uint32_t>> dealt{};  // deals: outlets; none where it reaches none
  // Of a row of an expected table: which table and which row, both counted from 0.
  std::optional<std::uint32_t> table{};
  std::uint32_t table_row = 0;
};

// A finding the builder lives with. It covers findings of `kind` that lie at `cell` (where given)
// and only in combinations in which `condition` is true (where given).
struct Acceptance {
  FindingKind kind{};
  std::optional<Cell> cell;
  std::optional<ExpressionId> condition;
};

}  // namespace leat::model
