#pragma once
#include "engine/compare/comparison.hpp"

// The chapters of a comparison, each in a file of its own.
namespace leat::compare {

struct Sides {
  Behaviour const& before;
  Behaviour const& after;
  Matching const& matching;
  Ground& ground;
};

void compare_routes(Sides const&, Comparison&);
void compare_findings(Sides const&, Comparison&);
void compare_times(Sides const&, Comparison&);
void compare_values(Sides const&, Comparison&);
void compare_claims(Sides const&, Comparison&);

}  // namespace leat::compare
