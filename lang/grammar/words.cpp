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

}  // namespace

std::vector<std::string> const& declaration_words() {
  static std::vector<std::string> const words{"signals", "materials", "marks",  "junction",
                                              "body",    "practice",  "accept", "expect",
                                              "works",   "include",   "number"};
  return words;
}

bool is_reserved(std::string_view word) {
  return std::binary_search(reserved.begin(), reserved.end(), word);
}

}  // namespace leat::grammar
