#pragma once
#include <optional>
#include <string>

#include "lang/render/documents.hpp"
#include "lang/render/level_picture.hpp"

namespace leat::render {

// `leat show`: the levels with their water, from the top down, under one assignment; only one
// level where that is asked.
std::string field_text(FieldPart const&, Scene const&, std::optional<int> level, Look);

}  // namespace leat::render
