#pragma once
#include <string>
#include <vector>

#include "lang/render/documents.hpp"
#include "lang/render/look.hpp"
#include "lang/render/told.hpp"

// What is not known of a works, why, and what to do about it.
namespace leat::render {

// Why an expectation has its verdict where no example is shown, and what to do about it.
struct WhyOpen {
  std::string why, remedy;
};
WhyOpen why_open(JudgedWorks const&, std::size_t expectation);

// Why it is not known of the works as a whole whether it is all right.
std::vector<ToldOpen> open_questions(JudgedWorks const&);
// The same for the report: all that is too much, may be barred, or was not looked for.
std::string undecided_text(JudgedWorks const&, Look);

}  // namespace leat::render
