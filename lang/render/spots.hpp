#pragma once
#include <string>
#include <string_view>

#include "lang/render/subject.hpp"
#include "lang/render/told.hpp"

// Spans and cells as spots of a text.
namespace leat::render {

// Of what is alike in many places, so many are told beside the first.
inline constexpr std::size_t most_elsewhere = 20;

// A span's first line, and which bytes of it the span has.
struct SpanInLine {
  source::Position at;
  std::string_view line;
  std::size_t begin = 0, end = 0;
};
SpanInLine span_in_line(source::SourceText const&, source::Span);

// The part of a span that stands in its first line.
Spot spot_of(source::SourceText const&, source::Span);
Remark remark_at(Subject const&, model::Place, std::string words);

}  // namespace leat::render
