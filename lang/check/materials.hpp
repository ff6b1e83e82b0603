#pragma once
#include <vector>

#include "engine/model/material.hpp"
#include "lang/check/reading.hpp"

namespace leat::check {

// Every material of the file by its id, the built-in ones first. Reports repeated and contradictory
// traits.
std::vector<model::Material> read_materials(Reading const&);

}  // namespace leat::check
