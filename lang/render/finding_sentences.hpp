#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "engine/findings/finding.hpp"
#include "lang/render/subject.hpp"

namespace leat::render {

// What is said of a finding: the headline stands alone, the reason says how it comes about, the
// remedy what to do next.
struct FindingSentences {
  std::string headline, reason, remedy;
};

FindingSentences sentences_of(Subject const&, findings::Finding const&);

// Where in the text a finding is shown: the mark of its first cell, else the declaration of its
// signal, outlet, inlet or acceptance, else the junction.
source::Span span_of(Subject const&, findings::Finding const&);

// The findings in the order in which they are told, as indices: worst first, and among equals an
// outlet that is never reached after what may be the cause of it.
std::vector<std::size_t> telling_order(std::vector<findings::Finding> const&);

}  // namespace leat::render
