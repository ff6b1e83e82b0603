#include <fmt/format.h>

#include <algorithm>

#include "lang/diagnostics/near_name.hpp"
#include "lang/grammar/characters.hpp"
#include "lang/grammar/fault.hpp"
#include "lang/grammar/reading.hpp"
#include "lang/grammar/words.hpp"
#include "lang/source/code_point.hpp"

namespace leat::grammar {

namespace {

using diagnostics::Diagnostic;

source::Span span_of(std::string_view found, Reading const& reading) {
  return reading.span(found.data(), found.data() + found.size());
}

std::string form_remedy(Reading const& reading) {
  if (reading.form == nullptr) return {};
  auto const article = std::string_view("aeiou").find(reading.form->what[0]);
  return fmt::format("{} {} is written: {}", article == std::string_view::npos ? "A" : "An",
                     reading.form->what, reading.form->shape);
}

// A word that was looked for where `found` stands, and that is close to it.
std::string meant(std::string_view found, char const* at, Reading const& reading,
                  std::vector<std::string> also = {}) {
  if (reading.missed_at == at)
    also.insert(also.end(), reading.missed.begin(), reading.missed.end());
  auto const near = diagnostics::near_name(found, also);
  return near ? fmt::format("Perhaps '{}' is meant.", *near) : std::string();
}

// What stands before `where` may be a word of the language, misspelt, that was taken for a name.
// Only where the thing at `where` itself is close to nothing.
std::optional<Diagnostic> misspelt_before(char const* where, Reading const& reading) {
  auto const& name = reading.name;
  bool const is_just_before =
      !name.empty() && reading.token_end(where) == name.data() + name.size();
  if (!is_just_before || reading.name_missed.empty()) return std::nullopt;
  if (where != reading.end && !meant(found_at(where, reading), where, reading).empty())
    return std::nullopt;
  std::vector<std::string> const words(reading.name_missed.begin(), reading.name_missed.end());
  auto const near = diagnostics::near_name(name, words);
  if (!near) return std::nullopt;
  return fault("misspelt-word", fmt::format("{} is not understood here", quoted(name)),
               span_of(name, reading), "this may be a misspelt word",
               fmt::format("Perhaps '{}' is meant.", *near));
}

std::string first_of(std::string first, std::string second) {
  return first.empty() ? std::move(second) : std::move(first);
}

Diagnostic cut_short(char const* where, std::string const& wanted, Reading const& reading) {
  auto const* end = reading.token_end(where);
  auto const what = reading.form != nullptr ? reading.form->what : "file";
  return fault("cut-short", fmt::format("The {} is cut short: {} is missing", what, wanted),
               reading.span(end, end), fmt::format("{} is expected here", wanted),
               form_remedy(reading));
}

// A name was expected and something is there that its writer took for one.
std::optional<Diagnostic> name_fault(std::string_view found, Reading const& reading) {
  auto const span = span_of(found, reading);
  if (is_reserved(found))
    return fault("reserved-name", fmt::format("{} cannot be a name", quoted(found)), span,
                 "this is a word of the language",
                 "Choose another name; adding a letter or '_' is enough.");
  bool const has_letters = std::any_of(found.begin(), found.end(), is_letter_byte);
  if (is_digit(found[0]) && has_letters)
    return fault("malformed-name", fmt::format("{} cannot be a name", quoted(found)), span,
                 "a name does not begin with a digit", "Begin the name with a letter or '_'.");
  return std::nullopt;
}

Diagnostic out_of_place(char const* where, std::string const& wanted, Reading const& reading) {
  auto const found = found_at(where, reading);
  bool const wants_name = wanted.find("name") != std::string::npos || wanted == "a material";
  if (wants_name)
    if (auto fault = name_fault(found, reading)) return *fault;
  auto const what = reading.form != nullptr ? fmt::format(" in the {}", reading.form->what) : "";
  return fault("out-of-place",
               fmt::format("{} stands where {} is expected{}", quoted(found), wanted, what),
               span_of(found, reading), fmt::format("{} is expected here", wanted),
               first_of(meant(found, where, reading), form_remedy(reading)));
}

// Whether nothing is left to say about a failure: it is only counted, or a misspelt word before it
// tells the cause.
bool is_told(char const* at, Reading& reading) {
  if (reading.counts_only()) return true;
  auto misspelt = misspelt_before(at, reading);
  if (misspelt) reading.report(std::move(*misspelt));
  return misspelt.has_value();
}

}  // namespace

std::string quoted(std::string_view found) {
  std::string shown;
  for (std::size_t at = 0; at < found.size();) {
    auto const point = source::code_point_at(found, at);
    auto const length = std::max<std::size_t>(1, point.length);
    if (is_visible(point.value))
      shown += found.substr(at, length);
    else
      shown += fmt::format("U+{:04X}", static_cast<unsigned>(point.value));
    at += length;
  }
  return found.starts_with('"') ? shown : fmt::format("'{}'", shown);
}

// A failure on a later line than the last token is a piece missing at that token's end; anything
// else is something in the wrong place.
void explain(char const* where, std::string const& wanted, Reading& reading) {
  if (reading.ready && reading.counts_only()) {
    reading.ready.reset();
    return;
  }
  if (reading.ready) {
    auto ready = std::move(*reading.ready);
    reading.ready.reset();
    reading.report(std::move(ready));
    return;
  }
  if (wanted.empty()) {
    ++reading.fault_count;
    return;
  }
  if (is_told(where, reading)) return;
  bool const is_missing = where == reading.end || *where == '}' || reading.is_line_start(where);
  reading.report(is_missing ? cut_short(where, wanted, reading)
                            : out_of_place(where, wanted, reading));
}

// On a line of its own it is taken for an entry, behind something for a part of that.
void explain_entry(char const* at, Entries const& entries, Reading& reading) {
  if (is_told(at, reading)) return;
  auto const found = found_at(at, reading);
  auto const form = reading.is_line_start(at) ? std::string() : form_remedy(reading);
  reading.report(
      fault("unknown-entry", fmt::format("{} does not begin a {}", quoted(found), entries.what),
            span_of(found, reading), fmt::format("{} or '}}' is expected here", entries.expected),
            first_of(meant(found, at, reading, entries.openers), first_of(form, entries.remedy))));
}

void explain_crowded(char const* at, Entries const& entries, Reading& reading) {
  if (is_told(at, reading)) return;
  auto const found = found_at(at, reading);
  reading.report(
      fault("crowded-line",
            fmt::format("{} follows a {} that is already complete", quoted(found), entries.what),
            span_of(found, reading), "the line's end is expected here",
            first_of(meant(found, at, reading),
                     fmt::format("Begin each {} on a line of its own.", entries.what))));
}

void explain_declaration(char const* at, Reading& reading) {
  if (reading.counts_only()) return;
  auto const found = found_at(at, reading);
  if (*at == '}') {
    reading.report(fault("stray-brace", "This '}' closes nothing", reading.span(at, at + 1),
                         "no block is open here",
                         "Remove it, or look for a '}' too many before it."));
    return;
  }
  reading.report(
      fault("unknown-declaration", fmt::format("{} does not begin a declaration", quoted(found)),
            span_of(found, reading), "a declaration is expected here",
            first_of(meant(found, at, reading, declaration_words()),
                     "A file is made of 'signals', 'materials', 'marks', 'junction', 'works', "
                     "'number', 'body', 'practice', 'accept', 'expect' and 'include'.")));
}

void explain_unclosed(char const* open, char const* at, Reading& reading) {
  if (reading.unclosed_at == at) return;
  reading.unclosed_at = at;
  if (reading.counts_only()) return;
  auto const* end = reading.token_end(at);
  auto const found = found_at(at, reading);
  auto const before = found.empty() ? std::string("the file's end") : quoted(found);
  reading.report(
      with_other(fault("unclosed-block", fmt::format("A block is not closed before {}", before),
                       reading.span(end, end), "a '}' is missing here",
                       "Add the '}' after the last line that belongs to the block."),
                 reading.span(open, open + 1), "the block is opened here"));
}

}  // namespace leat::grammar
