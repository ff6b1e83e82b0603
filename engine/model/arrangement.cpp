#include "engine/model/arrangement.hpp"

#include <algorithm>

#include "engine/contract.hpp"

namespace leat::model {

Arrangement::Arrangement(Design const& design, std::vector<bool> const& powered)
    : design_(&design) {
  require(powered.size() == design.fills.size(), "Arrangement: one control value a fill");
  made_of_.reserve(powered.size());
  material_of_fill_.reserve(powered.size());
  for (std::size_t f = 0; f < design.fills.size(); ++f) {
    auto const& fill = design.fills[f];
    auto const id = fill.is_switched() && powered[f] ? fill.powered : fill.unpowered;
    material_of_fill_.push_back(id);
    made_of_.push_back(design.materials[id]);
  }
}

namespace {

constexpr std::size_t stretch = 64;  // cells compared at once

bool holds(FillId const* fills, FillId wanted) {
  FillId found = 0;  // as narrow as the fills, so that many fit an instruction
  for (std::size_t i = 0; i < stretch; ++i) {
    found = static_cast<FillId>(found | (fills[i] == wanted ? 1 : 0));
  }
  return found != 0;
}

}  // namespace

std::vector<Cell> cells_filled(Design const& design, std::vector<bool> const& is_wanted) {
  require(is_wanted.size() == design.fills.size(), "cells_filled: one value a fill");
  constexpr std::size_t few = 4;
  std::vector<FillId> wanted;
  for (std::size_t f = 0; f < is_wanted.size(); ++f) {
    if (is_wanted[f]) wanted.push_back(static_cast<FillId>(f));
  }
  std::vector<Cell> cells;
  if (wanted.empty()) return cells;
  auto const& fills = design.fill_of;
  for (std::size_t first = 0; first < fills.size(); first += stretch) {
    auto const end = std::min(first + stretch, fills.size());
    bool const is_whole = end - first == stretch && wanted.size() <= few;
    if (is_whole && std::none_of(wanted.begin(), wanted.end(),
                                 [&](FillId fill) { return holds(&fills[first], fill); })) {
      continue;
    }
    for (auto c = first; c < end; ++c) {
      if (is_wanted[fills[c]]) cells.push_back(static_cast<Cell>(c));
    }
  }
  return cells;
}

}  // namespace leat::model
