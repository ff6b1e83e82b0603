#include "lang/grammar/words.hpp"

#include <algorithm>
#include <array>

namespace leat::grammar {

namespace {

constexpr auto reserved = std::to_array<std::string_view>(
    {// in alphabetical order
     "above",  "accept",   "after",     "and",     "at",       "because",   "body",   "button",
     "clear",  "clock",    "else",      "every",   "expect",   "findings",  "finds",  "for",
     "from",   "in",       "include",   "inlet",   "junction", "latch",     "leat",   "level",
     "lever",  "marks",    "materials", "may",     "never",    "none",      "not",    "nothing",
     "number", "of",       "off",       "on",      "or",       "otherwise", "outlet", "outside",
     "plate",  "practice", "reaches",   "signals", "starts",   "table",     "toggle", "when",
     "wire",   "within",   "works",     "xor"});
static_assert(std::is_sorted(reserved.begin(), reserved.end()));

// By letter from a to z: where the words that begin with it begin, and where the last of them ends.
constexpr auto beginning = [] {
  std::array<std::size_t, 27> first{};
  for (std::size_t letter = 0; letter < first.size(); ++letter)
    while (first[letter] < reserved.size() &&
           static_cast<std::size_t>(reserved[first[letter]].front() - 'a') < letter)
      ++first[letter];
  return first;
}();

}  // namespace

std::vector<std::string> const& declaration_words() {
  static std::vector<std::string> const words{"signals", "materials", "marks",  "junction",
                                              "body",    "practice",  "accept", "expect",
                                              "works",   "include",   "number"};
  return words;
}

bool is_reserved(std::string_view word) {
  if (word.empty() || word.front() < 'a' || word.front() > 'z') return false;
  auto const letter = static_cast<std::size_t>(word.front() - 'a');
  auto const *first = reserved.data() + beginning[letter],
             *last = reserved.data() + beginning[letter + 1];
  return std::find(first, last, word) != last;
}

}  // namespace leat::grammar
