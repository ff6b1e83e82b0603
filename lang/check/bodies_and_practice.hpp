#pragma once
#include <vector>

#include <string>

#include "engine/model/practice.hpp"
#include "engine/model/profile.hpp"
#include "lang/check/reading.hpp"

namespace leat::check {

// The profile of every judged body by its id. Reports unknown, repeated, contradictory and
// out-of-range properties.
std::vector<model::Profile> read_profiles(Reading const&, model::Practice const&);

// What a body can have, for messages.
std::vector<std::string> body_property_names();

// The model's numbers as the file sets them. Reports unknown, repeated and out-of-range ones.
model::Practice read_practice(Reading const&);

}  // namespace leat::check
