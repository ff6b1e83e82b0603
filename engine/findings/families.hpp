#pragma once
#include "engine/findings/sighting.hpp"
#include "engine/logic/truth.hpp"
#include "engine/tables/routes.hpp"

// Every family of findings, each a pure function of results and each in a file of its own name
// (model section 6). `measured` and `limit` are said where they are set.
namespace leat::findings {

// ---- one body's ways under one setting ----
std::vector<Sighting> rests(Passage const&);  // dry-stand, still-water, pinned
std::vector<Sighting> endless_loops(Passage const&);
std::vector<Sighting> split_routes(Passage const&);  // cells: where the ways part
std::vector<Sighting> unsure_moves(Passage const&);
std::vector<Sighting> foot_lifts(Passage const&);
std::vector<Sighting> body_spills(Passage const&);  // cells: the last one inside
std::vector<Sighting> tight_inlets(Passage const&);
std::vector<Sighting> hard_landings(Passage const&);    // cells fallen, safe fall
std::vector<Sighting> thin_cushions(Passage const&);    // cells of water, cells wanted
std::vector<Sighting> narrow_pits(Passage const&);      // cells of width, cells wanted
std::vector<Sighting> long_head_runs(Passage const&);   // cells in a row, most allowed
std::vector<Sighting> stacked_sources(Passage const&);  // sources in a stack, most allowed
std::vector<Sighting> diagonal_currents(Passage const&);
std::vector<Sighting> open_edges(Passage const&);  // cells of drop, from which a sign is wanted

// ---- the water alone under one setting ----
std::vector<Sighting> water_spills(Basin const&);
std::vector<Sighting> swimmer_pools(
    Basin const&);  // still cells joined, from which swimmers appear

// ---- the whole table ----
std::vector<Finding> unreached_outlets(model::Design const&, explore::Combinations const&,
                                       tables::RouteTable const&);
// Inputs that change no route, and wires that nothing uses.
std::vector<Finding> idle_signals(model::Design const&, explore::Combinations const&,
                                  tables::RouteTable const&);
// Signals that are always equal, each group once.
std::vector<Finding> twin_signals(model::Design const&, logic::Truth const&);

// Marks every finding that an acceptance covers, and reports acceptances that cover none.
void accept(model::Design const&, logic::Truth const&, std::vector<Finding>&);

}  // namespace leat::findings
