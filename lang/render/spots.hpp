#pragma once
#include <string>

#include "lang/render/subject.hpp"
#include "lang/render/told.hpp"

// Spans and cells as spots of a text.
namespace leat::render {

// Of what is alike in many places, so many are told beside the first.
inline constexpr std::size_t most_elsewhere = 20;

// The part of a span that stands in its first row.
Spot spot_of(source::SourceText const&, source::Span);
Remark remark_at(Subject const&, model::Place, std::string words);

}  // namespace leat::render
