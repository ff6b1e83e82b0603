#pragma once
#include <cstdint>
#include <limits>
#include <vector>

#include "engine/body/outcome.hpp"
#include "engine/explore/setting.hpp"
#include "engine/model/design.hpp"
#include "engine/playback/patches.hpp"

// Everything that can be done to a design and seen of it, solved beforehand, for those who show it
// where nothing can be computed: which state each event leads to, the water on its way there step
// by step, and in each settled water every move of a body that is put down anywhere.
namespace leat::playback {

// How the water of a cell looks: all zero where it is dry.
struct Look {
  water::State state = water::dry;
  bool is_placed = false;           // a source that is drawn, not formed
  std::int8_t east = 0, south = 0;  // the signs of its current
  auto operator<=>(Look const&) const = default;
};

// One move, told from where the body stands, so that alike moves are alike wherever they happen.
struct Way {
  body::MoveRule rule = body::MoveRule::fall;
  bool is_sure = true;
  int east = 0, south = 0, up = 0;
  model::Side carried_to = model::Side::none;  // what the body remembers there
  std::uint8_t fallen = 0;
  auto operator<=>(Way const&) const = default;
};

// What a body at some position does: its moves, or why it has none. The first one of a playback is
// that of positions where no body can be.
struct Stance {
  std::vector<Way> ways;
  body::End end = body::End::none;
  model::OutletId outlet = body::no_outlet;
  auto operator<=>(Stance const&) const = default;
};

// What becomes of a body from an inlet, in one water.
struct Fate {
  body::Verdict verdict = body::Verdict::lost;
  std::vector<model::OutletId> outlets;
  bool has_trap = false, spills = false, is_unsure = false, fits = false;
};

inline constexpr std::uint32_t none = std::numeric_limits<std::uint32_t>::max();

// One settled water. Its stances are told by what differs from its parent's, or from nobody being
// anywhere.
struct Pool {
  std::uint32_t parent = none;
  explore::Setting setting;
  std::vector<std::uint32_t> stances;  // by profile: a patch, from Spot::number to a stance
  std::vector<Fate> fates;             // inlet * profiles + profile
  bool is_settled = true;
  bool is_fresh = true;
};

// A settled state of the signals, with the water it has come with.
struct Node {
  std::vector<bool> signals;  // every signal's value
  std::uint32_t pool = 0;
  std::uint32_t parent = none;  // and the event from there, along a shortest list of events
  std::uint32_t event = 0;
  std::vector<std::uint32_t> next;  // by event; none where nothing quiet follows
  std::vector<std::uint32_t> run;   // by event; none where no cell changes
};

// How much of it there is; each next one has less.
enum class Detail : std::uint8_t {
  whole,
  without_steps,  // the water after an event is there, not its way
  fresh,          // what the water remembers is left out: every state has the water that comes from
                  // dry, as if it had been built so
  as_built,       // no events: the state as built alone
  nothing,
};

struct Budget {
  std::size_t most_cells = 40'000;
  std::size_t most_nodes = 4'096;
  std::size_t most_work = 100'000'000;   // cells for each event in each state
  std::size_t most_runs = 20'000;        // of which the steps are kept
  std::size_t most_changes = 1'500'000;  // in all patches
  std::size_t most_steps = 400;          // of one run; the rest is one step
};

struct Playback {
  Detail detail = Detail::nothing;
  std::vector<model::SignalId> inputs;  // event e flips the e-th
  std::vector<Look> looks;              // the first one is dry
  std::vector<Stance> stances;          // the first one is nobody's
  std::vector<Patch> patches;
  // Water on its way, a patch of looks by cell for each step: the first one as the cells change,
  // before the water moves.
  std::vector<std::vector<std::uint32_t>> runs;
  std::uint32_t filling = none;  // the run from dry to the water as built
  std::vector<Pool> pools;
  std::vector<Node> nodes;  // the first one as built; parents come before
};

// Cells inside the drawing, numbered by x, then y, then z.
std::uint32_t number_of(model::Grid const&, model::Cell);

// A position, numbered: the cell times the sides and cells fallen it may remember.
struct Spot {
  static constexpr std::uint32_t per_cell = 25;
  static std::uint32_t number(model::Grid const&, body::Position);
};

// `circuit` is the logic to be run, over the design's signals. As much detail as fits the budget.
// The same design gives the same playback.
//
// Idea: states and waters are those of explore::trace. Each change of the cells is stepped once
// more and kept as patches; a body's moves are kept from water to water as what differs. Signals
// that do not meddle with each other's water thus cost their own changes alone, however many
// combinations there are. Cost: one settling for each change, one route graph for each water and
// profile.
Playback record(model::Design const&, model::Circuit const&, Budget const& = {});

}  // namespace leat::playback
