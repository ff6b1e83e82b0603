#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/works/judge_works.hpp"
#include "lang/render/documents.hpp"

namespace leat::render {

// Another place in a works at which a part stands, so that what is found in the part is found there
// too: on the signals of that place.
struct FoundAgain {
  std::string place;
  std::string condition;             // when it shows there, as an expression
  std::optional<std::string> event;  // what changes then
  bool is_alike = true;              // the same condition and event as in the first place
};

// All but the first place, where it can come about. Cost: one statement of the condition, written
// once for each place.
std::vector<FoundAgain> found_again(JudgedWorks const&, works::Piece const&,
                                    findings::Finding const&);
// "second, third (when flush)", "fourth by change[2]": conditions and events are told where they
// are not those of the first place.
std::vector<std::string> also_words(std::vector<FoundAgain> const&);

}  // namespace leat::render
