#include "lang/check/drawing.hpp"

#include <algorithm>
#include <map>

#include "lang/check/glyphs.hpp"

namespace leat::check {

namespace {

// Notes the marks of one drawn row. A level drawn once for a range counts for each level of the
// range.
void note_row(GlyphTable const& table, syntax::Row const& row, model::Place at, std::size_t times,
              Drawing& drawing, std::map<std::string, std::size_t, std::less<>>& stray_at) {
  std::string_view const text = row.text;
  for (std::size_t i = 0; i < text.size(); ++at.x) {
    auto const glyph = text.substr(i, glyph_length(text, i));
    auto const mark = table.mark_of(glyph);
    MarkUse* use = nullptr;
    if (mark != GlyphTable::none) {
      use = &drawing.marks[mark];
    } else {
      auto found = stray_at.find(glyph);
      if (found == stray_at.end()) {
        found = stray_at.emplace(glyph, drawing.strays.size()).first;
        drawing.strays.push_back({std::string(glyph), {}});
      }
      use = &drawing.strays[found->second].use;
    }
    if (use->count == 0) {
      use->first = at;
      use->span = {row.span.begin + i, row.span.begin + i + glyph.size()};
    }
    use->count += times;
    i += glyph.size();
  }
}

void note_marks(Reading const& reading, syntax::JunctionDeclaration const& junction,
                Drawing& drawing) {
  drawing.marks.resize(reading.names.marks.size());
  GlyphTable const table(reading.names, drawing.file);
  std::map<std::string, std::size_t, std::less<>> stray_at;
  for (auto const& level : junction.levels) {
    auto const top = level.highest ? level.highest->literal.value : level.lowest.literal.value;
    auto const times = static_cast<std::size_t>(std::max(top - level.lowest.literal.value, 0L) + 1);
    model::Place at{0, 0, static_cast<int>(level.lowest.literal.value)};
    for (auto const& row : level.rows) {
      note_row(table, row, at, times, drawing, stray_at);
      ++at.y;
    }
  }
}

}  // namespace

Drawing read_drawing(Reading const& reading, syntax::JunctionDeclaration const& junction) {
  Drawing drawing;
  drawing.junction = &junction;
  drawing.file = reading.source.file_of(junction.name.span.begin);
  drawing.shape = read_shape(reading, junction);
  note_marks(reading, junction, drawing);
  return drawing;
}

}  // namespace leat::check
