#include "lang/lower/circuit_lowering.hpp"

#include <algorithm>
#include <tuple>

#include "engine/contract.hpp"
#include "lang/check/signals.hpp"

namespace leat::lower {

namespace {

using model::ExpressionId;
using model::Operator;
using syntax::ExpressionKind;

// A wire that takes time remembers what went into it: the engine's delay.
model::SignalKind kind_of(syntax::SignalDeclaration const& signal) {
  switch (signal.kind) {
    case syntax::SignalKind::lever:
      return model::SignalKind::lever;
    case syntax::SignalKind::button:
      return model::SignalKind::button;
    case syntax::SignalKind::plate:
      return model::SignalKind::plate;
    case syntax::SignalKind::clock:
      return model::SignalKind::clock;
    case syntax::SignalKind::wire:
      return signal.duration ? model::SignalKind::delay : model::SignalKind::wire;
    case syntax::SignalKind::latch:
      return model::SignalKind::latch;
    case syntax::SignalKind::toggle:
      return model::SignalKind::toggle;
  }
  throw ContractBroken("CircuitLowering: an unknown kind of signal");
}

std::size_t names_in(syntax::Expression const& expression) {
  std::size_t count = 0;
  check::for_each_name(expression, [&](syntax::Expression const&) { ++count; });
  return count;
}

Operator operator_of(ExpressionKind kind) {
  switch (kind) {
    case ExpressionKind::conjunction:
      return Operator::conjunction;
    case ExpressionKind::disjunction:
      return Operator::disjunction;
    default:
      return Operator::parity;
  }
}

}  // namespace

CircuitLowering::CircuitLowering(check::Meaning const& meaning, check::Scopes const* scopes)
    : names_(meaning.names),
      scopes_(scopes),
      wire_order_(meaning.signals.wire_order),
      operands_(meaning.names.signals.all.size()) {
  auto const ticks_a_second = meaning.practice[model::Rule::ticks_per_second];
  for (auto const* declaration : names_.signals.all) {
    model::Signal signal;
    signal.kind = kind_of(*declaration);
    signal.starts_on = declaration->starts && declaration->starts->text == "on";
    if (declaration->duration)
      signal.ticks = check::ticks_of(*declaration->duration, ticks_a_second);
    circuit_.signals.push_back(signal);
  }
  for (model::SignalId s = 0; s < names_.signals.all.size(); ++s) {
    auto const& declaration = *names_.signals.all[s];
    if (declaration.on) circuit_.signals[s].definition = lower(*declaration.on);
    if (declaration.off) circuit_.signals[s].reset = lower(*declaration.off);
  }
  for (auto const* block : check::all_of<syntax::SignalsDeclaration>(*meaning.document)) {
    for (auto const& never : block->nevers) circuit_.nevers.push_back(lower(never.condition));
  }
}

// Wires of places follow the file's and those of outer places, never the other way round; within a
// place what is given for signals comes first, then they stand as in the file.
model::Circuit CircuitLowering::circuit() const {
  auto circuit = circuit_;
  circuit.wire_order = wire_order_;
  std::vector<std::size_t> place(names_.signals.all.size(), 0);
  for (std::size_t i = 0; i < wire_order_.size(); ++i) place[wire_order_[i]] = i + 1;
  auto const place_of = [&](Own const& own) {
    bool const is_given = scopes_->replacement(own.scope, own.signal) != nullptr;
    return std::tuple(own.scope, is_given ? 0 : place[own.signal], own.signal);
  };
  std::vector<std::size_t> wires;
  for (std::size_t i = 0; i < own_.size(); ++i) {
    if (circuit.signals[place.size() + i].kind == model::SignalKind::wire) wires.push_back(i);
  }
  std::sort(wires.begin(), wires.end(),
            [&](std::size_t a, std::size_t b) { return place_of(own_[a]) < place_of(own_[b]); });
  for (auto wire : wires)
    circuit.wire_order.push_back(static_cast<model::SignalId>(place.size() + wire));
  return circuit;
}

ExpressionId CircuitLowering::operand(model::SignalId signal) {
  if (signal >= operands_.size()) operands_.resize(signal + 1);
  auto& known = operands_[signal];
  if (!known) known = circuit_.add({Operator::signal, signal, 0});
  return *known;
}

ExpressionId CircuitLowering::negated(ExpressionId expression) {
  return circuit_.add({Operator::negation, expression, 0});
}

ExpressionId CircuitLowering::chained(Operator op, std::vector<ExpressionId> const& operands) {
  require(!operands.empty(), "CircuitLowering: a chain has operands");
  auto chain = operands.front();
  for (std::size_t i = 1; i < operands.size(); ++i) chain = circuit_.add({op, chain, operands[i]});
  return chain;
}

// A chain of n operands becomes n - 1 nodes leaning left, so its depth in the arena does not matter
// to anyone: operands come before their users, and one pass over the arena evaluates all. The
// recursion here is as deep as the text is nested, which the grammar bounds.
ExpressionId CircuitLowering::lower(syntax::Expression const& expression, Scope scope) {
  auto const id = lower_in(expression, scope);
  define_open();
  return id;
}

model::SignalId CircuitLowering::signal_in(Scope scope, model::SignalId signal) {
  auto const home = scopes_ != nullptr ? scopes_->home(scope, signal) : check::Scopes::file;
  if (home == check::Scopes::file) return signal;
  auto const next = static_cast<model::SignalId>(circuit_.signals.size());
  auto const [entry, is_new] = own_id_.try_emplace({home, signal}, next);
  if (is_new) {
    undefined_.push_back(own_.size());
    own_.push_back({home, signal});
    auto copy = circuit_.signals[signal];
    if (scopes_->replacement(home, signal) != nullptr) copy = {.kind = model::SignalKind::wire};
    circuit_.signals.push_back(copy);
  }
  return entry->second;
}

// A signal that a place replaces is what is given for it, said outside of the place: where that
// hangs on several, a wire of the place.
ExpressionId CircuitLowering::meant(Scope scope, model::SignalId signal) {
  if (scopes_ != nullptr) {
    auto const home = scopes_->home(scope, signal);
    auto const* given = scopes_->replacement(home, signal);
    if (given != nullptr && names_in(*given) < 2) return lower_in(*given, scopes_->outer(home));
  }
  return operand(signal_in(scope, signal));
}

ExpressionId CircuitLowering::meant(Scope scope, std::string const& name) {
  if (auto const signal = names_.signals.find(name)) return meant(scope, *signal);
  require(scopes_ != nullptr, "CircuitLowering: a signal of a place, outside of a works");
  auto const named = scopes_->named(names_, name);
  require(named.has_value(), "CircuitLowering: an unknown signal");
  return meant(named->scope, named->signal);
}

// One after the other, so that long chains of wires are no deep recursion.
void CircuitLowering::define_open() {
  while (!undefined_.empty()) {
    auto const at = undefined_.back();
    undefined_.pop_back();
    auto const own = own_[at];
    auto const id = names_.signals.all.size() + at;
    if (auto const* given = scopes_->replacement(own.scope, own.signal)) {
      auto const definition = lower_in(*given, scopes_->outer(own.scope));
      circuit_.signals[id].definition = definition;
      continue;
    }
    auto const& declaration = *names_.signals.all[own.signal];
    if (declaration.on) {
      auto const definition = lower_in(*declaration.on, own.scope);
      circuit_.signals[id].definition = definition;
    }
    if (declaration.off) {
      auto const reset = lower_in(*declaration.off, own.scope);
      circuit_.signals[id].reset = reset;
    }
  }
}

ExpressionId CircuitLowering::lower_in(syntax::Expression const& expression, Scope scope) {
  if (expression.kind == ExpressionKind::name) return meant(scope, expression.name);
  if (auto const found = known_.find({&expression, scope}); found != known_.end())
    return found->second;
  std::vector<ExpressionId> operands;
  for (auto const& part : expression.operands) operands.push_back(lower_in(part, scope));
  ExpressionId id = 0;
  if (expression.kind == ExpressionKind::constant)
    id = circuit_.add({Operator::constant, expression.value ? 1u : 0u, 0});
  else if (expression.kind == ExpressionKind::negation)
    id = negated(operands.front());
  else
    id = chained(operator_of(expression.kind), operands);
  known_.emplace(std::pair(&expression, scope), id);
  return id;
}

ExpressionId CircuitLowering::any_of(check::Earlier const& earlier) {
  auto& chain = any_of_first_[earlier.said.get()];
  while (chain.size() < earlier.count) {
    auto const next = lower(*(*earlier.said)[chain.size()]);
    chain.push_back(chain.empty() ? next
                                  : circuit_.add({Operator::disjunction, chain.back(), next}));
  }
  return chain[earlier.count - 1];
}

std::optional<ExpressionId> CircuitLowering::lower(check::Condition const& condition) {
  std::vector<ExpressionId> all;
  if (condition.when) all.push_back(lower(*condition.when));
  if (condition.unless.count > 0) all.push_back(negated(any_of(condition.unless)));
  for (auto const& [heading, is_on] : condition.settings) {
    auto const signal = meant(check::Scopes::file, heading->text);
    all.push_back(is_on ? signal : negated(signal));
  }
  define_open();
  if (all.empty()) return std::nullopt;
  return chained(Operator::conjunction, all);
}

}  // namespace leat::lower
