#pragma once
#include <vector>

#include "engine/model/circuit.hpp"

namespace leat::logic {

// The circuit as its settled states show it. Once all is quiet a delay shows what goes into it, so
// here it is a wire; only a loop needs one delay that remembers, and that one stays memory. Signal
// ids stay. Cost: linear in what wires and delays use, and once more for each loop.
model::Circuit settled_circuit(model::Circuit const&);

// The circuit with every signal that is not used held as built: inputs and memory become constant
// wires. `is_used` has one value a signal, and what a used signal depends on is used.
model::Circuit holding_unused(model::Circuit, std::vector<bool> const& is_used);

// Inputs, then memory, each in the order of their ids.
std::vector<model::SignalId> variables_of(model::Circuit const&);

}  // namespace leat::logic
