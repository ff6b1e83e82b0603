#include "lang/cli/sights.hpp"

namespace leat::cli {

render::Scene const* Sights::of(explore::Example const& example) {
  auto& sight = by_water_[*example.water];
  if (!sight) {
    auto const& histories = judged_.histories;
    auto const& design = subject_.design;
    auto const& water = histories.waters[*example.water];
    sight = std::make_unique<Sight>(
        Sight{{design, histories.settings[water.setting]}, {subject_, nullptr, {}}});
    auto const field = explore::field_of(design, histories, *example.water);
    sight->scene.arrangement = &sight->arrangement;
    sight->scene.wet = water::survey(water::Moment{sight->arrangement, field});
  }
  return &sight->scene;
}

}  // namespace leat::cli
