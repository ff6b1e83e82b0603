#include <variant>

#include "lang/grammar/repeated.hpp"

// signals { ... }: inputs, wires and memory, and what is promised of them.
namespace leat::grammar {

namespace {

using syntax::NeverDeclaration;
using syntax::SignalDeclaration;
using syntax::SignalKind;

constexpr Form lever_form{"lever", "lever NAME"};
constexpr Form button_form{"button", "button NAME for 20 ticks"};
constexpr Form plate_form{"plate", "plate NAME"};
constexpr Form wire_form{"wire", "wire NAME = EXPRESSION, or wire NAME = EXPRESSION after 4 ticks"};
constexpr Form latch_form{"latch", "latch NAME on EXPRESSION off EXPRESSION"};
constexpr Form toggle_form{"toggle", "toggle NAME on EXPRESSION"};
constexpr Form clock_form{"clock", "clock NAME every 40 ticks"};
constexpr Form never_form{"promise", "never EXPRESSION"};
constexpr Form signals_form{"signals block", "signals { ... }"};

Entries const signal_entries{
    "signal",
    "'lever', 'button', 'plate', 'wire', 'latch', 'toggle', 'clock', 'never', 'for'",
    {"lever", "button", "plate", "wire", "latch", "toggle", "clock", "never", "for"},
    {},
    false,
    ""};

constexpr char const* states[] = {"on", "off"};

template <SignalKind Kind>
constexpr auto begin(char const* word, Form const& form) {
  return opens(word, form)[set<&SignalDeclaration::kind, Kind>];
}

using Item = std::variant<SignalDeclaration, NeverDeclaration>;
using Entry = Repeated<Item>;

// Signals and promises go into lists of their own.
class TakeItem {
 public:
  TakeItem(syntax::SignalsDeclaration& node, Reading&) : node_(node) {}
  void operator()(Item item) {
    if (auto* signal = std::get_if<SignalDeclaration>(&item))
      node_.signals.push_back(std::move(*signal));
    else
      node_.nevers.push_back(std::get<NeverDeclaration>(std::move(item)));
  }
  void begin(syntax::Loop& loop) const {
    loop.begin = node_.signals.size();
    loop.never_begin = node_.nevers.size();
  }
  void end(syntax::Loop& loop) const {
    loop.end = node_.signals.size();
    loop.never_end = node_.nevers.size();
  }

 private:
  syntax::SignalsDeclaration& node_;
};

struct signal_tag;
constexpr x3::rule<signal_tag, SignalDeclaration> signal{"a signal"};
struct never_tag;
constexpr x3::rule<never_tag, NeverDeclaration> never{"a promise"};
struct entry_tag;
constexpr x3::rule<entry_tag, Entry> entry{"a signal"};

// clang-format off
auto const name = indexed_name("a name")[put<&SignalDeclaration::name>];
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

auto const never_def = spanned[
    opens("never", never_form)
  > expression_here(condition_name)[put<&NeverDeclaration::condition>]
];

auto const entry_def = spanned[
    signal[put<&Entry::item>]
  | never[put<&Entry::item>]
  | loop_of(signal_entries, entry)
];

auto const signals_def = spanned[
    opens("signals", signals_form)
  > block[repeated_entries<Item, TakeItem>(entry, signal_entries)]
];
// clang-format on

BOOST_SPIRIT_DEFINE(signal, never, entry)

}  // namespace

BOOST_SPIRIT_DEFINE(signals)

struct signals_tag {};

BOOST_SPIRIT_INSTANTIATE(SignalsRule, Iterator, Context)

}  // namespace leat::grammar
