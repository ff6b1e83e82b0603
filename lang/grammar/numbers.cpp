#include <array>
#include <string_view>
#include <tuple>

#include "lang/grammar/fault.hpp"
#include "lang/grammar/rules.hpp"

// Numbers and what is worked out of them, and the heads of repetitions. From the loosest to the
// tightest: + and -, then * / mod, a minus before, ^ (which joins from the right), parentheses.
namespace leat::grammar {

namespace {

using syntax::Loop;
using syntax::NumberDeclaration;
using syntax::NumberExpression;
using syntax::NumberKind;

constexpr Form number_form{"number", "number NAME = 3, or number NAME = 2 * OTHER + 1"};
constexpr Form loop_form{"repetition", "for NAME in 0..7 { ... }"};
constexpr char operand_name[] = "a number, the name of one, '-' or '('";

// ---- bounds ----

// Operations, minus signs and parentheses of one number. They bound the height of its tree, and so
// every walk over it.
constexpr int most_steps = 200;

void count_step(Iterator at, Reading& reading) {
  if (++reading.steps <= most_steps) return;
  auto const* end = reading.token_end(at);
  fail_ready(at, reading,
             fault("nested-too-deep", "A number is worked out in more than 200 steps",
                   reading.span(end - 1, end), "this step is one too many",
                   "Give a part of it a name by 'number'."));
}

struct Step : x3::parser<Step>, Named {
  using attribute_type = x3::unused_type;
  [[maybe_unused]] static bool const has_attribute = false;
  template <class AnyContext, class RuleContext, class Attribute>
  bool parse(Iterator& first, Iterator const&, AnyContext const& context, RuleContext&,
             Attribute&) const {
    count_step(first, x3::get<reading_tag>(context));
    return true;
  }
  std::string wanted() const { return operand_name; }
};

// Begins the count for a number.
struct FirstStep : x3::parser<FirstStep> {
  using attribute_type = x3::unused_type;
  [[maybe_unused]] static bool const has_attribute = false;
  template <class AnyContext, class RuleContext, class Attribute>
  bool parse(Iterator&, Iterator const&, AnyContext const& context, RuleContext&,
             Attribute&) const {
    Reading& reading = x3::get<reading_tag>(context);
    reading.steps = 0;
    return true;
  }
};

// ---- numbers that are a literal and no more ----

// Nearly all numbers. They are read here without a step down the ladder below, which has the rest:
// it reads whatever might go on.
struct LoneLiteral : x3::parser<LoneLiteral> {
  using attribute_type = NumberExpression;
  [[maybe_unused]] static bool const has_attribute = true;
  template <class AnyContext, class RuleContext>
  bool parse(Iterator& first, Iterator const&, AnyContext const& context, RuleContext&,
             NumberExpression& read) const {
    constexpr std::string_view goes_on = "+-*/^m";
    Reading& reading = x3::get<reading_tag>(context);
    auto const gap = std::tuple(reading.gap_begin, reading.gap_end, reading.is_gap_broken);
    auto at = first;
    if (!read_number(at, reading, read.literal)) return false;
    if (at != reading.end && goes_on.find(*at) != std::string_view::npos) {
      std::tie(reading.gap_begin, reading.gap_end, reading.is_gap_broken) = gap;
      return false;
    }
    read.span = read.literal.span;
    first = at;
    return true;
  }
};

// ---- operations ----

struct Operator {
  char const* text;
  NumberKind kind;
};
constexpr std::array sums{Operator{"+", NumberKind::sum}, Operator{"-", NumberKind::difference}};
constexpr std::array products{Operator{"*", NumberKind::product},
                              Operator{"/", NumberKind::quotient},
                              Operator{"mod", NumberKind::remainder}};
constexpr std::array powers{Operator{"^", NumberKind::power}};

bool read_operator(Iterator& at, Operator const& wanted, Reading& reading) {
  std::string_view const rest(at, reading.end);
  bool const is_word = wanted.kind == NumberKind::remainder;
  if (!is_word && (!rest.starts_with(wanted.text) || rest.starts_with("->"))) return false;
  syntax::Word word;
  return is_word ? read_keyword(at, wanted.text, reading, word)
                 : read_sign(at, wanted.text, reading, word);
}

template <std::size_t Count>
Operator const* next_operator(Iterator& at, std::array<Operator, Count> const& among,
                              Reading& reading) {
  for (auto const& candidate : among)
    if (at != reading.end && *at == *candidate.text && read_operator(at, candidate, reading))
      return &candidate;
  return nullptr;
}

// Operands joined by operators of one strength, from the left. What joins and the operand after it
// may stand on the next line. `Right` is the operand after the first.
template <std::size_t Count, class Left, class Right>
struct Operations : x3::parser<Operations<Count, Left, Right>> {
  using attribute_type = NumberExpression;
  static bool const has_attribute = true;
  constexpr Operations(std::array<Operator, Count> const& among, Left const& first,
                       Right const& after)
      : operators(among), left(first), right(after) {}

