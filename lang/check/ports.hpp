#pragma once
#include <vector>

#include "lang/check/drawing.hpp"
#include "lang/check/marks.hpp"
#include "lang/check/reading.hpp"

namespace leat::check {

// The ports that a junction draws, in the order of their first marks: a port's place is its engine
// id.
struct Ports {
  std::vector<PortName const*> inlets, outlets;
};

// Reports a junction without inlet or outlet.
Ports read_ports(Reading const&, Drawing const&);

// Reports inlets and outlets in a material that no body may ever enter.
void check_port_materials(Reading const&, std::vector<MarkFill> const&,
                          std::vector<model::Material> const&);

}  // namespace leat::check
