#include "lang/source/placed_texts.hpp"

#include <algorithm>
#include <bit>
#include <limits>
#include <numeric>
#include <tuple>

namespace leat::source {

using model::Place;

PlacedTexts::Box PlacedTexts::box_of(Standing const& standing) {
  auto const& corner = standing.corner;
  return {corner,
          {corner.x + standing.across() - 1, corner.y + standing.along() - 1,
           corner.z + standing.height - 1}};
}

PlacedTexts::Box PlacedTexts::around(Box const& a, Box const& b) {
  return {
      {std::min(a.least.x, b.least.x), std::min(a.least.y, b.least.y),
       std::min(a.least.z, b.least.z)},
      {std::max(a.most.x, b.most.x), std::max(a.most.y, b.most.y), std::max(a.most.z, b.most.z)}};
}

PlacedTexts::PlacedTexts(std::vector<PlacedText> texts)
    : texts_(std::move(texts)), by_corner_(texts_.size()) {
  std::iota(by_corner_.begin(), by_corner_.end(), std::size_t{0});
  std::sort(by_corner_.begin(), by_corner_.end(), [&](std::size_t a, std::size_t b) {
    auto const &one = texts_[a].standing.corner, &other = texts_[b].standing.corner;
    return std::tie(one.z, one.y, one.x, a) < std::tie(other.z, other.y, other.x, b);
  });
  constexpr auto far = std::numeric_limits<int>::max();
  Box const none{{far, far, far}, {-far, -far, -far}};
  auto const leaves = std::bit_ceil(texts_.size());
  boxes_.assign(2 * leaves, none);
  for (std::size_t i = 0; i < by_corner_.size(); ++i)
    boxes_[leaves + i] = box_of(texts_[by_corner_[i]].standing);
  for (auto node = leaves - 1; node > 0; --node)
    boxes_[node] = around(boxes_[2 * node], boxes_[2 * node + 1]);
}

std::vector<std::size_t> PlacedTexts::within(Place least, Place most) const {
  std::vector<std::size_t> found;
  if (texts_.empty()) return found;
  auto const leaves = boxes_.size() / 2;
  std::vector<std::size_t> open{1};
  while (!open.empty()) {
    auto const node = open.back();
    open.pop_back();
    auto const& [low, high] = boxes_[node];
    if (low.x > most.x || high.x < least.x || low.y > most.y || high.y < least.y ||
        low.z > most.z || high.z < least.z)
      continue;
    if (node >= leaves)
      found.push_back(by_corner_[node - leaves]);
    else
      open.insert(open.end(), {2 * node, 2 * node + 1});
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace leat::source
