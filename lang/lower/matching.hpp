#pragma once
#include <string>
#include <vector>

#include "engine/compare/matching.hpp"
#include "lang/source/source_map.hpp"

namespace leat::lower {

// A name before and what it is called after; a signal, an inlet, an outlet or a body.
struct Renaming {
  std::string before, after;
};

// What of two revisions is the same: what bears the same name, or has been told to. Expectations
// are the same where title and clause are alike word for word.
compare::Matching matched(source::SourceMap const& before, source::SourceMap const& after,
                          std::vector<Renaming> const&);

// Whether a renaming names something on both sides.
bool is_answered(Renaming const&, source::SourceMap const& before, source::SourceMap const& after);

}  // namespace leat::lower
