#include "lang/grammar/terminals.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

#include "lang/grammar/characters.hpp"
#include "lang/grammar/context.hpp"
#include "lang/grammar/fault.hpp"
#include "lang/grammar/words.hpp"
#include "lang/source/code_point.hpp"

namespace leat::grammar {

namespace {

// Ends a token at `end` and moves `at` past its gap.
void take(char const*& at, char const* end, Reading& reading, syntax::Word& word) {
  word.text.assign(at, end);
  word.span = reading.span(at, end);
  at = eat_gap(end, reading);
}

}  // namespace

void fail_ready(char const* at, Reading& reading, diagnostics::Diagnostic diagnostic) {
  reading.ready = std::move(diagnostic);
  throw Failure(at, "");
}

std::string in_quotes(std::string_view word) { return fmt::format("'{}'", word); }

bool read_keyword(char const*& at, char const* text, Reading& reading, syntax::Word& word) {
  std::string_view const wanted(text), rest(at, static_cast<std::size_t>(reading.end - at));
  bool const is_there = rest.starts_with(wanted) &&
                        (rest.size() == wanted.size() || !is_word_byte(rest[wanted.size()]));
  if (!is_there) {
    reading.miss(at, text);
    return false;
  }
  take(at, at + wanted.size(), reading, word);
  return true;
}

bool read_one_of(char const*& at, std::span<char const* const> words, Reading& reading,
                 syntax::Word& word) {
  return std::any_of(words.begin(), words.end(), [&](char const* candidate) {
    return read_keyword(at, candidate, reading, word);
  });
}

namespace {

void refuse_hyphen(char const* begin, char const* end, Reading& reading) {
  bool const is_hyphenated = reading.end - end >= 2 && *end == '-' && is_letter_byte(end[1]);
  if (!is_hyphenated) return;
  auto const found = found_at(begin, reading);
  fail_ready(end, reading,
             fault("malformed-name", fmt::format("'{}' cannot be a name", found),
                   reading.span(begin, begin + found.size()), "a name has no hyphens",
                   "Join its parts by '_'."));
}

// The end of a name that is no word of the language, or where it would begin.
char const* free_name_end(char const* at, Reading const& reading) {
  auto const* end = name_end(at, reading.end);
  return is_reserved({at, static_cast<std::size_t>(end - at)}) ? at : end;
}

// Whether the token before `at` ends there, no blank between.
bool is_attached(char const* at, Reading const& reading) { return reading.token_end(at) == at; }

}  // namespace

bool read_name(char const*& at, Reading& reading, syntax::Word& word) {
  auto const* end = free_name_end(at, reading);
  if (end == at) return false;
  refuse_hyphen(at, end, reading);
  reading.take_name(at, end);
  take(at, end, reading, word);
  return true;
}

bool read_number_name(char const*& at, Reading& reading, syntax::Word& word) {
  auto const* end = free_name_end(at, reading);
  if (end == at) return false;
  reading.take_name(at, end);
  take(at, end, reading, word);
  return true;
}

bool read_coordinate_name(char const*& at, Reading& reading, syntax::Word& word) {
  constexpr std::array<std::string_view, 4> following{"turned", "mirrored", "where", "with"};
  std::string_view const name(at, static_cast<std::size_t>(name_end(at, reading.end) - at));
  if (std::find(following.begin(), following.end(), name) != following.end()) return false;
  return read_number_name(at, reading, word);
}

bool read_dotted_part(char const*& at, Reading& reading, syntax::Word& word) {
  if (at == reading.end || *at != '.' || !is_attached(at, reading)) return false;
  auto const* end = free_name_end(at + 1, reading);
  if (end == at + 1) return false;
  refuse_hyphen(at + 1, end, reading);
  take(at, end, reading, word);
  return true;
}

bool read_bracket(char const*& at, Reading& reading, syntax::Word& word) {
  if (at == reading.end || *at != '[') return false;
  if (!is_attached(at, reading))
    fail_ready(at, reading,
               fault("malformed-name", "A number in brackets does not touch its name",
                     reading.span(at, at + 1), "this bracket belongs to the name before it",
                     "Write name and bracket without a blank, as in 'turn[3]'."));
  take(at, at + 1, reading, word);
  return true;
}

bool read_literal_index(char const*& at, Reading& reading, syntax::Word& word) {
  constexpr std::ptrdiff_t most_digits = 9;
  if (at == reading.end || *at != '[' || !is_attached(at, reading)) return false;
  auto const* first = at + 1;
  auto const* end = std::find_if_not(first, reading.end, is_digit);
  bool const is_plain = end != first && end - first <= most_digits &&
                        (*first != '0' || end - first == 1) && end != reading.end && *end == ']';
  if (is_plain) take(at, end + 1, reading, word);
  return is_plain;
}

bool read_finding_name(char const*& at, Reading& reading, syntax::Word& word) {
  auto const* end = free_name_end(at, reading);
  if (end == at) return false;
  while (reading.end - end >= 2 && *end == '-' && is_letter_byte(end[1]))
    end = name_end(end + 1, reading.end);
  take(at, end, reading, word);
  return true;
}

// Digits are gathered as long as their value fits; past that it is clamped and marked.
bool read_number(char const*& at, Reading& reading, syntax::Number& number) {
  constexpr long largest = 1'000'000'000;
  auto end = at;
  number = {};
  for (; end != reading.end && is_digit(*end); ++end) {
    number.value = number.value * 10 + (*end - '0');
    number.is_too_large |= number.value > largest;
    if (number.is_too_large) number.value = largest;
  }
  if (end == at || (end != reading.end && is_word_byte(*end))) return false;
  number.span = reading.span(at, end);
  at = eat_gap(end, reading);
  return true;
}

bool read_text(char const*& at, Reading& reading, syntax::Text& text) {
  if (at == reading.end || *at != '"') return false;
  text.text.clear();
  auto const stop = line_end(at, reading.end);
  auto end = at + 1;
  for (; end != stop && *end != '"'; ++end) {
    bool const is_escape = *end == '\\';
    if (is_escape && end + 1 != stop && (end[1] == '"' || end[1] == '\\')) {
      ++end;
    } else if (is_escape) {
      fail_ready(end, reading,
                 fault("unknown-escape",
                       "A backslash in a text stands only before '\"' or another backslash",
                       reading.span(end, end + 1), "this backslash means nothing",
                       "Write '\\\\' for a backslash."));
    } else if (*end == '\t') {
      fail_ready(end, reading,
                 fault("control-character", "A text holds a tab", reading.span(end, end + 1),
                       "a tab stands here", "Write blanks instead."));
    }
    text.text.push_back(*end);
  }
  if (end == stop)
    fail_ready(stop, reading,
               with_other(fault("unclosed-text", "A text does not end on its line",
                                reading.span(stop, stop), "a closing '\"' is missing here",
                                "Close it with '\"' on the same line."),
                          reading.span(at, at + 1), "the text begins here"));
  text.span = reading.span(at, end + 1);
  at = eat_gap(end + 1, reading);
  return true;
}

bool read_sign(char const*& at, std::string_view sign, Reading& reading, syntax::Word& word) {
  std::string_view const rest(at, static_cast<std::size_t>(reading.end - at));
  if (!rest.starts_with(sign)) return false;
  take(at, at + sign.size(), reading, word);
  return true;
}

// One character that fills one cell, standing alone.
bool read_glyph(char const*& at, Reading& reading, syntax::Word& word) {
  if (at == reading.end) return false;
  auto const* end = at + glyph_length(at, reading.end);
  auto const stands_alone = [&](char const* after) {
    return after == reading.end || is_blank(*after) || is_line_break(*after) || *after == '#';
  };
  auto const rest = std::string_view(at, static_cast<std::size_t>(end - at));
  auto const span = reading.span(at, end);
  if (auto const* reason = unfitness(source::code_point_at(rest, 0).value))
    fail_ready(end, reading,
               fault("unfit-mark", fmt::format("A character that {} cannot be a mark", reason),
                     span, fmt::format("this character {}", reason),
                     "Choose a visible character that is one cell wide, so that drawings "
                     "line up."));
  if (!stands_alone(end)) {
    while (!stands_alone(end)) ++end;
    fail_ready(end, reading,
               fault("long-mark",
                     fmt::format("{} is more than one character", quoted(found_at(at, reading))),
                     reading.span(at, end), "a mark is a single character",
                     "Begin the line with one character and a blank."));
  }
  take(at, end, reading, word);
  return true;
}

namespace {

[[noreturn]] void fail_row(char const* stop, Reading& reading, diagnostics::Listed name,
                           char const* headline, source::Span span, char const* label,
                           char const* remedy) {
  fail_ready(stop, reading, fault(name, headline, span, label, remedy));
}

}  // namespace

// The text between two bars on one line, as it is: what its glyphs mean is for the checks to say.
bool read_row(char const*& at, Reading& reading, syntax::Row& row) {
  if (at == reading.end || *at != '|') return false;
  auto const* stop = line_end(at, reading.end);
  auto const* bar = std::find(at + 1, stop, '|');
  if (bar == stop)
    fail_row(stop, reading, "open-row", "A row has no closing bar", reading.span(stop, stop),
             "a closing '|' is missing here", "Draw each row between two bars on one line: |....|");
  if (auto const* tab = std::find(at + 1, bar, '\t'); tab != bar)
    fail_row(stop, reading, "tab-in-row", "A row holds a tab", reading.span(tab, tab + 1),
             "a tab stands here", "Draw each cell with one mark; a tab has no width of its own.");
  row.text.assign(at + 1, bar);
  row.span = reading.span(at + 1, bar);
  auto const* after = std::find_if_not(bar + 1, stop, is_blank);
  if (after != stop && *after != '#' && *after != '}')
    fail_row(stop, reading, "text-after-row", "Something follows a row on its line",
             reading.span(after, after + found_at(after, reading).size()),
             "the line's end is expected here",
             "Draw one row a line; a remark after it begins with '#'.");
  at = eat_gap(bar + 1, reading);
  return true;
}

}  // namespace leat::grammar
