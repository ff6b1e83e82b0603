#pragma once
#include "engine/model/design.hpp"
#include "lang/source/source_map.hpp"
#include "lang/source/source_text.hpp"

namespace leat::render {

// The junction that is spoken of: its design, the words that belong to its ids, and its text.
struct Subject {
  model::Design const& design;
  source::SourceMap const& map;
  source::SourceText const& text;
  bool is_alone = true;  // the only junction of its text, so that it need not be named
};

}  // namespace leat::render
