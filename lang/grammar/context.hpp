#pragma once
#include <concepts>
#include <utility>
#include <vector>

#include "lang/grammar/spirit.hpp"
#include "lang/grammar/terminals.hpp"

// What all grammar units share: the one iterator and the one context, the actions that fill the
// tree, and the directives that give nodes their spans, blocks their braces, and entries their
// recovery.
namespace leat::grammar {

using Iterator = char const*;
using Context = x3::context<reading_tag, Reading, x3::unused_type>;
using Failure = x3::expectation_failure<Iterator>;

// ---- actions: the node being read takes what was read ----

template <auto Member>
struct Put {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    x3::_val(context).*Member = std::move(x3::_attr(context));
  }
};
template <auto Member>
inline constexpr Put<Member> put{};

template <auto Member>
struct Append {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    (x3::_val(context).*Member).push_back(std::move(x3::_attr(context)));
  }
};
template <auto Member>
inline constexpr Append<Member> append{};

template <auto Member, auto Value>
struct Set {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    x3::_val(context).*Member = Value;
  }
};
template <auto Member, auto Value>
inline constexpr Set<Member, Value> set{};

// The node is what was read.
struct Become {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    x3::_val(context) = std::move(x3::_attr(context));
  }
};
inline constexpr Become become{};

// ---- directives ----

// Gives the rule's node its span: from its first token to the end of its last one, the gap after it
// left out.
template <class Subject>
struct SpannedDirective : x3::unary_parser<Subject, SpannedDirective<Subject>> {
  using base_type = x3::unary_parser<Subject, SpannedDirective<Subject>>;
  static bool const is_pass_through_unary = true;
  constexpr explicit SpannedDirective(Subject const& subject) : base_type(subject) {}

  template <class AnyContext, class Node, class Attribute>
  bool parse(Iterator& first, Iterator const& last, AnyContext const& context, Node& node,
             Attribute& attribute) const {
    auto const begin = first;
    if (!this->subject.parse(first, last, context, node, attribute)) return false;
    Reading& reading = x3::get<reading_tag>(context);
    node.span = reading.span(begin, reading.token_end(first));
    return true;
  }
};

// Calls the subject by a name in messages; on a new line it matches only if it may wrap.
template <class Subject>
struct CalledDirective : x3::unary_parser<Subject, CalledDirective<Subject>>, Named {
  using base_type = x3::unary_parser<Subject, CalledDirective<Subject>>;
  static bool const is_pass_through_unary = true;
  constexpr CalledDirective(Subject const& subject, char const* name, bool wraps)
      : base_type(subject), wanted_name(name), may_wrap(wraps) {}

  template <class AnyContext, class Node, class Attribute>
  bool parse(Iterator& first, Iterator const& last, AnyContext const& context, Node& node,
             Attribute& attribute) const {
    Reading& reading = x3::get<reading_tag>(context);
    if (!may_wrap && reading.is_line_start(first)) return false;
    return this->subject.parse(first, last, context, node, attribute);
  }
  std::string wanted() const { return wanted_name; }

  char const* wanted_name;
  bool may_wrap;
};

// `{ subject }`. What is missing at the end is the closing brace, and the report shows the opening
// one.
template <class Subject>
struct BlockDirective : x3::unary_parser<Subject, BlockDirective<Subject>>, Named {
  using base_type = x3::unary_parser<Subject, BlockDirective<Subject>>;
  static bool const is_pass_through_unary = true;
  constexpr explicit BlockDirective(Subject const& subject) : base_type(subject) {}

  template <class AnyContext, class Node, class Attribute>
  bool parse(Iterator& first, Iterator const& last, AnyContext const& context, Node& node,
             Attribute& attribute) const {
    Reading& reading = x3::get<reading_tag>(context);
    syntax::Word brace;
    auto const open = first;
    if (!read_sign(first, "{", reading, brace)) return false;
    if (!this->subject.parse(first, last, context, node, attribute)) return false;
    if (read_sign(first, "}", reading, brace)) return true;
    explain_unclosed(open, first, reading);
    throw Failure(first, "");
  }
  std::string wanted() const { return "'{'"; }
};

// Entries go into the attribute, one after the other.
template <class Container>
struct KeepIn {
  using attribute_type = Container;
  template <class Node, class Entry>
  static void keep(Entry&& entry, Reading&, Node&, Container& read) {
    read.push_back(std::forward<Entry>(entry));
  }
};

