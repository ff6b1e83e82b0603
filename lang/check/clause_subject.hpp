#pragma once
#include "lang/check/names.hpp"

namespace leat::check {

// Whom a clause speaks of; either may be missing (then: every one).
struct ClauseSubject {
  syntax::Word const* body = nullptr;
  syntax::Word const* inlet = nullptr;
};

// Whether no inlet may be called so.
inline bool is_body(std::string_view name, Names const& names) {
  return names.bodies.find(name) || name == built_in_body;
}

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
  return is_body(subject->text, names) ? ClauseSubject{subject, nullptr}
                                       : ClauseSubject{nullptr, subject};
}

}  // namespace leat::check
