#pragma once
#include <array>

#include "engine/explore/guarding.hpp"
#include "engine/findings/sighting.hpp"
#include "engine/logic/truth.hpp"
#include "engine/tables/routes.hpp"

// Every family of findings, each a pure function of results and each in a file of its own name
// (model section 6). `measured` and `limit` are said where they are set.
namespace leat::findings {

// ---- one body's ways in one water ----
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

using FamilyOfWays = std::vector<Sighting> (*)(Passage const&);

// Those that ask of the graph, and of the water only what the body feels at its positions, are the
// same in waters that are alike for it (body::RouteLanes).
inline constexpr std::array<FamilyOfWays, 10> families_of_positions{
    rests,       endless_loops, split_routes,  unsure_moves,   foot_lifts,
    body_spills, tight_inlets,  hard_landings, long_head_runs, diagonal_currents};
// Those that look farther, up and down or along.
inline constexpr std::array<FamilyOfWays, 4> families_beyond{thin_cushions, narrow_pits,
                                                             stacked_sources, open_edges};

// Those that can be asked of a stretch of the way: of where the rest leads they know nothing.
inline constexpr std::array<FamilyOfWays, 11> families_of_stretches{
    rests,       unsure_moves,   foot_lifts,        body_spills, hard_landings,  thin_cushions,
    narrow_pits, long_head_runs, diagonal_currents, open_edges,  stacked_sources};

// ---- one water alone ----
std::vector<Sighting> water_spills(Basin const&);
std::vector<Sighting> swimmer_pools(
    Basin const&);  // still cells joined, from which swimmers appear

std::vector<Sighting> formed_sources(Basin const&);  // that the fresh water does not have
std::vector<Sighting> restless_waters(Basin const&);

// ---- the whole table ----
using explore::Explored;
std::vector<Finding> unreached_outlets(Explored const&, tables::RouteTable const& by_water);
// Inputs and memory that change no route, and wires that nothing uses.
std::vector<Finding> idle_signals(Explored const&, tables::RouteTable const& by_situation);
// Signals that are always equal, each group once.
std::vector<Finding> twin_signals(Explored const&);
// Combinations that come with several waters. A warning where the routes differ, else a note.
// `examples`: two ways to one combination; `measured`: the most waters of one.
std::vector<Finding> remembering_waters(Explored const&, tables::RouteTable const& by_water);

// Of the tables that are expected: combinations that no row speaks of, one finding for each way the
// bodies go then (`signals`: what the condition is told over); rows of which all is said by
// earlier ones; rows that share combinations with an earlier one.
std::vector<Finding> table_rows(Explored const&, tables::RouteTable const& by_situation);

// ---- the machine ----
std::vector<Finding> oscillations(Explored const&);  // `event`: after which; `signals`: the loop
std::vector<Finding> no_returns(Explored const&);    // `signals`: what stays changed
std::vector<Finding> unreached_states(Explored const&);  // `rows`: of the memory alone

// ---- bodies inside while cells change ----
// One for each kind of danger and event. `ticks`: how long to wait before it, none without bound.
std::vector<Finding> switch_dangers(std::vector<explore::Guard> const&);

// Marks every finding that an acceptance covers, and reports acceptances that cover none.
void accept(Explored const&, std::vector<Finding>&);

}  // namespace leat::findings
