#pragma once
#include <optional>
#include <vector>

#include "engine/works/passages.hpp"

namespace leat::works {

// All combinations in which a body has the same destination.
struct Destination {
  body::Verdict verdict = body::Verdict::lost;
  std::vector<model::OutletId> outlets;  // ascending
  Function condition = logic::Diagram::never;
};

// The condensed table of one passage: what can come about, each combination in exactly one
// destination. Certain ones first, then split, doubtful and lost ones; among these by outlets. None
// where there would be more than `most`. Cost: two operations for each end where ends exclude each
// other, else one for each end and destination.
std::optional<std::vector<Destination>> destinations(Passage const&, Conditions&,
                                                     std::size_t most = 4096);

// A function over up to RowSet::most_inputs variables as rows, its first level the first input.
logic::RowSet rows_of(logic::Diagram const&, Function, int inputs);

}  // namespace leat::works
