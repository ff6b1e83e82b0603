#include "engine/works/likeness.hpp"

#include <algorithm>
#include <string_view>

namespace leat::works {

Extent extent_of(Box const& box, std::size_t cells) {
  auto const length = [](int least, int most) { return static_cast<std::size_t>(most - least); };
  auto const width = length(box.least.x, box.most.x), depth = length(box.least.y, box.most.y);
  return {cells, length(box.least.z, box.most.z), std::min(width, depth), std::max(width, depth)};
}

std::size_t Likeness::KeyHash::operator()(std::vector<std::uint32_t> const& key) const {
  std::string_view const bytes(reinterpret_cast<char const*>(key.data()),
                               key.size() * sizeof(std::uint32_t));
  return std::hash<std::string_view>{}(bytes);
}

Likeness::Likeness(model::Design const& plant) {
  bool const is_narrow = std::none_of(plant.profiles.begin(), plant.profiles.end(),
                                      [](auto const& profile) { return profile.footprint > 1; });
  if (is_narrow)
    other_postures_ = {{false, 1}, {false, 2}, {false, 3}, {true, 0},
                       {true, 1},  {true, 2},  {true, 3}};
}

Likeness::Known Likeness::known(Extent const& extent, std::function<Form(Posture)> const& in) {
  auto form = in({});
  auto key = form.key();
  auto known = numbers_.find(key);
  bool const may_be_turned = !extents_.insert(extent).second;
  for (auto at = other_postures_.begin();
       may_be_turned && known == numbers_.end() && at != other_postures_.end(); ++at) {
    auto turned = in(*at);
    known = numbers_.find(turned.key());
    if (known != numbers_.end()) form = std::move(turned);
  }
  if (known != numbers_.end()) return {std::move(form), known->second, false};
  auto const number = static_cast<std::uint32_t>(numbers_.size());
  numbers_.emplace(std::move(key), number);
  return {std::move(form), number, true};
}

}  // namespace leat::works
