#include "engine/water/survey.hpp"

#include "engine/water/spread.hpp"

namespace leat::water {

std::vector<WetCell> survey(Moment const& now) {
  std::vector<WetCell> wet;
  for (Cell c = 0; c < now.field.size(); ++c) {
    if (!now.is_wet(c)) continue;
    wet.push_back({c, now.field[c], now.arrangement[c].is_source, now.strength(c),
                   current_at(now, c), water::spills(now, c)});
  }
  return wet;
}

}  // namespace leat::water
