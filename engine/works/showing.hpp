#pragma once
#include <span>

#include "engine/works/judge_works.hpp"

namespace leat::works {

// Rows of a piece, the event that comes in them, and the inlets by which the bodies come to which
// something happens, told in the plant's ids as the part's first copy has them. Without them it
// speaks of what is there by itself. It must not outlive the finding that it is of.
struct Occasion {
  logic::RowSet const& rows;
  std::optional<model::SignalId> event;
  std::span<model::InletId const> inlets;
  std::span<model::ProfileId const> profiles;
  std::span<findings::Meeting const> meetings{};  // who comes when, where that is told
  bool counts_joins = true;  // false: only who enters from outside, whom no other island sends
};
Occasion occasion_of(findings::Finding const&);

// When it comes about where one copy of the piece stands: where an event is named, from where that
// can be switched; where inlets are, while bodies come to one of them.
Function showing(WorksJudgement const&, Piece const&, Copy const&, Occasion const&);
// The same wherever the piece's part stands.
Function showing(WorksJudgement const&, Piece const&, Occasion const&);

// Whether it comes about at all, in some combination that does.
bool can_show(WorksJudgement const&, Piece const&, Occasion const&);
// The occasion without its event, where that can be switched from some combination in any case: all
// come about, and nothing remembers. From which ones can be much to find out.
Occasion eased(WorksJudgement const&, Occasion);

}  // namespace leat::works
