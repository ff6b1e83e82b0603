#include "engine/water/lanes.hpp"

namespace leat::water {

std::vector<Settled> settle_all(std::span<model::Arrangement const> arrangements) {
  return settle_fresh_lanes(arrangements);
}

std::vector<Settled> settle_all(std::span<Switching const> switchings) {
  return settle_switched_lanes(switchings);
}

}  // namespace leat::water
