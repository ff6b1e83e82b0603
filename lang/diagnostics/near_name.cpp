#include "lang/diagnostics/near_name.hpp"

#include <algorithm>
#include <cstdlib>

#include "lang/source/code_point.hpp"

namespace leat::diagnostics {

namespace {

// Longer words are compared only as being equal or not: nobody mistypes a word of this length by
// name.
constexpr std::size_t longest_word = 64;

std::u32string letters(std::string_view word) {
  std::u32string points;
  for (std::size_t at = 0; at < word.size() && points.size() <= longest_word;) {
    auto const point = source::code_point_at(word, at);
    bool const is_capital = point.value >= 'A' && point.value <= 'Z';
    points.push_back(is_capital ? point.value + ('a' - 'A') : point.value);
    at += std::max<std::size_t>(1, point.length);
  }
  return points;
}

// Edits that are still "close" for a word of this length. Two letters have no neighbours worth
// naming.
std::size_t tolerance(std::size_t length) {
  if (length <= 2) return 0;
  return length <= 7 ? 1 : 2;
}

// Optimal string alignment (Damerau 1964, restricted: no pair is edited twice): one row of the
// table a letter, three rows alive. Invariant: row[j] is the least cost of turning the letters so
// far into the first j of `to`. A row whose least entry passes the limit ends the search. Cost:
// product of the lengths, which are bounded.
std::size_t distance(std::u32string_view from, std::u32string_view to, std::size_t limit) {
  auto const longer = std::max(from.size(), to.size()), shorter = std::min(from.size(), to.size());
  if (longer - shorter > limit || longer > longest_word) return from == to ? 0 : limit + 1;
  std::vector<std::size_t> before(to.size() + 1), row(to.size() + 1), next(to.size() + 1);
  for (std::size_t j = 0; j <= to.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= from.size(); ++i) {
    next[0] = i;
    for (std::size_t j = 1; j <= to.size(); ++j) {
      auto const replaced = row[j - 1] + (from[i - 1] == to[j - 1] ? 0 : 1);
      next[j] = std::min({replaced, row[j] + 1, next[j - 1] + 1});
      bool const is_swap = i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1];
      if (is_swap) next[j] = std::min(next[j], before[j - 2] + 1);
    }
    if (*std::min_element(next.begin(), next.end()) > limit) return limit + 1;
    before.swap(row);
    row.swap(next);
  }
  return std::min(row.back(), limit + 1);
}

}  // namespace

std::size_t edit_distance(std::string_view from, std::string_view to, std::size_t limit) {
  return distance(letters(from), letters(to), limit);
}

std::optional<std::string> near_name(std::string_view written,
                                     std::vector<std::string> const& known) {
  auto const word = letters(written);
  std::optional<std::string> nearest;
  auto best = tolerance(word.size()) + 1;
  bool is_tied = false;
  for (auto const& name : known) {
    auto const candidate = letters(name);
    auto const allowed = std::min(tolerance(word.size()), tolerance(candidate.size()));
    auto const edits = distance(word, candidate, std::min(best, allowed));
    if (edits > allowed || edits > best) continue;
    is_tied = edits == best && nearest && *nearest != name;
    if (edits < best) nearest = name;
    best = edits;
  }
  return is_tied ? std::nullopt : nearest;
}

}  // namespace leat::diagnostics
