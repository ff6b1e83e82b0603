#include "lang/diagnostics/sink.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

namespace leat::diagnostics {

namespace {

// A loop, or a drawing that several places share, brings the same words before a check again and
// again. One kind of fault at the same words has one cause, so it is told once. What is missing
// stands at no word.
bool have_one_cause(Diagnostic const& a, Diagnostic const& b) {
  return a.name == b.name && a.primary.span == b.primary.span &&
         a.primary.span.begin != a.primary.span.end;
}

}  // namespace

void Sink::report(Diagnostic diagnostic) {
  bool const is_told = std::any_of(reports_.begin(), reports_.end(), [&](auto const& told) {
    return have_one_cause(told, diagnostic);
  });
  if (is_told) return;
  if (is_full())
    ++left_out_;
  else
    reports_.push_back(std::move(diagnostic));
}

std::vector<Diagnostic> Sink::sorted() const {
  auto ordered = reports_;
  std::stable_sort(ordered.begin(), ordered.end(), [](Diagnostic const& a, Diagnostic const& b) {
    return std::tie(a.primary.span.begin, a.primary.span.end, a.name) <
           std::tie(b.primary.span.begin, b.primary.span.end, b.name);
  });
  return ordered;
}

}  // namespace leat::diagnostics
