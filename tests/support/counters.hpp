#pragma once
#include "engine/model/circuit.hpp"

// Counters of the logic databooks put together from latches and toggles, with input 0 as the clock,
// and latches side by side.
namespace leat::wired {

// Levers, each with a latch that it sets and resets: 2^count states, count events from each.
model::Circuit latches(int count);

// Latches that two neighbouring levers of a circle set together, and reset when both are off: what
// they hold follows from no parity.
model::Circuit latches_of_pairs(int count);

// Levers with one latch that they set together, and that resets when all are off: every event bears
// on it.
model::Circuit latch_of_all(int levers);

// Toggles behind each other, each triggered when the one before falls: counts in binary.
model::Circuit ripple(int toggles);

// Stages of a master latch, open while the clock is off, and a slave latch, open while it is on:
// one step for each rise. The ring starts with its first stage on and hands it round.
model::Circuit ring(int stages);
// The same with what comes back turned over (Johnson counter).
model::Circuit twisted_ring(int stages);

// One toggle for each bit and one for the parity of the count; each is triggered by the clock where
// it is the one to change: one bit changes a step (F. Gray, US patent 2632058).
model::Circuit gray_counter(int bits);

// Two circuits that have nothing to do with each other.
model::Circuit beside(model::Circuit one, model::Circuit const& other);

// As random_circuit, with wires between and some variables on as built.
model::Circuit random_circuit_with_wires(unsigned seed);

}  // namespace leat::wired
