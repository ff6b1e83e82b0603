#pragma once
#include "lang/check/names.hpp"

namespace leat::check {

// Whom a clause speaks of; either may be missing (then: every one).
struct ClauseSubject {
  syntax::Word const* body = nullptr;
  syntax::Word const* inlet = nullptr;
};

// In `NAME never STATE` and `NAME clear within TIME` the one name may be a body's or an inlet's. No
// inlet may have a body's name, so a name that no mark gives to an inlet, and that is a body's,
// speaks of the body.
inline ClauseSubject subject_of(syntax::Clause const& clause, Names const& names) {
  auto const* body = clause.body ? &*clause.body : nullptr;
  auto const* subject = clause.subject ? &*clause.subject : nullptr;
  bool const may_name_body =
      clause.kind == syntax::ClauseKind::never_state || clause.kind == syntax::ClauseKind::clears;
  if (!may_name_body || body || !subject || names.judged().inlets.find(subject->text) != nullptr)
    return {body, subject};
  bool const is_body = names.bodies.find(subject->text) || subject->text == built_in_body;
  return is_body ? ClauseSubject{subject, nullptr} : ClauseSubject{nullptr, subject};
}

}  // namespace leat::check
