#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "engine/model/circuit.hpp"
#include "lang/check/expectations.hpp"

// What a clause says of time: what was done before, and what comes in one after the other.
namespace leat::check {

// Whether the clause allows the condition and the events it has; reports what does not go together.
bool is_fit(Reading const&, syntax::Clause const&);

// The inputs that are used before the clause is about anything. Reports names of signals that are
// no inputs, and more events than can be run; then there is none.
std::optional<std::vector<model::SignalId>> find_events(Reading const&, syntax::Clause const&);

// Where each body of a train has to end, all rounds written out: an outlet's id, or none for
// `nothing`. Reports unknown outlets, and trains that are too long or never begin.
using Train = std::vector<std::optional<std::uint32_t>>;
std::optional<Train> find_train(Reading const&, Sights const&, std::size_t junction,
                                syntax::Clause const&);

}  // namespace leat::check
