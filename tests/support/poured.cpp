#include "tests/support/poured.hpp"

#include <algorithm>

namespace leat::drawn {

namespace {

bool is_water(char glyph) { return glyph == 'S' || glyph == 'F' || (glyph >= '1' && glyph <= '7'); }

water::State state_of(char glyph) {
  if (glyph == 'S' || glyph == 'w') return water::source;
  if (glyph == 'F') return water::falling;
  return is_water(glyph) ? static_cast<water::State>(glyph - '0') : water::dry;
}

std::vector<Level> without_water(std::vector<Level> levels) {
  for (auto& level : levels) {
    for (auto& row : level) std::replace_if(row.begin(), row.end(), is_water, '.');
  }
  return levels;
}

}  // namespace

Poured::Poured(std::vector<Level> const& levels, model::Profile profile)
    : design(draw(without_water(levels))),
      arrangement(design, std::vector<bool>(design.fills.size(), false)),
      field(design.grid.size()) {
  design.profiles = {profile};
  for (int z = 0; z < design.grid.height(); ++z) {
    for (int y = 0; y < design.grid.depth(); ++y) {
      auto const& row = levels[static_cast<std::size_t>(z)][static_cast<std::size_t>(y)];
      for (int x = 0; x < design.grid.width(); ++x) {
        field[at({x, y, z})] = state_of(row[static_cast<std::size_t>(x)]);
      }
    }
  }
}

std::vector<std::string> Poured::moves(model::Place place, model::Side side, int fallen) const {
  std::vector<std::string> texts;
  body::Position const from{at(place), side, static_cast<std::uint8_t>(fallen)};
  for (auto const& move : body::moves_from(here(), from)) {
    auto const to = design.grid.place(move.to.feet);
    texts.push_back(rule_name(move.rule) + " " + std::to_string(to.x) + " " + std::to_string(to.y) +
                    " " + std::to_string(to.z) + " " + side_name(move.to.carried_to) + " " +
                    std::to_string(move.to.fallen) + (move.is_sure ? "" : " unsure"));
  }
  return texts;
}

std::string side_name(model::Side side) {
  static constexpr char const* names[] = {"east", "south", "west", "north", "none"};
  return names[static_cast<std::size_t>(side)];
}

std::string rule_name(body::MoveRule rule) {
  static constexpr char const* names[] = {"fall", "drift", "sink", "rise", "push", "climb"};
  return names[static_cast<std::size_t>(rule)];
}

void open_the_outside(model::Design& design) {
  design.outside_is_open = true;
  auto const open = std::find(design.fills.begin(), design.fills.end(),
                              model::Fill{model::material::open, model::material::open, {}});
  for (model::Cell c = 0; c < design.grid.size(); ++c) {
    if (!design.grid.is_inside(c)) {
      design.fill_of[c] = static_cast<model::FillId>(open - design.fills.begin());
    }
  }
}

}  // namespace leat::drawn
