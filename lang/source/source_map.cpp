#include "lang/source/source_map.hpp"

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

// Where several are placed, the text of the first one.
Span SourceMap::span_of(model::Place at) const {
  auto found = glyph_in(rows, at);
  if (auto const there = placed.within(at, at); !there.empty()) {
    auto const& text = placed[there.front()];
    found = glyph_in(*text.rows, text.standing.inside(at));
  }
  return found.value_or(junction.span);
}

}  // namespace leat::source
