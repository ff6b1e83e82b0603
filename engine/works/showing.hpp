#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// Rows of a piece, and the event that comes in them, told in the plant's ids as the part's first
// copy has them; none: they speak of what is there by itself.
struct Occasion {
  logic::RowSet const& rows;
  std::optional<model::SignalId> event;
};

// When it comes about where one copy of the piece stands: where an event is named, from where that
// can be switched. For a region: while all that the region does not depend on stands as built, for
// so it was looked at.
Function showing(WorksJudgement const&, Piece const&, Copy const&, Occasion const&);
// When a finding shows, wherever the piece's part stands.
Function showing(WorksJudgement const&, Piece const&, findings::Finding const&);

// Whether it comes about at all, in some combination that does.
bool can_show(WorksJudgement const&, Piece const&, Occasion const&);

}  // namespace leat::works
