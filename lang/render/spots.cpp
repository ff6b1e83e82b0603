#include "lang/render/spots.hpp"

#include <algorithm>

#include "lang/source/code_point.hpp"

namespace leat::render {

SpanInLine span_in_line(source::SourceText const& text, source::Span span) {
  auto const at = text.position(span.begin);
  auto const line = text.line(at.line, at.file);
  auto const line_begin = text.begin_of(at.file) +
                          static_cast<std::size_t>(line.data() - text.file_text(at.file).data());
  return {at, line, std::min(span.begin - line_begin, line.size()),
          std::min(std::max(span.end, span.begin) - line_begin, line.size())};
}

Spot spot_of(source::SourceText const& text, source::Span span) {
  auto const [at, line, begin, end] = span_in_line(text, span);
  std::size_t columns = 0;
  for (auto i = begin; i < end; ++columns)
    i += std::max<std::size_t>(source::code_point_at(line, i).length, 1);
  return {text.name(at.file), at.line, at.column, at.column + columns};
}

Remark remark_at(Subject const& subject, model::Place at, std::string words) {
  return {spot_of(subject.text, subject.map.span_of(at)), at, std::move(words)};
}

}  // namespace leat::render
