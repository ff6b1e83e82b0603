#include "lang/grammar/rules.hpp"

// signals { ... }: inputs, wires and memory.
namespace leat::grammar {

namespace {

using syntax::SignalDeclaration;
using syntax::SignalKind;

constexpr Form lever_form{"lever", "lever NAME"};
constexpr Form button_form{"button", "button NAME for 20 ticks"};
constexpr Form plate_form{"plate", "plate NAME"};
constexpr Form wire_form{"wire", "wire NAME = EXPRESSION, or wire NAME = EXPRESSION after 4 ticks"};
constexpr Form latch_form{"latch", "latch NAME on EXPRESSION off EXPRESSION"};
constexpr Form toggle_form{"toggle", "toggle NAME on EXPRESSION"};
constexpr Form clock_form{"clock", "clock NAME every 40 ticks"};
constexpr Form signals_form{"signals block", "signals { ... }"};

Entries const signal_entries{"signal",
                             "'lever', 'button', 'plate', 'wire', 'latch', 'toggle', 'clock'",
                             {"lever", "button", "plate", "wire", "latch", "toggle", "clock"},
                             {},
                             false,
                             ""};

constexpr char const* states[] = {"on", "off"};

template <SignalKind Kind>
constexpr auto begin(char const* word, Form const& form) {
  return opens(word, form)[set<&SignalDeclaration::kind, Kind>];
}

struct signal_tag;
constexpr x3::rule<signal_tag, SignalDeclaration> signal{"a signal"};

// clang-format off
auto const name = Name("a name")[put<&SignalDeclaration::name>];
auto const lasting = called("a duration such as 20 ticks or 4 s", duration)[put<&SignalDeclaration::duration>];
auto const on = expression_here("an expression such as 'divert and not flush'")[put<&SignalDeclaration::on>];
auto const off = expression_here("an expression such as 'divert and not flush'")[put<&SignalDeclaration::off>];
auto const starts = -(keyword("starts") > OneOf("'on' or 'off'", states)[put<&SignalDeclaration::starts>]);

auto const signal_def = spanned[
    (begin<SignalKind::lever>("lever", lever_form)    > name > starts)
  | (begin<SignalKind::button>("button", button_form) > name > keyword("for") > lasting > starts)
  | (begin<SignalKind::plate>("plate", plate_form)   > name > starts)
  | (begin<SignalKind::wire>("wire", wire_form)      > name > sign_here("=") > on > -(keyword("after") > lasting))
  | (begin<SignalKind::latch>("latch", latch_form)   > name > keyword("on") > on > keyword("off") > off > starts)
  | (begin<SignalKind::toggle>("toggle", toggle_form) > name > keyword("on") > on > starts)
  | (begin<SignalKind::clock>("clock", clock_form)   > name > keyword("every") > lasting > starts)
];

auto const signals_def = spanned[
    opens("signals", signals_form)
  > block[entries_of<SignalDeclaration>(signal, signal_entries)[put<&syntax::SignalsDeclaration::signals>]]
];
// clang-format on

BOOST_SPIRIT_DEFINE(signal)

}  // namespace

BOOST_SPIRIT_DEFINE(signals)

struct signals_tag {};

BOOST_SPIRIT_INSTANTIATE(SignalsRule, Iterator, Context)

}  // namespace leat::grammar
