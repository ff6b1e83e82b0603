#pragma once
#include "lang/render/documents.hpp"
#include "lang/render/page/page.hpp"

// What was found and what was expected, in the words of a page.
namespace leat::render {

std::vector<PageNote> notes_of(Subject const&, Judgement const&);
std::vector<PageNote> notes_of(JudgedWorks const&);
std::vector<PageClaim> claims_of(Subject const&, Judgement const&);
std::vector<PageClaim> claims_of(JudgedWorks const&);

}  // namespace leat::render
