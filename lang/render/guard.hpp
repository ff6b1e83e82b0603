#pragma once
#include <string>
#include <vector>

#include "engine/judge.hpp"
#include "lang/render/level_picture.hpp"

// How long to wait before a change, and what it does to bodies that are inside: `leat guard`.
namespace leat::render {

struct GuardPart {
  Subject subject;
  Judgement const& judgement;
  // By threat, guard after guard: the junction in its example, before the change. Empty: not drawn.
  std::vector<Scene const*> sights;
  std::vector<std::string> places{};  // of a works: where what is judged stands
};

std::string guard_text(GuardPart const&, Look);

// leat-guard: `leat guard --as json`.
std::string guard_document(std::vector<GuardPart> const&);

}  // namespace leat::render
