#include "engine/explore/setting.hpp"

#include "engine/logic/truth.hpp"

namespace leat::explore {

std::vector<bool> fills_drawn(model::Design const& design) {
  std::vector<char> is_drawn(design.fills.size(), 0);  // a byte each: as many writes as cells
  for (auto fill : design.fill_of) is_drawn[fill] = 1;
  return {is_drawn.begin(), is_drawn.end()};
}

Setting setting_in(model::Design const& design, std::vector<bool> const& is_drawn,
                   std::vector<bool> const& signals) {
  Setting setting(design.fills.size(), false);
  for (std::size_t f = 0; f < setting.size(); ++f) {
    auto const& control = design.fills[f].control;
    setting[f] = is_drawn[f] && control && logic::is_true(design.circuit, *control, signals);
  }
  return setting;
}

}  // namespace leat::explore
