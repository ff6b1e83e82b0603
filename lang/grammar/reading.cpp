#include "lang/grammar/reading.hpp"

#include <algorithm>
#include <cstring>

#include "lang/diagnostics/near_name.hpp"
#include "lang/grammar/characters.hpp"
#include "lang/grammar/words.hpp"

namespace leat::grammar {

bool Reading::is_line_start(char const* at) const {
  return at == begin || (at == gap_end && (is_gap_broken || gap_begin == begin));
}

void Reading::miss(char const* at, char const* word) {
  if (at != missed_at) {
    missed_at = at;
    missed.clear();
  }
  missed.push_back(word);
}

void Reading::take_name(char const* from, char const* to) {
  name = {from, static_cast<std::size_t>(to - from)};
  name_missed.clear();
  if (missed_at == from) name_missed.swap(missed);
}

void Reading::report(diagnostics::Diagnostic diagnostic) {
  ++fault_count;
  sink.report(std::move(diagnostic));
}

bool Reading::counts_only() {
  if (!sink.is_full()) return false;
  ++fault_count;
  sink.leave_out();
  return true;
}

char const* eat_gap(char const* at, Reading& reading) {
  auto const begin = at;
  reading.is_gap_broken = false;
  for (; at != reading.end; ++at) {
    if (*at == '#') {
      auto const from = at;
      at = line_end(at, reading.end);
      auto const span = reading.span(from, at);
      bool const is_new =
          reading.comments.empty() || reading.comments.back().span.begin < span.begin;
      if (is_new) reading.comments.push_back({span});
      if (at == reading.end) break;
    }
    if (!is_blank(*at) && !is_line_break(*at)) break;
    reading.is_gap_broken |= *at == '\n';
  }
  reading.gap_begin = begin;
  reading.gap_end = at;
  return at;
}

// A word with what clings to it, a whole number, a quoted text with its quotes, or one character.
// Long finds are cut: they are only quoted.
std::string_view found_at(char const* at, Reading const& reading) {
  constexpr std::ptrdiff_t most_bytes = 48;
  if (at == reading.end) return {};
  auto const cut = reading.end - at > most_bytes ? at + most_bytes : reading.end;
  auto end = at;
  if (*at == '"') {
    end = std::find_if(at + 1, cut, [](char byte) { return byte == '"' || is_line_break(byte); });
    if (end != cut && *end == '"') ++end;
  } else {
    if (*at == '-' && at + 1 != cut) ++end;
    while (end < cut && is_word_byte(*end)) ++end;
    while (end < cut && *end == '-' && end + 1 != cut && is_word_byte(end[1]))
      for (++end; end < cut && is_word_byte(*end);) ++end;
  }
  while (end != reading.end && end > at && is_continuation(*end)) --end;
  if (end == at) end = at + glyph_length(at, reading.end);
  return {at, static_cast<std::size_t>(end - at)};
}

namespace {

std::string_view word_at(char const* at, Reading const& reading) {
  auto end = at;
  while (end != reading.end && is_word_byte(*end)) ++end;
  return {at, static_cast<std::size_t>(end - at)};
}

bool is_among(std::string_view word, std::vector<std::string> const& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// Walks over text that is not understood: line by line, comments and quoted texts as units,
// counting braces.
class Skipper {
 public:
  Skipper(char const* at, Reading& reading) : at_(at), reading_(reading) {}

  char const* at() const { return at_; }
  int depth() const { return depth_; }
  bool is_at_end() const { return at_ == reading_.end; }
  // Whether the last step came to the first token of a line.
  bool is_line_start() const { return is_line_start_; }

  void step() {
    char const byte = *at_;
    if (byte == '{') ++depth_;
    if (byte == '}') --depth_;
    if (byte == '"') {
      skip_text();
    } else if (is_word_byte(byte)) {
      while (at_ != reading_.end && is_word_byte(*at_)) ++at_;
    } else if (!is_blank(byte) && !is_line_break(byte) && byte != '#') {
      ++at_;
    }
    is_line_start_ = false;
    pass_gap();
  }

  void pass_gap() {
    at_ = eat_gap(at_, reading_);
    is_line_start_ |= reading_.is_gap_broken;
  }

 private:
  void skip_text() {
    ++at_;
    while (at_ != reading_.end && *at_ != '"' && !is_line_break(*at_)) ++at_;
    if (at_ != reading_.end && *at_ == '"') ++at_;
  }

  char const* at_;
  Reading& reading_;
  int depth_ = 0;
  bool is_line_start_ = false;
};

}  // namespace

bool begins_declaration(char const* at, Reading const& reading) {
  return is_among(word_at(at, reading), declaration_words());
}

namespace {

// `number` also stands inside of blocks, so it says nothing about where a faulty one ends.
bool begins_only_declarations(char const* at, Reading const& reading) {
  return begins_declaration(at, reading) && word_at(at, reading) != "number";
}

}  // namespace

bool nearly_begins_declaration(char const* at, Reading const& reading) {
  if (at == reading.end || !is_word_byte(*at)) return false;
  auto const word = word_at(at, reading);
  return is_among(word, declaration_words()) || word == "leat" ||
         diagnostics::near_name(word, declaration_words()).has_value();
}

bool ends_block(char const* at, Entries const& entries, Reading const& reading) {
  if (!is_word_byte(*at) || !reading.is_line_start(at)) return false;
  if (is_among(word_at(at, reading), entries.openers)) return false;
  return begins_declaration(at, reading) || is_among(word_at(at, reading), entries.enders);
}

// Inner blocks are passed over whole. A line with an opener counts also when the opener is
// misspelt, so that its own fault is reported too.
char const* next_entry(char const* at, Entries const& entries, Reading& reading) {
  Skipper skipper(at, reading);
  skipper.pass_gap();
  auto const is_next = [&] {
    if (ends_block(skipper.at(), entries, reading)) return true;
    if (skipper.depth() > 0) return false;
    auto const last = reading.token_end(skipper.at())[-1];
    if (entries.joiners.find(last) != std::string_view::npos) return false;
    auto const word = word_at(skipper.at(), reading);
    return entries.openers.empty() || is_among(word, entries.openers) ||
           diagnostics::near_name(word, entries.openers).has_value();
  };
  while (!skipper.is_at_end()) {
    if (*skipper.at() == '}' && skipper.depth() <= 0) break;
    if (skipper.is_line_start() && is_next()) break;
    skipper.step();
  }
  return skipper.at();
}

// A declaration's word at the beginning of a line always counts; after a block was passed over, so
// does one that is misspelt or stands on the same line.
char const* next_declaration(char const* at, Reading& reading) {
  Skipper skipper(at, reading);
  skipper.pass_gap();
  bool has_passed_block = false;
  while (!skipper.is_at_end()) {
    bool const is_outside = skipper.depth() <= 0;
    bool const is_next = is_outside ? begins_declaration(skipper.at(), reading)
                                    : begins_only_declarations(skipper.at(), reading);
    if (skipper.is_line_start() && is_next) break;
    if (has_passed_block && is_outside && nearly_begins_declaration(skipper.at(), reading)) break;
    auto const depth = skipper.depth();
    skipper.step();
    has_passed_block = skipper.depth() < depth || (has_passed_block && skipper.depth() == depth);
  }
  return skipper.at();
}

namespace {

char const* end_of(char const* at, bool may_hold_declarations, Reading& reading) {
  Skipper skipper(at, reading);
  int deepest = 0;
  while (!skipper.is_at_end()) {
    skipper.step();
    deepest = std::max(deepest, skipper.depth());
    if (deepest > 0 && skipper.depth() <= 0) break;
    if (!skipper.is_line_start() || skipper.is_at_end()) continue;
    if (deepest == 0 && *skipper.at() != '{') break;
    if (!may_hold_declarations && begins_only_declarations(skipper.at(), reading)) break;
  }
  return skipper.at();
}

}  // namespace

char const* construct_end(char const* at, Reading& reading) { return end_of(at, false, reading); }

char const* block_end(char const* at, Reading& reading) { return end_of(at, true, reading); }

}  // namespace leat::grammar
