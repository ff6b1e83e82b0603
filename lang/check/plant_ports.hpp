#pragma once
#include <set>
#include <string>

#include "lang/check/marks.hpp"
#include "lang/check/plant.hpp"
#include "lang/check/reading.hpp"

namespace leat::check {

// What a works, or a junction placed in it, shows to whom places it: its ports by the names they
// have within it, and the file's signals that it depends on.
struct PlantContent {
  ByName<std::size_t> inlets, outlets;  // in Plant::inlets, ::outlets
  std::set<model::SignalId> used;
  std::set<std::string, std::less<>>
      left_out;  // places with a fault: of their ports nothing is said
};

// Reads the joins and own port names of one works. False after a report: of ports that are not
// there, outlets joined twice, names that are taken.
bool connect(Reading const&, syntax::WorksDeclaration const&, std::string const& path,
             int ticks_a_second, Plant&, PlantContent&);

// Once all stands where it stands: outlets that are the very same cells become one, an outlet and
// inlets of other places that are the very same cells are taken away, what is left is numbered, and
// the ends of the plant can be found by name. False after a report: of outlets that share some of
// their cells, and of one outlet that is joined by two of its names.
bool settle_ports(Reading const&, Plant&);

// Reports places that overlap in cells which are not filled alike.
bool check_overlaps(Reading const&, std::vector<MarkFill> const&, Scopes const&, Plant const&);

}  // namespace leat::check
