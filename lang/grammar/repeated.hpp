#pragma once
#include <list>
#include <optional>
#include <utility>
#include <vector>

#include "lang/grammar/depth.hpp"
#include "lang/grammar/fault.hpp"
#include "lang/grammar/rules.hpp"

// Blocks whose entries may stand in `for NAME in A..B { ... }`, one in another as wished. They are
// read as they are nested and laid flat one after the other, as the tree has them.
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

// A loop in a block of `entries`; `entry` is the rule of one of them.
template <class Tag, class Item>
constexpr auto loop_of(Entries const& entries, x3::rule<Tag, Repeated<Item>> const& entry) {
  auto const inner = block[entries_of<Repeated<Item>, KeepIn<RepeatedList<Item>>>(
      entry, entries)[put<&Repeated<Item>::inside>]];
  return loop_head[put<&Repeated<Item>::loop>] > LoopBlockDirective<decltype(inner)>(inner);
}

// Lays an entry flat, and what lies in it in the order of the text. `take` puts an item away, and
// notes where a loop begins and ends among those put away. Cost: the text's.
template <class Item, class Take>
void lay_flat(Repeated<Item>&& entry, Take& take, std::vector<syntax::Loop>& loops) {
  if (entry.item) take(std::move(*entry.item));
  if (!entry.loop) return;
  auto const at = loops.size();
  loops.push_back(std::move(*entry.loop));
  loops[at].whole = entry.span;
  take.begin(loops[at]);
  for (auto& inner : entry.inside) lay_flat(std::move(inner), take, loops);
  take.end(loops[at]);
}

// `Take` knows the node being read, and is made of it and the reading.
template <class Take>
struct LayFlat {
  using attribute_type = x3::unused_type;
  template <class Item, class Node>
  static void keep(Repeated<Item>&& entry, Reading& reading, Node& node, x3::unused_type) {
    Take take(node, reading);
    lay_flat(std::move(entry), take, node.loops);
  }
};

// The entries of a block in which loops may stand. Each is put away as soon as it is read: they
// are large, and there may be many.
template <class Item, class Take, class Subject>
constexpr auto repeated_entries(Subject const& subject, Entries const& shape) {
  return entries_of<Repeated<Item>, LayFlat<Take>>(subject, shape);
}

}  // namespace leat::grammar
