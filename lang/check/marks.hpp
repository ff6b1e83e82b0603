#pragma once
#include <vector>

#include "engine/model/material.hpp"
#include "lang/check/drawing.hpp"
#include "lang/check/reading.hpp"
#include "lang/check/signals.hpp"

namespace leat::check {

// What a mark's cells are made of.
struct MarkFill {
  model::MaterialId powered = model::material::rock, unpowered = model::material::rock;
  syntax::Expression const* control = nullptr;
  bool is_sound = true;  // its materials are known
};

// The fill of every mark by its place in Names::marks. Reports unknown materials and switched
// marks that never change.
std::vector<MarkFill> read_fills(Reading const&, Signals const&);

// Reports, file by file, glyphs that no mark declares and marks that no junction draws.
void check_marks(Reading const&, std::vector<Drawing> const&);

}  // namespace leat::check
