#include <fmt/format.h>

#include <algorithm>
#include <tuple>
#include <utility>
#include <variant>

#include "lang/check/loops.hpp"
#include "lang/check/unfold.hpp"
#include "lang/diagnostics/catalogue.hpp"

// Blocks, works and junctions in plain form: the walk over their loops.
namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::Expression;
using syntax::Loop;
using syntax::NumberDeclaration;
using syntax::WorksItem;

// ---- how much an entry is ----

// Names and constants of an expression.
std::size_t leaves(Expression const& node) {
  std::size_t count = node.operands.empty() ? 1 : 0;
  for (auto const& operand : node.operands) count += leaves(operand);
  return count;
}
std::size_t leaves(std::optional<Expression> const& node) { return node ? leaves(*node) : 0; }

// One, and one more for each few names: so that the bound on entries bounds memory too.
std::size_t weight_of(std::size_t names) { return 1 + names / 4; }

std::size_t weight(syntax::SignalDeclaration const& node) {
  return weight_of(leaves(node.on) + leaves(node.off));
}
std::size_t weight(syntax::NeverDeclaration const& node) {
  return weight_of(leaves(node.condition));
}
std::size_t weight(syntax::Clause const& node) {
  return weight_of(node.events.size() + node.dealt.size() + leaves(node.condition));
}
std::size_t weight(WorksItem const& item) {
  auto const* place = std::get_if<syntax::PlaceDeclaration>(&item);
  if (place == nullptr) return 1;
  auto names = place->numbers.size();
  for (auto const& signal : place->signals) names += 1 + leaves(signal.value);
  return weight_of(names);
}

template <class Items>
std::vector<std::size_t> weights_of(Items const& items) {
  std::vector<std::size_t> weights;
  for (auto const& item : items) weights.push_back(weight(item));
  return weights;
}

}  // namespace

// ---- turning loops ----

// Idea: a block's items and loops are walked in the order of the text; a loop is walked once for
// each value of its variable, in a scope of that turn. Before a loop begins, its turns and the
// entries in them are taken from what is left of the bound, so that no more work is begun than is
// allowed: inner loops are counted when their turn comes, and an outer turn counts at least one.
// Invariant: the work done is in proportion to what was spent.
template <class Enter, class Each>
class Unfolder::Turning {
 public:
  Turning(Unfolder& unfolder, std::vector<Loop> const& loops,
          std::vector<std::size_t> const& weights, Enter enter, Each each)
      : unfolder_(unfolder),
        loops_(loops),
        layout_(loops, weights.size()),
        weights_(loops.size() + 1, 0),
        item_count_(weights.size()),
        enter_(std::move(enter)),
        each_(std::move(each)) {
    for (std::size_t item = 0; item < item_count_; ++item)
      weights_[layout_.around(item)] += weights[item];
  }

  void run(Numbers& scope) {
    enter_(layout_, layout_.block(), scope);
    walk(0, item_count_, 0, loops_.size(), scope);
  }

 private:
  // Items from `item` up to `last_item`, and the loops in the list's part from `loop` on.
  void walk(std::size_t item, std::size_t last_item, std::size_t loop, std::size_t last_loop,
            Numbers& scope) {
    while (!unfolder_.is_spent_) {
      if (loop < last_loop && loops_[loop].begin == item) {
        turn(loop, scope);
        item = loops_[loop].end;
        loop = layout_.after(loop);
      } else if (item < last_item) {
        each_(item, scope);
        ++item;
      } else {
        return;
      }
    }
  }

  void turn(std::size_t at, Numbers const& around) {
    auto const& loop = loops_[at];
    auto const first = unfolder_.evaluate(loop.first, around);
    auto const last = unfolder_.evaluate(loop.last, around);
    if (!first || !last || *last < *first) return;
    if (!unfolder_.spend(loop, *last - *first + 1, weights_[at])) return;
    for (long value = *first; value <= *last && !unfolder_.is_spent_; ++value) {
      auto scope = around.within();
      scope.set(loop.variable.text, value);
      enter_(layout_, at, scope);
      walk(loop.begin, loop.end, at + 1, layout_.after(at), scope);
    }
  }

  Unfolder& unfolder_;
  std::vector<Loop> const& loops_;
  LoopLayout const layout_;
  std::vector<std::size_t> weights_;  // of the items right in each loop
  std::size_t item_count_;
  Enter enter_;
  Each each_;
};

template <class Enter, class Each>
void Unfolder::turn(std::vector<Loop> const& loops, std::vector<std::size_t> const& weights,
                    Numbers& scope, Enter enter, Each each) {
  Turning<Enter, Each>(*this, loops, weights, std::move(enter), std::move(each)).run(scope);
}

namespace {

constexpr auto enters_nothing = [](LoopLayout const&, std::size_t, Numbers&) {};

}  // namespace

bool Unfolder::spend(Loop const& loop, long times, std::size_t weight) {
  auto const turns = static_cast<std::size_t>(times);
  auto const each = std::max<std::size_t>(weight, 1);
  auto const left = most_entries - entries_;
  if (turns <= left / each) {
    entries_ += turns * each;
    return true;
  }
  is_spent_ = true;
  sink_.report(
      {Listed("too-many-repetitions"),
       fmt::format("Repetitions make more than {} entries", most_entries),
       {loop.span, "here it becomes too many", {}},
       {},
       "Repeat less; a turn of a repetition counts for one entry at least, and a long entry "
       "for several."});
  return false;
}

// ---- blocks ----

