#include "lang/diagnostics/sink.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

namespace leat::diagnostics {

void Sink::report(Diagnostic diagnostic) {
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