// Any number of entries; `Keep` says what becomes of each. An entry with a fault is reported and left out, and reading
// goes on with the next: this is the recovery inside blocks. It ends where the block or the text
// ends, and where a declaration begins. Invariant: every turn of the loop moves `first` on.
template <class Entry, class Keep, class Subject>
struct EntriesDirective : x3::unary_parser<Subject, EntriesDirective<Entry, Keep, Subject>> {
  using base_type = x3::unary_parser<Subject, EntriesDirective<Entry, Keep, Subject>>;
  using attribute_type = typename Keep::attribute_type;
  static bool const has_attribute = !std::same_as<attribute_type, x3::unused_type>;
  static bool const handles_container = has_attribute;
  constexpr EntriesDirective(Subject const& subject, Entries const& shape)
      : base_type(subject), entries(shape) {}

  template <class AnyContext, class Node, class Attribute>
  bool parse(Iterator& first, Iterator const& last, AnyContext const& context, Node& node,
             Attribute& read) const {
    Reading& reading = x3::get<reading_tag>(context);
    for (bool is_first = true; is_at_entry(first, reading); is_first = false) {
      if (entries.is_one_per_line && !is_first && !reading.is_line_start(first)) {
        explain_crowded(first, entries, reading);
        first = next_entry(first, entries, reading);
        continue;
      }
      Entry entry{};
      if (read_one(first, last, context, reading, entry))
        Keep::keep(std::move(entry), reading, node, read);
    }
    return true;
  }

 private:
  bool is_at_entry(Iterator at, Reading const& reading) const {
    return !reading.is_at_end(at) && *at != '}' && !ends_block(at, entries, reading);
  }

  template <class AnyContext>
  bool read_one(Iterator& first, Iterator const& last, AnyContext const& context, Reading& reading,
                Entry& entry) const {
    auto const begin = first;
    auto const faults = reading.fault_count;
    try {
      if (this->subject.parse(first, last, context, x3::unused, entry))
        return reading.fault_count == faults;
      explain_entry(begin, entries, reading);
      first = next_entry(begin, entries, reading);
    } catch (Failure const& failure) {
      explain(failure.where(), failure.which(), reading);
      first = next_entry(std::max(reading.token_end(failure.where()), begin + 1), entries, reading);
    }
    return false;
  }

  Entries const& entries;
};

// Sets the form of a construct that begins with no keyword of its own.
struct EnterForm : x3::parser<EnterForm> {
  using attribute_type = x3::unused_type;
  [[maybe_unused]] static bool const has_attribute = false;
  constexpr explicit EnterForm(Form const& begun) : form(begun) {}
  template <class AnyContext, class RuleContext, class Attribute>
  bool parse(Iterator&, Iterator const&, AnyContext const& context, RuleContext&,
             Attribute&) const {
    Reading& reading = x3::get<reading_tag>(context);
    reading.form = &form;
    return true;
  }
  Form const& form;
};

constexpr EnterForm enter(Form const& form) { return EnterForm(form); }

struct SpannedMaker {
  template <class Subject>
  constexpr auto operator[](Subject const& subject) const {
    return SpannedDirective<typename x3::extension::as_parser<Subject>::value_type>(
        x3::as_parser(subject));
  }
};
inline constexpr SpannedMaker spanned{};

struct BlockMaker {
  template <class Subject>
  constexpr auto operator[](Subject const& subject) const {
    return BlockDirective<typename x3::extension::as_parser<Subject>::value_type>(
        x3::as_parser(subject));
  }
};
inline constexpr BlockMaker block{};

template <class Subject>
constexpr auto called(char const* name, Subject const& subject, bool may_wrap = false) {
  return CalledDirective<typename x3::extension::as_parser<Subject>::value_type>(
      x3::as_parser(subject), name, may_wrap);
}

template <class Entry, class Keep = KeepIn<std::vector<Entry>>, class Subject>
constexpr auto entries_of(Subject const& subject, Entries const& shape) {
  return EntriesDirective<Entry, Keep, typename x3::extension::as_parser<Subject>::value_type>(
      x3::as_parser(subject), shape);
}

}  // namespace leat::grammar
