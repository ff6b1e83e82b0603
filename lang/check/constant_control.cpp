#include "lang/check/constant_control.hpp"

#include <algorithm>
#include <array>
#include <set>

namespace leat::check {

namespace {

constexpr std::size_t most_inputs = 12, most_wires = 4096;
constexpr std::size_t most_work = 500'000;  // names followed and columns computed, in all

constexpr std::uint64_t all_on = ~std::uint64_t{0};

// The column of the k-th input: bit i of the table is bit k of i.
std::vector<std::uint64_t> input_column(std::size_t k, std::size_t words) {
  constexpr std::array<std::uint64_t, 6> within{0xaaaaaaaaaaaaaaaaull, 0xccccccccccccccccull,
                                                0xf0f0f0f0f0f0f0f0ull, 0xff00ff00ff00ff00ull,
                                                0xffff0000ffff0000ull, 0xffffffff00000000ull};
  std::vector<std::uint64_t> column(words);
  for (std::size_t word = 0; word < words; ++word)
    column[word] = k < within.size() ? within[k] : (word >> (k - within.size()) & 1) ? all_on : 0;
  return column;
}

void combine(std::vector<std::uint64_t>& left, std::vector<std::uint64_t> const& right,
             syntax::ExpressionKind kind) {
  for (std::size_t word = 0; word < left.size(); ++word) {
    if (kind == syntax::ExpressionKind::conjunction)
      left[word] &= right[word];
    else if (kind == syntax::ExpressionKind::disjunction)
      left[word] |= right[word];
    else
      left[word] ^= right[word];
  }
}

}  // namespace

ConstantFinder::ConstantFinder(Names const& names, Signals const& signals)
    : names_(names),
      rank_(names.signals.all.size()),
      columns_(names.signals.all.size()),
      work_left_(most_work) {
  for (std::size_t i = 0; i < signals.wire_order.size(); ++i) rank_[signals.wire_order[i]] = i;
}

std::optional<ConstantFinder::Cone> ConstantFinder::cone_of(syntax::Expression const& expression) {
  Cone cone;
  std::set<model::SignalId> met;
  std::vector<model::SignalId> open;
  auto const meet = [&](syntax::Expression const& name) {
    if (work_left_ == 0) return;
    --work_left_;
    auto const signal = *names_.signals.find(name.name);
    if (met.insert(signal).second) open.push_back(signal);
  };
  for_each_name(expression, meet);
  while (!open.empty()) {
    auto const signal = open.back();
    open.pop_back();
    auto const& declaration = *names_.signals.all[signal];
    if (declaration.kind == syntax::SignalKind::wire && !declaration.duration) {
      cone.wires.push_back(signal);
      for_each_name(*declaration.on, meet);
    } else {
      cone.inputs.push_back(signal);
    }
    if (cone.inputs.size() > most_inputs || cone.wires.size() > most_wires) return std::nullopt;
  }
  std::sort(cone.wires.begin(), cone.wires.end(),
            [&](auto a, auto b) { return rank_[a] < rank_[b]; });
  return cone;
}

ConstantFinder::Column ConstantFinder::evaluate(syntax::Expression const& expression,
                                                std::size_t words) {
  using syntax::ExpressionKind;
  if (work_left_ > 0) --work_left_;
  if (expression.kind == ExpressionKind::constant)
    return Column(words, expression.value ? all_on : 0);
  if (expression.kind == ExpressionKind::name)
    return columns_[*names_.signals.find(expression.name)];
  auto column = evaluate(expression.operands.front(), words);
  if (expression.kind == ExpressionKind::negation) {
    for (auto& word : column) word = ~word;
    return column;
  }
  for (std::size_t i = 1; i < expression.operands.size(); ++i)
    combine(column, evaluate(expression.operands[i], words), expression.kind);
  return column;
}

// The truth table of the condition over the inputs it hangs on, 64 settings a word: inputs first,
// then the wires in their order, then the condition. With fewer than six inputs the table repeats
// within the word, which changes nothing about being constant. Cost: 2^inputs / 64 words for each
// operator met.
std::optional<bool> ConstantFinder::constant_value(syntax::Expression const& expression) {
  auto const cone = cone_of(expression);
  if (!cone || work_left_ == 0) return std::nullopt;
  auto const words = std::size_t{1} << (std::max<std::size_t>(cone->inputs.size(), 6) - 6);
  for (std::size_t k = 0; k < cone->inputs.size(); ++k)
    columns_[cone->inputs[k]] = input_column(k, words);
  for (auto const wire : cone->wires) {
    columns_[wire] = evaluate(*names_.signals.all[wire]->on, words);
    if (work_left_ == 0) return std::nullopt;
  }
  auto const column = evaluate(expression, words);
  auto const is_all = [&](std::uint64_t value) {
    return std::all_of(column.begin(), column.end(), [&](auto word) { return word == value; });
  };
  if (is_all(all_on)) return true;
  if (is_all(0)) return false;
  return std::nullopt;
}

}  // namespace leat::check
