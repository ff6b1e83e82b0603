#include <fmt/format.h>

#include "lang/grammar/rules.hpp"

// Names that hold numbers in brackets, and names of what is placed, whose parts are joined by dots.
namespace leat::grammar {

namespace {

using syntax::Word;

struct TakeText {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    x3::_val(context).text += x3::_attr(context).text;
  }
};

// A number that is a literal is a part of the name.
struct TakeIndex {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    Word& node = x3::_val(context);
    syntax::NumberExpression& value = x3::_attr(context);
    bool const is_plain = value.kind == syntax::NumberKind::literal && !value.literal.is_too_large;
    if (is_plain)
      node.text += fmt::format("[{}]", value.literal.value);
    else
      node.indices.push_back({node.text.size(), std::move(value)});
  }
};

// clang-format off
auto const first = Name("a name", true)[TakeText{}];
auto const literal = LiteralIndex("'['")[TakeText{}];
auto const index = Bracket("'['") > called("a number such as 3 or lane + 1", number, true)[TakeIndex{}] > sign("]");

auto const indexed_def = spanned[first >> *(literal | index)];
auto const path_def = spanned[first >> *(literal | index | DottedPart("a name")[TakeText{}])];
// clang-format on

}  // namespace

BOOST_SPIRIT_DEFINE(indexed, path)

struct indexed_tag {};
struct path_tag {};

BOOST_SPIRIT_INSTANTIATE(IndexedRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(PathRule, Iterator, Context)

}  // namespace leat::grammar
