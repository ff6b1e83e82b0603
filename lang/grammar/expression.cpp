#include <string_view>

#include "lang/grammar/depth.hpp"
#include "lang/grammar/fault.hpp"
#include "lang/grammar/rules.hpp"

// Expressions over signals. From the loosest to the tightest: `or`, `xor`, `and`, `not`,
// parentheses.
namespace leat::grammar {

namespace {

using syntax::Expression;
using syntax::ExpressionKind;

// One level of precedence: an operand, or a chain of them joined by one word, which becomes one
// flat node. The operand after the word may stand on the next line, and so may the word.
template <ExpressionKind Kind, class Operand>
struct Chain : x3::parser<Chain<Kind, Operand>> {
  using attribute_type = Expression;
  static bool const has_attribute = true;
  constexpr Chain(char const* joint, Operand const& operand) : word(joint), next(operand) {}

  template <class AnyContext, class RuleContext>
  bool parse(Iterator& first, Iterator const& last, AnyContext const& context, RuleContext& rule,
             Expression& read) const {
    Reading& reading = x3::get<reading_tag>(context);
    auto const begin = first;
    if (!next.parse(first, last, context, rule, read)) return false;
    syntax::Word joint;
    if (!word.read(first, reading, joint)) return true;
    Expression chain;
    chain.kind = Kind;
    chain.operands.push_back(std::move(read));
    do {
      auto& operand = chain.operands.emplace_back();
      if (!next.parse(first, last, context, rule, operand)) throw Failure(first, operand_name);
    } while (word.read(first, reading, joint));
    chain.span = reading.span(begin, reading.token_end(first));
    read = std::move(chain);
    return true;
  }

  static constexpr char operand_name[] = "a signal, 'on', 'off', 'not' or '('";
  Keyword word;
  Operand next;
};

[[noreturn]] void fail_too_deep(Iterator at, Reading& reading) {
  auto const* end = reading.token_end(at);
  auto const* opener = end[-1] == '(' ? end - 1 : end - std::string_view("not").size();
  fail_ready(at, reading,
             fault("nested-too-deep", "An expression is nested more than 200 levels deep",
                   reading.span(opener, end), "this level is one too many",
                   "Name a part of it by a wire."));
}

template <class Subject>
struct DeeperDirective : x3::unary_parser<Subject, DeeperDirective<Subject>>, Named {
  using base_type = x3::unary_parser<Subject, DeeperDirective<Subject>>;
  static bool const is_pass_through_unary = true;
  constexpr explicit DeeperDirective(Subject const& subject) : base_type(subject) {}

  template <class AnyContext, class RuleContext, class Attribute>
  bool parse(Iterator& first, Iterator const& last, AnyContext const& context, RuleContext& rule,
             Attribute& attribute) const {
    Reading& reading = x3::get<reading_tag>(context);
    DepthGuard const guard(reading);
    if (guard.is_too_deep()) fail_too_deep(first, reading);
    return this->subject.parse(first, last, context, rule, attribute);
  }
  std::string wanted() const { return "a signal, 'on', 'off', 'not' or '('"; }
};

template <class Subject>
constexpr auto deeper(Subject const& subject) {
  return DeeperDirective<Subject>(subject);
}

struct TakeName {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    auto& node = x3::_val(context);
    node.kind = ExpressionKind::name;
    node.name = std::move(x3::_attr(context).text);
    node.indices = std::move(x3::_attr(context).indices);
  }
};

struct Negate {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    auto& node = x3::_val(context);
    node.kind = ExpressionKind::negation;
    node.operands.push_back(std::move(x3::_attr(context)));
  }
};

struct primary_tag;
constexpr x3::rule<primary_tag, Expression> primary{"a signal, 'on', 'off', 'not' or '('"};

// clang-format off
auto const primary_def = spanned[
    keyword("on")[set<&Expression::value, true>]
  | keyword("off")[set<&Expression::value, false>]
  | (keyword("not") > deeper(primary)[Negate{}])
  | (sign("(") > deeper(expression)[become] > sign(")"))
  | path_name("a signal", true)[TakeName{}]
];

auto const conjunction = Chain<ExpressionKind::conjunction, x3::rule<primary_tag, Expression>>("and", primary);
auto const parity = Chain<ExpressionKind::parity, decltype(conjunction)>("xor", conjunction);
auto const expression_def = Chain<ExpressionKind::disjunction, decltype(parity)>("or", parity);

constexpr char const* units[] = {"ticks", "tick", "s"};

auto const duration_def =
    WholeNumber("a duration such as 20 ticks or 4 s")[put<&syntax::Duration::amount>]
  > OneOf("'ticks' or 's'", units)[put<&syntax::Duration::unit>];
// clang-format on

BOOST_SPIRIT_DEFINE(primary)

}  // namespace

BOOST_SPIRIT_DEFINE(expression, duration)

struct expression_tag {};
struct duration_tag {};

BOOST_SPIRIT_INSTANTIATE(ExpressionRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(DurationRule, Iterator, Context)

}  // namespace leat::grammar
