#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// When rows of a piece come about where one copy of it stands. For a region: while all that the
// region does not depend on stands as built, for so it was looked at.
Function showing(WorksJudgement const&, Piece const&, Copy const&, logic::RowSet const& rows);
// When a finding shows, wherever the piece's part stands.
Function showing(WorksJudgement const&, Piece const&, findings::Finding const&);

// Whether these rows come about at all: in some combination that does, and, where an event is
// named, from which that can be switched.
bool can_show(WorksJudgement const&, Piece const&, logic::RowSet const& rows,
              std::optional<model::SignalId> event);

}  // namespace leat::works
