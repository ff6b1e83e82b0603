#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// When a finding of a piece shows where one copy of it stands. For a region: in its rows, while all
// that the region does not depend on stands as built, for so it was looked for.
Function showing(WorksJudgement const&, Piece const&, Copy const&, findings::Finding const&);
// The same wherever the piece's part stands.
Function showing(WorksJudgement const&, Piece const&, findings::Finding const&);

// Whether it can come about at all: it shows in some combination that does, and what switches there
// can be switched. (With memory that is not asked.)
bool can_show(WorksJudgement const&, Piece const&, findings::Finding const&);

}  // namespace leat::works
