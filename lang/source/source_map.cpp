#include "lang/source/source_map.hpp"

#include <algorithm>
#include <optional>

namespace leat::source {

namespace {

std::optional<Span> glyph_in(std::map<std::pair<int, int>, RowText> const& rows, model::Place at) {
  auto const row = rows.find({at.z, at.y});
  if (row == rows.end() || at.x < 0) return std::nullopt;
  auto const& begins = row->second.glyph_begins;
  auto const x = static_cast<std::size_t>(at.x);
  if (x + 1 >= begins.size()) return std::nullopt;
  return Span{begins[x], begins[x + 1]};
}

}  // namespace

Span SourceMap::span_of(model::Place place) const {
  auto found = glyph_in(rows, place);
  auto const at = std::find_if(placed.begin(), placed.end(),
                               [&](PlacedText const& text) { return text.standing.covers(place); });
  if (at != placed.end()) found = glyph_in(*at->rows, at->standing.inside(place));
  return found.value_or(junction.span);
}

std::vector<std::size_t> SourceMap::placed_in(model::Place least, model::Place most) const {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < placed.size(); ++i) {
    auto const& standing = placed[i].standing;
    auto const& low = standing.corner;
    bool const is_there = low.x <= most.x && low.x + standing.across() > least.x &&
                          low.y <= most.y && low.y + standing.along() > least.y &&
                          low.z <= most.z && low.z + standing.height > least.z;
    if (is_there) found.push_back(i);
  }
  return found;
}

}  // namespace leat::source
