#include <fmt/format.h>

#include "lang/grammar/fault.hpp"
#include "lang/grammar/parse.hpp"
#include "lang/grammar/rules.hpp"
#include "lang/source/soundness.hpp"

// The file as a whole: sound bytes, the edition, the declarations, and going on after a faulty one.
namespace leat::grammar {

namespace {

using diagnostics::Diagnostic;

constexpr long edition = 1;

struct declaration_tag;
constexpr x3::rule<declaration_tag, syntax::Declaration> declaration{"a declaration"};

// clang-format off
auto const declaration_def =
    signals[become]
  | materials[become]
  | marks[become]
  | junction[become]
  | works[become]
  | number_declaration[become]
  | include[become]
  | body[become]
  | practice[become]
  | accept[become]
  | table[become]
  | expect[become];
// clang-format on

BOOST_SPIRIT_DEFINE(declaration)

Diagnostic unsound(source::UnsoundPlace const& place, std::string_view text, std::size_t first) {
  source::Span const span{first + place.offset, first + place.offset + place.length};
  auto const count = place.count > 1 ? fmt::format(" ({} places)", place.count) : "";
  auto const byte = static_cast<unsigned char>(text[place.offset]);
  switch (place.kind) {
    case source::Unsoundness::too_large:
      return fault("text-too-large",
                   fmt::format("The file is larger than {} MiB and was not read",
                               source::largest_text >> 20),
                   span, fmt::format("the file has {} bytes", text.size()),
                   "Split the design into several files.");
    case source::Unsoundness::nul_byte:
      return fault("nul-byte", "The file holds zero bytes" + count, span, "a zero byte stands here",
                   "Save the file as plain text in UTF-8.");
    case source::Unsoundness::not_utf8:
      return fault("not-utf8", "The file is not UTF-8 text" + count, span,
                   fmt::format("the byte 0x{:02X} belongs to no character", byte),
                   "Save the file as plain text in UTF-8.");
    case source::Unsoundness::control_character:
      break;
  }
  return fault("control-character", "The file holds a control character" + count, span,
               byte == '\r' ? "a carriage return without a line feed stands here"
                            : "a control character stands here",
               "Remove it; only tabs and line ends are understood.");
}

void report_no_edition(source::Span span, Reading& reading) {
  reading.report(fault("edition-missing",
                       "The file does not say which edition of the language it is written in", span,
                       "'leat 1' is expected here", "Begin the file with the line: leat 1"));
}

// Reads `leat 1`. A file without it is read on; one of another edition is not.
bool read_edition(char const*& at, Reading& reading, syntax::Number& number) {
  auto const first = found_at(at, reading);
  auto const span = reading.span(at, at + first.size());
  syntax::Word word;
  if (!read_keyword(at, "leat", reading, word)) {
    report_no_edition(span, reading);
    if (at != reading.end && !nearly_begins_declaration(at, reading))
      at = construct_end(at, reading);
    return true;
  }
  bool const is_there = !reading.is_line_start(at) && read_number(at, reading, number);
  if (is_there && number.value == edition) return true;
  auto const written = reading.is_line_start(at) ? std::string_view() : found_at(at, reading);
  if (!is_there && written.empty()) {
    report_no_edition(word.span, reading);
    return true;
  }
  auto const shown = is_there ? number.span : reading.span(at, at + written.size());
  reading.report(fault(
      "edition-unknown", "The file is written in an edition of the language that is not understood",
      shown, "edition 1 is the only one understood", "Begin the file with the line: leat 1"));
  return false;
}

// A second edition line, or a repetition around declarations: one report, and it is passed over.
bool pass_over_misplaced(char const*& at, Reading& reading) {
  auto const begin = at;
  syntax::Word word;
  if (read_keyword(at, "for", reading, word)) {
    reading.report(fault("repetition-misplaced", "Whole declarations cannot be repeated by 'for'",
                         word.span, "no block is open here whose entries could be repeated",
                         "Let 'for' stand inside of 'signals', 'works' or 'expect'."));
    at = block_end(begin, reading);
    return true;
  }
  if (!read_keyword(at, "leat", reading, word)) return false;
  reading.report(fault("edition-misplaced", "The edition stands once, at the beginning of the file",
                       word.span, "it is said again here", "Remove this line."));
  at = construct_end(begin, reading);
  return true;
}

// One declaration, or the report of why there is none; either way `at` moves on.
void read_declaration(char const*& at, Reading& reading, syntax::Document& document) {
  auto const begin = at;
  auto const faults = reading.fault_count;
  reading.form = nullptr;
  if (pass_over_misplaced(at, reading)) return;
  syntax::Declaration read;
  try {
    auto const rule = x3::with<reading_tag>(reading)[declaration];
    if (!x3::parse(at, reading.end, rule, read)) {
      explain_declaration(begin, reading);
      at = next_declaration(begin, reading);
    } else if (reading.fault_count == faults) {
      document.declarations.push_back(std::move(read));
    }
  } catch (Failure const& failure) {
    explain(failure.where(), failure.which(), reading);
    at = next_declaration(std::max(reading.token_end(failure.where()), begin + 1), reading);
  }
}

}  // namespace

syntax::Document parse(source::SourceText const& source, diagnostics::Sink& sink,
                       std::size_t file) {
  syntax::Document document;
  auto const text = source.file_text(file);
  if (auto const place = source::find_unsoundness(text)) {
    sink.report(unsound(*place, text, source.begin_of(file)));
    return document;
  }
  Reading reading(text, source.begin_of(file), sink);
  auto const* at = eat_gap(reading.begin, reading);
  if (read_edition(at, reading, document.edition))
    while (!reading.is_at_end(at)) read_declaration(at, reading, document);
  document.comments = std::move(reading.comments);
  return document;
}

}  // namespace leat::grammar
