#pragma once
#include <string>
#include <vector>

#include "engine/judge.hpp"
#include "engine/works/wire_flips.hpp"
#include "lang/render/level_picture.hpp"

// How long to wait before a change, and what it does to bodies that are inside: `leat guard`.
namespace leat::render {

// Where a kind of island of a works stands.
struct GuardPlace {
  std::string name;
  // By guard: the changes of inputs that bring it about there.
  std::vector<std::vector<works::Change>> flips;
};

struct GuardPart {
  Subject subject;
  Judgement const& judgement;
  // By threat, guard after guard: the junction in its example, before the change. Empty: not drawn.
  std::vector<Scene const*> sights;
  std::vector<GuardPlace> places{};  // of a works: where what is judged stands, first copy first
};

std::string guard_text(GuardPart const&, Look);

// leat-guard: `leat guard --as json`.
std::string guard_document(std::vector<GuardPart> const&);

}  // namespace leat::render
