#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "lang/diagnostics/diagnostic.hpp"
#include "lang/diagnostics/sink.hpp"
#include "lang/syntax/document.hpp"

// What the grammar remembers while it reads one text. There is no Spirit in it: the terminals and
// the explanation of faults work on it directly.
namespace leat::grammar {

// How a construct is called and written; quoted to a reader who wrote it otherwise.
struct Form {
  char const* what;   // "button"
  char const* shape;  // "button NAME for 20 ticks"
};

// A block's entries. After a faulty one, reading goes on at a line that begins with an opener
// (none: at any line that the one before does not carry on to by ending with a joiner); a line that
// begins with an ender belongs to the block around.
struct Entries {
  char const* what;      // "signal"
  char const* expected;  // "'lever', 'button', ..."
  std::vector<std::string> openers, enders;
  bool is_one_per_line;
  char const* remedy;  // where no word is close
  std::string_view joiners{};
};

struct Reading {
  // `first` is the offset of the text's first byte.
  Reading(std::string_view all, std::size_t first, diagnostics::Sink& reports)
      : begin(all.data()),
        end(all.data() + all.size()),
        gap_begin(begin),
        gap_end(begin),
        offset(first),
        sink(reports) {}

  source::Span span(char const* from, char const* to) const {
    return {offset + static_cast<std::size_t>(from - begin),
            offset + static_cast<std::size_t>(to - begin)};
  }
  // Where the last token before `at` ended; `at` itself when no gap lies between.
  char const* token_end(char const* at) const { return at == gap_end ? gap_begin : at; }
  // Whether `at` is the first token of its line (or of the text).
  bool is_line_start(char const* at) const;
  // Notes that `word` was looked for at `at` and not found: what a misspelt word is compared with.
  void miss(char const* at, char const* word);
  // Notes that a name was taken from `from` to `to`: it may be one of the words just missed,
  // misspelt.
  void take_name(char const* from, char const* to);
  void report(diagnostics::Diagnostic);
  // Whether the sink has all the reports it keeps; then the fault is counted, and needs no words.
  bool counts_only();
  // Whether reading goes on.
  bool is_at_end(char const* at) const { return at == end || sink.has_enough(); }

  char const* const begin;
  char const* const end;
  char const* gap_begin;  // the last gap eaten: blanks, line ends, comments
  char const* gap_end;
  bool is_gap_broken = false;  // whether a line ends in it
  std::size_t const offset;  // of `begin` among all files
  diagnostics::Sink& sink;
  std::size_t fault_count = 0;
  Form const* form = nullptr;       // of the construct being read
  std::vector<char const*> missed;  // words looked for at `missed_at`
  char const* missed_at = nullptr;
  std::string_view name;  // the last name taken, and the words missed there
  std::vector<char const*> name_missed;
  int depth = 0;                                 // of nested expressions and repetitions
  int steps = 0;                                 // of the number being read
  char const* unclosed_at = nullptr;             // where an unclosed block was reported already
  std::optional<diagnostics::Diagnostic> ready;  // explains the failure that is under way
  std::vector<syntax::Comment> comments;
};

// ---- gaps ----

// The end of the gap that begins at `at`. Records comments.
char const* eat_gap(char const* at, Reading&);

// ---- looking at the text ----

// The word, number, text or single character at `at`, as a message quotes it.
std::string_view found_at(char const* at, Reading const&);
// A find between quotes; what cannot be seen is spelt out.
std::string quoted(std::string_view found);
// Whether a word that begins a declaration stands at `at`; the second also takes a misspelt one.
bool begins_declaration(char const* at, Reading const&);
bool nearly_begins_declaration(char const* at, Reading const&);
// Whether the block of these entries must have ended before `at`, brace or not.
bool ends_block(char const* at, Entries const&, Reading const&);

// ---- faults ----

// Turns a failed expectation into a diagnostic: `wanted` was expected at `where`.
void explain(char const* where, std::string const& wanted, Reading&);
// Something at `at` begins no entry of the block.
void explain_entry(char const* at, Entries const&, Reading&);
// Something at `at` follows a complete entry on its line.
void explain_crowded(char const* at, Entries const&, Reading&);
// Something at `at` begins no declaration.
void explain_declaration(char const* at, Reading&);
// A block that was opened at `open` does not end where `at` is. Once for all blocks around that
// place.
void explain_unclosed(char const* open, char const* at, Reading&);

// ---- recovery ----

// Where the next entry of a block begins after a fault at `at`: an opener on a new line, the
// block's closing brace, the next declaration, or the text's end.
char const* next_entry(char const* at, Entries const&, Reading&);
// Where the next declaration begins after a fault at `at`.
char const* next_declaration(char const* at, Reading&);
// The end of what begins at `at`: the line, or the block if one opens on that line.
// A declaration's word at the beginning of a line ends it too, but not for the second.
char const* construct_end(char const* at, Reading&);
char const* block_end(char const* at, Reading&);

}  // namespace leat::grammar
