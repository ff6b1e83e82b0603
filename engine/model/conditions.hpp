#pragma once
#include <vector>

#include "engine/model/design.hpp"

namespace leat::model {

// Every expression by which a signal can matter to a design: what switches its fills, under which
// it is claimed or accepted, and what never comes about.
std::vector<ExpressionId> conditions_of(Design const&);

}  // namespace leat::model
