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
};

// Reads the joins and own port names of one works. False after a report: of ports that are not
// there, outlets joined twice, names that are taken.
bool connect(Reading const&, syntax::WorksDeclaration const&, std::string const& path,
             int ticks_a_second, Plant&, PlantContent&);

// Once all stands where it stands: ports of different places that are the very same cells are taken
// away, what is left is numbered, and the ends of the plant can be found by name.
void settle_ports(Plant&, PlantContent const&);

// Reports places that overlap in cells which are not filled alike.
bool check_overlaps(Reading const&, std::vector<MarkFill> const&, Scopes const&, Plant const&);

}  // namespace leat::check
