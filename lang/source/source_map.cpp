#include "lang/source/source_map.hpp"

namespace leat::source {

Span SourceMap::span_of(model::Place place) const {
  auto const row = rows.find({place.z, place.y});
  if (row == rows.end() || place.x < 0) return junction.span;
  auto const& begins = row->second.glyph_begins;
  auto const x = static_cast<std::size_t>(place.x);
  if (x + 1 >= begins.size()) return junction.span;
  return {begins[x], begins[x + 1]};
}

}  // namespace leat::source
