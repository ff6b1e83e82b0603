#pragma once
#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "engine/body/outcome.hpp"
#include "engine/body/surroundings.hpp"
#include "engine/findings/finding.hpp"

namespace leat::findings {

using model::Cell;
using model::FindingKind;

// Something wrong seen in one settled water.
struct Sighting {
  FindingKind kind{};
  std::vector<Cell> cells;
  std::vector<model::OutletId> outlets;
  int measured = 0, limit = 0;
  std::optional<model::Severity> severity;  // where it differs from the kind's own
};

// How a body came to where a stretch of its way begins: it had fallen so many cells through the
// air, while it came straight down carried to that side.
struct Descent {
  int cells = 0;
  model::Side carried_to = model::Side::none;
};

// What the families that look at bodies see: one body's ways from one inlet in one water.
struct Passage {
  model::Design const& design;
  model::InletId inlet;
  body::Surroundings const& here;
  body::RouteGraph const& graph;
  body::Outcome const& outcome;
  Descent before{};  // the starts, where bodies do not enter there
};

// What the families that look at the water alone see.
struct Basin {
  model::Arrangement const& arrangement;
  water::Field const& field;
  water::Field const* fresh = nullptr;  // what comes from dry in the same setting, where it differs
  bool is_settled = true;
};

// Gathers sightings over all waters into findings: one for each cause. Sightings of one kind at the
// same cells are one cause, whatever the water, inlet or body; touching cells under the same
// circumstances are one too.
class Sightings {
 public:
  void add(std::uint32_t water, std::vector<Sighting> const&);
  void add(std::uint32_t water, model::InletId, model::ProfileId, std::vector<Sighting> const&);
  // Without rows: their waters say when they show.
  std::vector<Finding> gathered(model::Grid const&) const;

 private:
  using Key = std::tuple<FindingKind, std::optional<model::Severity>, std::vector<Cell>,
                         std::vector<model::OutletId>>;
  struct Circumstances {
    int measured = 0, limit = 0;
    std::vector<std::uint32_t> waters;
    std::vector<model::InletId> inlets;
    std::vector<model::ProfileId> profiles;
    auto operator<=>(Circumstances const&) const = default;
  };
  // In which waters bodies from an inlet meet it.
  using Met = std::map<std::pair<model::InletId, model::ProfileId>, std::vector<std::uint32_t>>;
  struct Cause {
    Circumstances seen;
    Met met;
  };
  static void tell_whom(Met const&, Finding&);
  Cause& cause_of(Sighting const&, std::uint32_t water);
  std::map<Key, Cause> causes_;
};

}  // namespace leat::findings
