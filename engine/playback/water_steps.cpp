#include "engine/playback/water_steps.hpp"

#include <algorithm>

#include "engine/water/current.hpp"

namespace leat::playback {

using model::Cell;

namespace {

std::int8_t sign(int n) { return static_cast<std::int8_t>(n > 0 ? 1 : n < 0 ? -1 : 0); }

Look look_at(water::Moment const& now, Cell c) {
  if (!now.is_wet(c)) return {};
  auto const current = water::current_at(now, c);
  return {now.field[c], now.arrangement[c].is_source, sign(current.x), sign(current.y)};
}

}  // namespace

WaterSteps::WaterSteps(model::Grid const& grid)
    : grid_(grid), field_(grid.size()), looks_(grid.size()) {}

void WaterSteps::look_near(Cell c, std::vector<Cell>& to_look) const {
  to_look.push_back(c);
  for (auto side : model::sides) {
    auto const beside = grid_.beside(c, side);
    to_look.push_back(beside);
    to_look.push_back(grid_.above(beside));
  }
}

Patch WaterSteps::follow(model::Arrangement const& arrangement, water::Field const& field,
                         std::vector<Cell> const& remade, Numbered<Look>& looks) {
  std::vector<Cell> to_look;
  for (auto c : remade) look_near(c, to_look);
  for (Cell c = 0; c < field.size(); ++c) {
    if (field[c] != field_[c]) look_near(c, to_look);
  }
  field_ = field;
  std::sort(to_look.begin(), to_look.end());
  to_look.erase(std::unique(to_look.begin(), to_look.end()), to_look.end());
  water::Moment const now{arrangement, field_};
  Patch patch;
  for (auto c : to_look) {
    if (!grid_.is_inside(c)) continue;
    auto const look = look_at(now, c);
    if (look == looks_[c]) continue;
    looks_[c] = look;
    patch.push_back({number_of(grid_, c), looks.number(look)});
  }
  return patch;
}

}  // namespace leat::playback
