#pragma once
#include <vector>

#include "engine/model/circuit.hpp"
#include "lang/check/names.hpp"

namespace leat::check {

struct WireOrder {
  std::vector<model::SignalId> order;               // each wire after the wires it uses
  std::vector<std::vector<model::SignalId>> loops;  // each: a wire, one it uses, one that uses ...
};

WireOrder order_wires(Names const&);

}  // namespace leat::check
