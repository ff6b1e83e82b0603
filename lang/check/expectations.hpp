#pragma once
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "engine/model/expectation.hpp"
#include "engine/model/practice.hpp"
#include "lang/check/drawing.hpp"
#include "lang/check/plant.hpp"
#include "lang/check/ports.hpp"
#include "lang/check/reading.hpp"

namespace leat::check {

// When something is said to hold: `when` holds, none of `unless` does, and every signal in
// `settings` has its value. All empty: always.
// The conditions of earlier clauses, in the order written. `otherwise` speaks of the first `count`
// of them; all clauses on one subject share the list.
struct Earlier {
  std::shared_ptr<std::vector<syntax::Expression const*>> said;
  std::size_t count = 0;
};

struct Condition {
  syntax::Expression const* when = nullptr;
  Earlier unless;
  std::vector<std::pair<syntax::Word const*, bool>> settings;
  bool is_always() const { return when == nullptr && unless.count == 0 && settings.empty(); }
};

// An expectation with every name resolved.
struct Wanted {
  std::size_t junction = 0;  // its place in Names::junctions; works come after them
  model::Claim claim = model::Claim::reaches;
  std::optional<std::uint32_t> inlet, profile, outlet;
  std::optional<model::Severity> ceiling;
  std::optional<model::FindingKind> kind;
  std::optional<model::Place> place;
  Condition condition;
  std::vector<model::SignalId> events{};
  int ticks = 0;                                      // clears, deals
  std::vector<std::optional<std::uint32_t>> dealt{};  // deals
  std::string title, clause;
  source::Span span;
  std::optional<std::uint32_t> table{};  // a row of a table: which one, and which row
  std::uint32_t table_row = 0;
};

// What an expectation may speak of: junctions, and after them works.
struct Sights {
  std::vector<Drawing> const& drawings;  // by junction
  std::vector<Ports> const& ports;       // by junction
  std::vector<Plant> const& plants;      // by works
  std::vector<Scopes> const& scopes;     // by works
  // Of the file that is judged: nothing else speaks of inlets.
  std::map<std::string, std::vector<std::size_t>, std::less<>> junctions_of_inlet;
};

// Reports clauses that name what is not there, of which it is unclear which junction they mean, or
// whose parts do not go together.
std::vector<Wanted> read_expectations(Reading const&, Sights const&, model::Practice const&);

// The same for tables: one expectation a row, or one an outlet where a row names several.
std::vector<Wanted> read_tables(Reading const&, Sights const&);

// An accepted finding with every name resolved.
struct Accepted {
  std::size_t file = 0;                 // whose junctions it is about
  std::optional<std::size_t> junction;  // none: in each of them
  model::FindingKind kind{};
  std::optional<model::Place> place;
  Condition condition;
  std::string reason;
  source::Span span;
};

std::vector<Accepted> read_acceptances(Reading const&, Sights const&);

}  // namespace leat::check
