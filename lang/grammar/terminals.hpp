#pragma once
#include <concepts>
#include <span>
#include <string>
#include <type_traits>

#include "lang/grammar/reading.hpp"
#include "lang/grammar/spirit.hpp"

// The tokens of the language as X3 parsers. There is no skipper: each token eats the gap that
// follows it. `wanted` is what a reader sees after "expected".
namespace leat::grammar {

// ---- the readers behind them: move `at` past the token and its gap, or leave it ----
bool read_keyword(char const*& at, char const* word, Reading&, syntax::Word&);
bool read_one_of(char const*& at, std::span<char const* const> words, Reading&, syntax::Word&);
bool read_name(char const*& at, Reading&, syntax::Word&);
// A number's name: what follows may be a minus. The second leaves the words that follow a
// coordinate.
bool read_number_name(char const*& at, Reading&, syntax::Word&);
bool read_coordinate_name(char const*& at, Reading&, syntax::Word&);
// `.name` and `[` that stand without a blank behind a name.
bool read_dotted_part(char const*& at, Reading&, syntax::Word&);
bool read_bracket(char const*& at, Reading&, syntax::Word&);
// `[12]` all in one, as most brackets are: digits as a number prints them, and no blanks.
bool read_literal_index(char const*& at, Reading&, syntax::Word&);
bool read_finding_name(char const*& at, Reading&, syntax::Word&);
bool read_number(char const*& at, Reading&, syntax::Number&);
bool read_text(char const*& at, Reading&, syntax::Text&);
bool read_sign(char const*& at, std::string_view sign, Reading&, syntax::Word&);
bool read_glyph(char const*& at, Reading&, syntax::Word&);
bool read_row(char const*& at, Reading&, syntax::Row&);

struct reading_tag;

// Throws what X3 throws for a failed expectation; the reading's `ready` diagnostic explains it.
[[noreturn]] void fail_ready(char const* at, Reading&, diagnostics::Diagnostic);

// A word of the language as messages name it.
std::string in_quotes(std::string_view word);

// A parser that knows what to call itself in a message.
struct Named {};

// Gives the token to whoever wants it.
template <class Value, class Derived>
struct Terminal : x3::parser<Derived>, Named {
  using attribute_type = Value;
  static bool const has_attribute = true;
  static bool const handles_container = false;

  constexpr explicit Terminal(char const* name, bool wraps) : wanted_name(name), may_wrap(wraps) {}

  template <class Context, class RuleContext, class Attribute>
  bool parse(char const*& first, char const* const&, Context const& context, RuleContext&,
             Attribute& attribute) const {
    Reading& reading = x3::get<reading_tag>(context);
    if (!may_wrap && reading.is_line_start(first)) return false;
    if constexpr (std::same_as<Attribute, Value>) {
      return this->derived().read(first, reading, attribute);
    } else {
      Value value;
      return this->derived().read(first, reading, value);
    }
  }
  std::string wanted() const { return wanted_name; }

  char const* wanted_name;
  bool may_wrap;  // whether it may stand on a new line
};

// A word of the language. Sets the form of the construct it begins, if it begins one.
struct Keyword : Terminal<syntax::Word, Keyword> {
  constexpr explicit Keyword(char const* text, Form const* begun = nullptr)
      : Terminal(text, true), form(begun) {}
  bool read(char const*& at, Reading& reading, syntax::Word& word) const {
    if (!read_keyword(at, wanted_name, reading, word)) return false;
    if (form != nullptr) reading.form = form;
    return true;
  }
  std::string wanted() const { return in_quotes(wanted_name); }
  Form const* form;
};

struct OneOf : Terminal<syntax::Word, OneOf> {
  constexpr OneOf(char const* name, std::span<char const* const> list, bool wraps = false)
      : Terminal(name, wraps), words(list) {}
  bool read(char const*& at, Reading& reading, syntax::Word& word) const {
    return read_one_of(at, words, reading, word);
  }
  std::span<char const* const> words;
};

struct Sign : Terminal<syntax::Word, Sign> {
  constexpr Sign(char const* text, bool wraps) : Terminal(text, wraps) {}
  bool read(char const*& at, Reading& reading, syntax::Word& word) const {
    return read_sign(at, wanted_name, reading, word);
  }
  std::string wanted() const { return in_quotes(wanted_name); }
};

template <class Value, bool (*Read)(char const*&, Reading&, Value&)>
struct Plain : Terminal<Value, Plain<Value, Read>> {
  constexpr explicit Plain(char const* name, bool wraps = false)
      : Terminal<Value, Plain<Value, Read>>(name, wraps) {}
  bool read(char const*& at, Reading& reading, Value& value) const {
    return Read(at, reading, value);
  }
};

using Name = Plain<syntax::Word, read_name>;
using NumberName = Plain<syntax::Word, read_number_name>;
using CoordinateName = Plain<syntax::Word, read_coordinate_name>;
using DottedPart = Plain<syntax::Word, read_dotted_part>;
using Bracket = Plain<syntax::Word, read_bracket>;
using LiteralIndex = Plain<syntax::Word, read_literal_index>;
using FindingName = Plain<syntax::Word, read_finding_name>;
using WholeNumber = Plain<syntax::Number, read_number>;
using QuotedText = Plain<syntax::Text, read_text>;
using Glyph = Plain<syntax::Word, read_glyph>;
using DrawnRow = Plain<syntax::Row, read_row>;

constexpr Keyword keyword(char const* text) { return Keyword(text); }
constexpr Keyword opens(char const* text, Form const& form) { return Keyword(text, &form); }
constexpr Sign sign(char const* text) { return {text, true}; }
constexpr Sign sign_here(char const* text) { return {text, false}; }

}  // namespace leat::grammar

namespace boost::spirit::x3 {

template <class Parser>
struct get_info<Parser, std::enable_if_t<std::is_base_of_v<leat::grammar::Named, Parser>>> {
  using result_type = std::string;
  std::string operator()(Parser const& parser) const { return parser.wanted(); }
};

template <class Subject, class Action>
struct get_info<action<Subject, Action>> {
  using result_type = std::string;
  std::string operator()(action<Subject, Action> const& parser) const {
    return what(parser.subject);
  }
};

}  // namespace boost::spirit::x3
