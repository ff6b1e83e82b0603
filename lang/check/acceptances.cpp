#include <fmt/format.h>

#include <map>
#include <tuple>

#include "lang/check/resolving.hpp"
#include "lang/diagnostics/catalogue.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::AcceptDeclaration;

void check_reason(Reading const& reading, AcceptDeclaration const& accept) {
  if (accept.reason.text.find_first_not_of(" \t") != std::string::npos) return;
  reading.sink.report({Listed("no-reason"),
                       fmt::format("'{}' is accepted without a reason", accept.finding.text),
                       {accept.reason.span, "nothing is said here", {}},
                       {},
                       "Say why the junction may have this finding."});
}

bool resolve_place(Reading const& reading, Sights const& sights, AcceptDeclaration const& accept,
                   Accepted& accepted) {
  if (!accept.place) return true;
  accepted.junction =
      find_junction(reading, sights, accept.place->junction, nullptr, accept.place->span);
  if (!accepted.junction) return false;
  accepted.place = find_place(reading, sights, *accepted.junction, *accept.place);
  return accepted.place.has_value();
}

// What two acceptances would have to share to be the same one.
using Key = std::tuple<std::size_t, model::FindingKind, std::optional<std::size_t>,
                       std::optional<model::Place>, std::string>;

void report_twice(Reading const& reading, AcceptDeclaration const& second,
                  AcceptDeclaration const& first) {
  reading.sink.report({Listed("accepted-twice"),
                       fmt::format("'{}' is accepted twice", second.finding.text),
                       {second.span, "the same finding is accepted here again", {}},
                       {{first.span, "first accepted here", {}}},
                       "Remove one of them."});
}

}  // namespace

std::vector<Accepted> read_acceptances(Reading const& reading, Sights const& sights) {
  std::vector<Accepted> found;
  std::map<Key, AcceptDeclaration const*> first;
  for (auto const* accept : all_of<AcceptDeclaration>(reading.document)) {
    check_reason(reading, *accept);
    Accepted accepted;
    accepted.file = reading.source.file_of(accept->span.begin);
    auto const kind = find_finding(reading, accept->finding);
    bool const has_place = resolve_place(reading, sights, *accept, accepted);
    if (!kind || !has_place) continue;
    accepted.kind = *kind;
    if (accept->condition) accepted.condition.when = &*accept->condition;
    auto const condition =
        accept->condition ? one_line(reading.source.text(accept->condition->span)) : std::string();
    auto const [at, is_new] = first.try_emplace(
        {accepted.file, *kind, accepted.junction, accepted.place, condition}, accept);
    if (!is_new) report_twice(reading, *accept, *at->second);
    accepted.reason = accept->reason.text;
    accepted.span = accept->span;
    found.push_back(std::move(accepted));
  }
  return found;
}

}  // namespace leat::check