  template <class AnyContext, class RuleContext>
  bool parse(Iterator& first, Iterator const& last, AnyContext const& context, RuleContext& rule,
             NumberExpression& read) const {
    Reading& reading = x3::get<reading_tag>(context);
    auto const begin = first;
    if (!left.parse(first, last, context, rule, read)) return false;
    while (auto const* joint = next_operator(first, operators, reading)) {
      count_step(first, reading);
      NumberExpression node;
      node.kind = joint->kind;
      node.operands.resize(2);
      node.operands.front() = std::move(read);
      if (!right.parse(first, last, context, rule, node.operands.back()))
        throw Failure(first, operand_name);
      node.span = reading.span(begin, reading.token_end(first));
      read = std::move(node);
    }
    return true;
  }

  std::array<Operator, Count> operators;
  Left left;
  Right right;
};

// ---- actions ----

struct TakeLiteral {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    x3::_val(context).literal = x3::_attr(context);
  }
};

struct TakeName {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    auto& node = x3::_val(context);
    node.kind = NumberKind::name;
    node.name = std::move(x3::_attr(context).text);
  }
};

struct Negate {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    auto& node = x3::_val(context);
    node.kind = NumberKind::negation;
    node.operands.push_back(std::move(x3::_attr(context)));
  }
};

// ---- rules ----

using Inner = x3::rule<struct sum_tag, NumberExpression>;
using Unary = x3::rule<struct unary_tag, NumberExpression>;
using Primary = x3::rule<struct primary_number_tag, NumberExpression>;
using Literal = x3::rule<struct literal_tag, NumberExpression>;
constexpr Inner sum{operand_name};
constexpr Unary unary{operand_name};
constexpr Primary primary{operand_name};
constexpr Literal literal{"a number"};

// clang-format off
auto const group = sign("(") > Step() > sum[become] > sign(")");

auto const literal_def = spanned[WholeNumber("a number", true)[TakeLiteral{}]];

auto const primary_def = spanned[
    WholeNumber("a number", true)[TakeLiteral{}]
  | NumberName("a number's name", true)[TakeName{}]
  | group
];

auto const power = Operations<1, Primary, Unary>(powers, primary, unary);
auto const unary_def = spanned[(sign("-") > Step() > unary[Negate{}]) | power[become]];
auto const product = Operations<3, Unary, Unary>(products, unary, unary);
auto const sum_def = Operations<2, decltype(product), decltype(product)>(sums, product, product);

auto const number_def = LoneLiteral()[become] | (FirstStep() >> sum[become]);
auto const negative = sign_here("-") > literal[Negate{}];
auto const bare_number_def = FirstStep() >> spanned[negative | primary[become]];
auto const coordinate_def = FirstStep() >> spanned[
    negative
  | WholeNumber("a number")[TakeLiteral{}]
  | CoordinateName("a number's name")[TakeName{}]
  | group
];

auto const number_declaration_def = spanned[
    opens("number", number_form)
  > Name("a name")[put<&NumberDeclaration::name>]
  > sign_here("=")
  > number_here("a number such as 3 or 2 * lanes")[put<&NumberDeclaration::value>]
];

auto const loop_head_def = spanned[
    opens("for", loop_form)
  > Name("a name")[put<&Loop::variable>]
  > keyword("in")
  > number_here("a number, the first of them")[put<&Loop::first>]
  > sign_here("..")
  > number_here("a number, the last of them")[put<&Loop::last>]
];
// clang-format on

BOOST_SPIRIT_DEFINE(literal, primary, unary, sum)

}  // namespace

BOOST_SPIRIT_DEFINE(number, bare_number, coordinate, number_declaration, loop_head)

struct number_tag {};
struct bare_number_tag {};
struct coordinate_tag {};
struct number_declaration_tag {};
struct loop_head_tag {};

BOOST_SPIRIT_INSTANTIATE(NumberRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(BareNumberRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(CoordinateRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(NumberDeclarationRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(LoopHeadRule, Iterator, Context)

}  // namespace leat::grammar
