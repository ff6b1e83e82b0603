#include "lang/grammar/words.hpp"

#include <algorithm>
#include <array>

namespace leat::grammar {

namespace {

constexpr std::array<std::string_view, 53> reserved{
    // declarations and their parts
    "leat", "signals", "materials", "marks", "junction", "works", "body", "practice", "accept",
    "expect", "table", "include", "number", "for", "level", "outside",
    // signals and expressions
    "lever", "button", "plate", "wire", "latch", "toggle", "clock", "on", "off", "starts", "after",
    "every", "and", "or", "xor", "not",
    // marks
    "inlet", "outlet", "when", "else", "in",
    // acceptances and expectations
    "at", "because", "of", "from", "reaches", "may", "never", "nothing", "otherwise", "findings",
    "finds", "none", "above", "clear", "within"};

}  // namespace

std::vector<std::string> const& declaration_words() {
  static std::vector<std::string> const words{"signals", "materials", "marks",  "junction",
                                              "body",    "practice",  "accept", "expect",
                                              "works",   "include",   "number"};
  return words;
}

bool is_reserved(std::string_view word) {
  return std::find(reserved.begin(), reserved.end(), word) != reserved.end();
}

}  // namespace leat::grammar