syntax::SignalsDeclaration Unfolder::unfold(syntax::SignalsDeclaration const& block,
                                            Numbers const& file) {
  syntax::SignalsDeclaration made;
  made.span = block.span;
  auto scope = file.within();
  turn(block.loops, weights_of(block.signals), scope, enters_nothing,
       [&](std::size_t at, Numbers const& numbers) {
         auto signal = block.signals[at];
         if (plain(signal, numbers)) made.signals.push_back(std::move(signal));
       });
  if (block.nevers.empty()) return made;
  auto loops = block.loops;
  for (auto& loop : loops)
    std::tie(loop.begin, loop.end) = std::pair(loop.never_begin, loop.never_end);
  turn(loops, weights_of(block.nevers), scope, enters_nothing,
       [&](std::size_t at, Numbers const& numbers) {
         auto never = block.nevers[at];
         if (plain(never, numbers)) made.nevers.push_back(std::move(never));
       });
  return made;
}

syntax::ExpectDeclaration Unfolder::unfold(syntax::ExpectDeclaration const& block,
                                           Numbers const& file) {
  syntax::ExpectDeclaration made{block.title, block.junction, {}, {}, block.span};
  auto scope = file.within();
  turn(block.loops, weights_of(block.clauses), scope, enters_nothing,
       [&](std::size_t at, Numbers const& numbers) {
         auto clause = block.clauses[at];
         if (plain(clause, numbers)) made.clauses.push_back(std::move(clause));
       });
  return made;
}

syntax::MarksDeclaration Unfolder::unfold(syntax::MarksDeclaration const& block,
                                          Numbers const& file) {
  syntax::MarksDeclaration made{{}, block.span};
  for (auto mark : block.marks)
    if (plain(mark, file)) made.marks.push_back(std::move(mark));
  return made;
}

syntax::TableDeclaration Unfolder::unfold(syntax::TableDeclaration const& table,
                                          Numbers const& file) {
  auto made = table;
  plain(made.inlet, file);
  plain(made.headings, file);
  for (auto& row : made.rows) plain(row, file);
  return made;
}

syntax::AcceptDeclaration Unfolder::unfold(syntax::AcceptDeclaration const& accept,
                                           Numbers const& file) {
  auto made = accept;
  plain(made.condition, file);
  return made;
}

// ---- junctions and works ----

syntax::JunctionDeclaration Unfolder::unfold(syntax::JunctionDeclaration const& junction,
                                             Numbers const& file, Settings const& settings) {
  std::vector<NumberDeclaration const*> own;
  for (auto const& number : junction.numbers) own.push_back(&number);
  check_repeated(own);
  auto scope = file.within();
  for (auto const* number : own) declare(*number, scope, settings);
  auto made = junction;
  std::erase_if(made.numbers, [&](NumberDeclaration& number) { return !plain(number, scope); });
  std::erase_if(made.levels,
                [&](syntax::LevelDeclaration& level) { return !plain(level, junction, scope); });
  return made;
}

// Numbers of a scope are known in all of it, wherever they stand, so they are worked out when it
// begins.
syntax::WorksDeclaration Unfolder::unfold(syntax::WorksDeclaration const& works,
                                          Numbers const& file, Settings const& settings) {
  syntax::WorksDeclaration made{works.name, works.title, works.outside, {}, {}, works.span};
  std::vector<std::vector<NumberDeclaration const*>> own(works.loops.size() + 1);
  LoopLayout const layout(works.loops, works.items.size());
  for (std::size_t at = 0; at < works.items.size(); ++at)
    if (auto const* number = std::get_if<NumberDeclaration>(&works.items[at]))
      own[layout.around(at)].push_back(number);
  for (auto const& numbers : own) check_repeated(numbers);

  auto const enter = [&](LoopLayout const& all, std::size_t loop, Numbers& scope) {
    for (auto const* number : own[loop])
      declare(*number, scope, loop == all.block() ? settings : Settings{});
  };
  auto scope = file.within();
  turn(works.loops, weights_of(works.items), scope, enter,
       [&](std::size_t at, Numbers const& numbers) {
         auto item = works.items[at];
         bool const is_sound = std::visit([&](auto& part) { return plain(part, numbers); }, item);
         if (is_sound) made.items.push_back(std::move(item));
       });
  return made;
}

// Where nothing is repeated and no place can set a number, one form is all there will ever be.
syntax::WorksDeclaration Unfolder::unfold(syntax::WorksDeclaration&& works, Numbers const& file) {
  if (!works.loops.empty() || !settable_numbers(works).empty())
    return unfold(std::as_const(works), file);
  syntax::WorksDeclaration made{works.name, works.title, works.outside, std::move(works.items),
                                {},         works.span};
  std::erase_if(made.items, [&](WorksItem& item) {
    return !std::visit([&](auto& part) { return plain(part, file); }, item);
  });
  return made;
}

namespace {

template <class Node>
concept Unfolds = requires(Unfolder unfolder, Node& node, Numbers const& file) {
  unfolder.unfold(std::move(node), file);
};

}  // namespace

syntax::Document Unfolder::unfold(syntax::Document&& document) {
  auto const file = file_numbers(document);
  syntax::Document made;
  made.edition = document.edition;
  made.comments = document.comments;
  for (auto& declaration : document.declarations)
    std::visit(
        [&]<class Node>(Node& node) {
          if constexpr (Unfolds<Node>) {
            made.declarations.emplace_back(unfold(std::move(node), file));
          } else {
            made.declarations.emplace_back(node);
          }
        },
        declaration);
  for (auto& declaration : made.declarations)
    if (auto* number = std::get_if<NumberDeclaration>(&declaration)) plain(*number, file);
  return made;
}

}  // namespace leat::check
