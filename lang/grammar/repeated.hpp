#pragma once
#include <list>
#include <optional>
#include <utility>
#include <vector>

#include "lang/grammar/depth.hpp"
#include "lang/grammar/fault.hpp"
#include "lang/grammar/rules.hpp"

// Blocks whose entries may stand in `for NAME in A..B { ... }`, one in another as wished. They are
// read as they are nested and then laid flat, as the tree has them.
namespace leat::grammar {

template <class Item>
struct Repeated;
// Entries are large, and stay where they are read.
template <class Item>
using RepeatedList = std::list<Repeated<Item>>;

// An item of a block, or a loop around entries.
template <class Item>
struct Repeated {
  std::optional<Item> item;
  std::optional<syntax::Loop> loop;
  RepeatedList<Item> inside;
  syntax::Span span;
};

// One level of loops more. It reads the loop's block, at whose brace it stands.
template <class Subject>
struct LoopBlockDirective : x3::unary_parser<Subject, LoopBlockDirective<Subject>>, Named {
  using base_type = x3::unary_parser<Subject, LoopBlockDirective<Subject>>;
  static bool const is_pass_through_unary = true;
  constexpr explicit LoopBlockDirective(Subject const& subject) : base_type(subject) {}

  template <class AnyContext, class RuleContext, class Attribute>
  bool parse(Iterator& first, Iterator const& last, AnyContext const& context, RuleContext& rule,
             Attribute& attribute) const {
    Reading& reading = x3::get<reading_tag>(context);
    DepthGuard const guard(reading);
    if (guard.is_too_deep())
      fail_ready(first, reading,
                 fault("nested-too-deep", "Repetitions are nested more than 200 levels deep",
                       reading.span(first, first + (first == reading.end ? 0 : 1)),
                       "this level is one too many", "Write out the outer ones."));
    return this->subject.parse(first, last, context, rule, attribute);
  }
  std::string wanted() const { return "'{'"; }
};

// The entries of a block in which loops may stand.
template <class Item, class Subject>
constexpr auto repeated_entries(Subject const& subject, Entries const& shape) {
  return entries_of<Repeated<Item>, RepeatedList<Item>>(subject, shape);
}

// A loop in a block of `entries`; `entry` is the rule of one of them.
template <class Tag, class Item>
constexpr auto loop_of(Entries const& entries, x3::rule<Tag, Repeated<Item>> const& entry) {
  auto const inner = block[repeated_entries<Item>(entry, entries)[put<&Repeated<Item>::inside>]];
  return loop_head[put<&Repeated<Item>::loop>] > LoopBlockDirective<decltype(inner)>(inner);
}

// Lays entries flat in the order of the text. `take` puts an item away, and notes where a loop
// begins and ends among those put away. Cost: the text's.
template <class Item, class Take>
void lay_flat(RepeatedList<Item>& entries, Take& take, std::vector<syntax::Loop>& loops) {
  for (auto& entry : entries) {
    if (entry.item) take(std::move(*entry.item));
    if (!entry.loop) continue;
    auto const at = loops.size();
    loops.push_back(std::move(*entry.loop));
    loops[at].whole = entry.span;
    take.begin(loops[at]);
    lay_flat(entry.inside, take, loops);
    take.end(loops[at]);
  }
}

// Where all items go into one list.
template <class Item>
struct TakeInto {
  std::vector<Item>& items;
  void operator()(Item item) { items.push_back(std::move(item)); }
  void begin(syntax::Loop& loop) const { loop.begin = items.size(); }
  void end(syntax::Loop& loop) const { loop.end = items.size(); }
};

}  // namespace leat::grammar
