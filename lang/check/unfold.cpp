#include "lang/check/unfold.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

#include "lang/diagnostics/catalogue.hpp"
#include "lang/diagnostics/near_name.hpp"
#include "lang/syntax/print.hpp"

namespace leat::check {

namespace {

using diagnostics::Diagnostic;
using diagnostics::Listed;
using syntax::NumberDeclaration;
using syntax::NumberExpression;
using syntax::NumberKind;
using syntax::Word;

// ---- the rules of reckoning ----

// Toward minus infinity, so that lanes west of 0 are counted like those east of it.
long quotient(long left, long right) {
  auto const cut = left / right;
  return left % right != 0 && (left < 0) != (right < 0) ? cut - 1 : cut;
}

// What the quotient leaves: it has the divisor's sign.
long remainder(long left, long right) { return left - right * quotient(left, right); }

// Stops as soon as the value is past what is understood: then it stays past it.
long power(long base, long exponent) {
  if (base == 1 || exponent == 0) return 1;
  if (base == 0) return 0;
  if (base == -1) return exponent % 2 == 0 ? 1 : -1;
  long value = 1;
  for (long i = 0; i < exponent && std::abs(value) <= Unfolder::largest; ++i) value *= base;
  return value;
}

// ---- what is said of numbers ----

void gather_names(NumberExpression const& node, std::vector<std::string>& names) {
  bool const is_new = std::find(names.begin(), names.end(), node.name) == names.end();
  if (node.kind == NumberKind::name && is_new) names.push_back(node.name);
  for (auto const& operand : node.operands) gather_names(operand, names);
}

// " where lane = 2, step = 1", or nothing: which turn of the loops it was.
std::string values_in(NumberExpression const& node, Numbers const& numbers) {
  constexpr std::size_t most_shown = 3;
  std::vector<std::string> names;
  gather_names(node, names);
  std::string shown;
  for (std::size_t i = 0; i < std::min(names.size(), most_shown); ++i)
    if (auto const value = numbers.find(names[i]))
      shown += fmt::format("{} {} = {}", i == 0 ? " where" : ",", names[i], *value);
  return shown;
}

// A number as written, cut if it is long.
std::string shown(NumberExpression const& node) {
  constexpr std::size_t most_bytes = 40;
  auto const text = syntax::print(node);
  bool const is_cut = node.kind == NumberKind::literal && node.literal.is_too_large;
  return !is_cut && text.size() <= most_bytes ? fmt::format("'{}'", text) : std::string("A number");
}

}  // namespace

// ---- numbers by name ----

std::optional<long> const* Numbers::entry(std::string_view name) const {
  for (auto const* scope = this; scope != nullptr; scope = scope->outer_)
    if (auto const at = scope->own_.find(name); at != scope->own_.end()) return &at->second;
  return nullptr;
}

std::optional<long> Numbers::find(std::string_view name) const {
  auto const* found = entry(name);
  return found != nullptr ? *found : std::nullopt;
}

bool Numbers::is_declared(std::string_view name) const { return entry(name) != nullptr; }

std::vector<std::string> Numbers::names() const {
  std::vector<std::string> all;
  for (auto const* scope = this; scope != nullptr; scope = scope->outer_)
    for (auto const& [name, value] : scope->own_) all.push_back(name);
  return all;
}

Settings settings_of(syntax::PlaceDeclaration const& place) {
  Settings settings;
  for (auto const& number : place.numbers)
    settings.try_emplace(number.name.text, number.value.literal.value);
  return settings;
}

std::vector<Word> settable_numbers(syntax::JunctionDeclaration const& junction) {
  std::vector<Word> names;
  for (auto const& number : junction.numbers) names.push_back(number.name);
  return names;
}

std::vector<Word> settable_numbers(syntax::WorksDeclaration const& works) {
  std::vector<Word> names;
  auto loop = works.loops.begin();
  for (std::size_t i = 0; i < works.items.size(); ++i) {
    while (loop != works.loops.end() && loop->end <= i) ++loop;
    bool const is_repeated = loop != works.loops.end() && loop->begin <= i;
    auto const* number = std::get_if<NumberDeclaration>(&works.items[i]);
    if (number != nullptr && !is_repeated) names.push_back(number->name);
  }
  return names;
}

// ---- reckoning ----

namespace {

Diagnostic signal_for_number(std::string const& name) {
  return {Listed("unknown-number"),
          fmt::format("'{}' is a signal, where a number is wanted", name),
          {{}, "this is no number", {}},
          {},
          "Write a number, or the name of one."};
}

Diagnostic unknown_number(std::string const& name, Numbers const& numbers) {
  constexpr std::size_t most_compared = 200;
  auto const known = numbers.names();
  auto const near = known.size() <= most_compared ? diagnostics::near_name(name, known)
                                                  : std::optional<std::string>();
  return {Listed("unknown-number"),
          fmt::format("The number '{}' is not declared", name),
          {{}, "this is no number that can be used here", {}},
          {},
          near ? fmt::format("The nearest known name is '{}'.", *near)
               : fmt::format("Declare it: 'number {} = 3'.", name)};
}

Diagnostic too_large(NumberExpression const& node, Numbers const& numbers) {
  return {Listed("number-out-of-range"),
          fmt::format("{} is larger than can be reckoned with", shown(node)),
          {{}, fmt::format("this is beyond {}{}", Unfolder::largest, values_in(node, numbers)), {}},
          {},
          fmt::format("Keep numbers from -{0} to {0}.", Unfolder::largest)};
}

Diagnostic impossible(NumberExpression const& node, Numbers const& numbers) {
  bool const is_power = node.kind == NumberKind::power;
  auto const& right = node.operands.back();
  return {Listed("impossible-number"),
          fmt::format("{} {}", shown(node), is_power ? "has an exponent below 0" : "divides by 0"),
          {{},
           fmt::format("the {} is {} here{}", is_power ? "exponent" : "divisor",
                       is_power ? "below 0" : "0", values_in(right, numbers)),
           {}},
          {},
          is_power ? "Let the exponent be 0 or more." : "Let the divisor be other than 0."};
}

}  // namespace

template <class Make>
void Unfolder::report(NumberExpression const& node, Make make) {
  if (!told_.insert({node.span.begin, node.span.end}).second) return;
  if (sink_.is_full()) return sink_.leave_out();
  Diagnostic found = make();
  found.primary.span = node.span;
  sink_.report(std::move(found));
}

// From the operands up; the grammar bounds how deep. What has no value is reported once, at the
// smallest part that has none.
std::optional<long> Unfolder::evaluate(NumberExpression const& node, Numbers const& numbers) {
  if (node.kind == NumberKind::name) {
    if (is_whole_ && !numbers.is_declared(node.name))
      report(node, [&] {
        return signals_.count(node.name) != 0 ? signal_for_number(node.name)
                                              : unknown_number(node.name, numbers);
      });
    return numbers.find(node.name);
  }
  if (node.kind == NumberKind::literal) {
    if (!node.literal.is_too_large) return node.literal.value;
    report(node, [&] { return too_large(node, numbers); });
    return std::nullopt;
  }
  auto const left = evaluate(node.operands.front(), numbers);
  if (node.kind == NumberKind::negation) return left ? std::optional(-*left) : left;
  auto const right = evaluate(node.operands.back(), numbers);
  if (!left || !right) return std::nullopt;
  auto const value = apply(node, *left, *right, numbers);
  if (!value || std::abs(*value) <= largest) return value;
  report(node, [&] { return too_large(node, numbers); });
  return std::nullopt;
}

// Operands are at most `largest`, so that no operation overflows.
std::optional<long> Unfolder::apply(NumberExpression const& node, long left, long right,
                                    Numbers const& numbers) {
  switch (node.kind) {
    case NumberKind::sum:
      return left + right;
    case NumberKind::difference:
      return left - right;
    case NumberKind::product:
      return left * right;
    case NumberKind::quotient:
    case NumberKind::remainder:
      if (right == 0) break;
      return node.kind == NumberKind::quotient ? quotient(left, right) : remainder(left, right);
    default:
      if (right < 0) break;
      return power(left, right);
  }
  report(node, [&] { return impossible(node, numbers); });
  return std::nullopt;
}

void Unfolder::report_below_ground(NumberExpression const& number,
                                   syntax::JunctionDeclaration const& junction) {
  report(number, [&] {
    return Diagnostic{Listed("number-out-of-range"),
                      fmt::format("Junction '{}' has a level below 0", junction.name.text),
                      {{}, fmt::format("this is level {}", number.literal.value), {}},
                      {},
                      "Number the levels from 0 upwards."};
  });
}

// ---- declared numbers ----

void Unfolder::declare(NumberDeclaration const& number, Numbers& scope, Settings const& settings) {
  auto const set = settings.find(number.name.text);
  auto const value =
      set != settings.end() ? std::optional(set->second) : evaluate(number.value, scope);
  scope.set(number.name.text, value);
}

void Unfolder::check_repeated(std::vector<NumberDeclaration const*> const& numbers) {
  std::map<std::string_view, NumberDeclaration const*> first;
  for (auto const* number : numbers) {
    auto const [at, is_new] = first.try_emplace(number->name.text, number);
    auto const& span = number->name.span;
    if (is_new || !told_.insert({span.begin, span.end}).second) continue;
    sink_.report({Listed("declared-twice"),
                  fmt::format("The number '{}' is declared twice", number->name.text),
                  {span, fmt::format("'{}' is declared here again", number->name.text), {}},
                  {{at->second->name.span,
                    fmt::format("'{}' is first declared here", number->name.text),
                    {}}},
                  "Give one of them another name, or remove it."});
  }
}

Numbers Unfolder::file_numbers(syntax::Document const& document) {
  std::vector<NumberDeclaration const*> all;
  for (auto const& declaration : document.declarations) {
    if (auto const* number = std::get_if<NumberDeclaration>(&declaration)) all.push_back(number);
    if (auto const* block = std::get_if<syntax::SignalsDeclaration>(&declaration))
      for (auto const& signal : block->signals) signals_.insert(signal.name.text);
  }
  check_repeated(all);
  Numbers numbers;
  for (auto const* number : all) declare(*number, numbers, {});
  return numbers;
}

}  // namespace leat::check
