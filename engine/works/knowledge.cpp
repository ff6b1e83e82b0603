#include "engine/works/knowledge.hpp"

#include <algorithm>

namespace leat::works {

namespace {

template <class Test>
bool all_decided(WorksJudgement const& judged, Test test) {
  return std::all_of(judged.parts.begin(), judged.parts.end(),
                     [&](Judgement const& part) { return !part.is_decided || test(part); });
}

bool is_of_history(model::FindingKind kind) {
  return kind == model::FindingKind::remembering_water ||
         kind == model::FindingKind::formed_source || kind == model::FindingKind::restless_water;
}

}  // namespace

bool is_history_known(WorksJudgement const& judged) {
  return all_decided(judged, [](auto const& part) { return part.histories.is_followed; });
}

bool is_switching_known(WorksJudgement const& judged) {
  return all_decided(judged, [](auto const& part) { return part.switchings.is_complete; });
}

bool do_waters_rest(WorksJudgement const& judged) {
  return all_decided(judged, [](auto const& part) { return explore::do_rest(part.histories); });
}

bool was_looked_for(model::FindingKind kind, Judgement const& judged) {
  if (!judged.is_decided) return false;
  if (model::is_of_switching(kind)) return judged.switchings.is_complete;
  return !is_of_history(kind) || judged.histories.is_followed;
}

bool was_looked_for(model::FindingKind kind, WorksJudgement const& judged) {
  auto const is_among = [&](std::vector<model::FindingKind> const& kinds) {
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
  };
  bool const is_left_out = is_among(judged.kinds_left_out) || is_among(judged.kinds_in_doubt);
  // It is also asked while the judgement is made, before that says itself that the diagram ran out.
  bool const has_run_out = judged.conditions->diagram().has_run_out();
  if (is_left_out || has_run_out || is_incomplete(judged)) return false;
  // Of regions only bodies inside while cells change are not looked at; else it is left out.
  if (model::is_of_switching(kind) && !are_findings_complete(judged)) return false;
  return all_decided(judged, [&](auto const& part) { return was_looked_for(kind, part); });
}

std::vector<model::FindingKind> kinds_left_out(WorksJudgement const& judged) {
  std::vector<model::FindingKind> kinds;
  for (auto kind : judged.kinds_left_out) findings::insert_sorted(kinds, kind);
  return kinds;
}

}  // namespace leat::works
