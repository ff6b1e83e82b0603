#pragma once
#include <cstdint>
#include <limits>
#include <vector>

#include "engine/model/circuit.hpp"

namespace leat::logic {

// What some expressions follow from, as a circuit by itself: what happens in it does not depend on
// the rest of the whole. Of what never comes about it has what is said of its own signals alone.
struct Cone {
  model::Circuit circuit;
  std::vector<model::SignalId> signals;    // by its own id, the id in the whole
  std::vector<model::ExpressionId> roots;  // in the order asked for
};

struct Lever {
  model::SignalId signal = 0;
  bool starts_on = false;
};

// Cones of one circuit, which must outlive it.
//
// Signals are numbered as they are met from the first root on, so that cones of one form come out
// equal but for `signals`. Cost of a cone: linear in its own size, but for sorting its wires;
// nothing of the rest of the circuit is looked at.
class Cones {
 public:
  explicit Cones(model::Circuit const&);
  // `levers`: signals that are taken for levers there, whatever they follow from in the whole.
  Cone of(std::vector<model::ExpressionId> const& roots, std::vector<Lever> const& levers = {});

 private:
  static constexpr std::uint32_t none = std::numeric_limits<std::uint32_t>::max();
  model::SignalId number(model::SignalId, Cone&);
  model::ExpressionId copy(model::ExpressionId root, Cone&);
  void add_nevers(Cone&);
  void forget(Cone const&);

  model::Circuit const* circuit_;
  std::vector<std::vector<model::SignalId>> signals_of_never_;  // that stand in it
  std::vector<std::uint32_t> place_of_wire_;                    // in the whole order; by signal
  std::vector<std::uint32_t> number_of_, copy_of_;  // while a cone is made; none outside it
  std::vector<model::ExpressionId> copied_, open_;
};

}  // namespace leat::logic
