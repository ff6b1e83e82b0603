#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "engine/model/design.hpp"

namespace leat::compare {

// Which things of two revisions are the same: by the id before, the id after. None: gone. What no
// entry names is new. Each id after is named at most once.
template <class Id>
using Counterparts = std::vector<std::optional<Id>>;

struct Matching {
  Counterparts<model::SignalId> signals;
  Counterparts<model::InletId> inlets;
  Counterparts<model::OutletId> outlets;
  Counterparts<model::ProfileId> profiles;
  Counterparts<std::size_t> expectations;
};

}  // namespace leat::compare
