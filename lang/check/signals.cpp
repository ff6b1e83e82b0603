#include "lang/check/signals.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "lang/check/wire_loops.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/syntax/wording.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::Expression;
using syntax::SignalDeclaration;
using syntax::SignalKind;

constexpr long least_ticks = 1, most_ticks = 1'000'000;

void note_unknown(Reading const& reading, Expression const& expression) {
  for_each_name(expression, [&](Expression const& name) {
    if (!reading.names.signals.find(name.name))
      reading.unknown.add(NameKind::signal, {name.name, name.span});
  });
}

void note_unknown(Reading const& reading, std::optional<Expression> const& expression) {
  if (expression) note_unknown(reading, *expression);
}

void note_unknown_outside_signals(Reading const& reading) {
  for (auto const* mark : reading.names.marks.all) {
    if (mark->choice) note_unknown(reading, mark->choice->control);
  }
  for (auto const* accept : all_of<syntax::AcceptDeclaration>(reading.document))
    note_unknown(reading, accept->condition);
  for (auto const* block : all_of<syntax::ExpectDeclaration>(reading.document)) {
    for (auto const& clause : block->clauses) note_unknown(reading, clause.condition);
  }
}

void check_duration(Reading const& reading, SignalDeclaration const& signal, long ticks_a_second) {
  auto const& duration = *signal.duration;
  bool const is_seconds = duration.unit.text == "s";
  auto const most = is_seconds ? most_ticks / ticks_a_second : most_ticks;
  auto const& amount = duration.amount;
  if (!amount.is_too_large && amount.value >= least_ticks && amount.value <= most) return;
  reading.sink.report(
      {Listed("duration-out-of-range"),
       fmt::format("The signal '{}' has a time that is too {}", signal.name.text,
                   !amount.is_too_large && amount.value < least_ticks ? "short" : "long"),
       {amount.span,
        fmt::format("a time is {} to {} {}", least_ticks, most, is_seconds ? "s" : "ticks"),
        {}},
       {},
       fmt::format("Write a number from {} to {}; one second is {} ticks.", least_ticks, most,
                   ticks_a_second)});
}

std::string_view word_of(SignalDeclaration const& signal) {
  return signal.kind == SignalKind::wire ? "delayed wire" : syntax::keyword_of(signal.kind);
}

bool is_checked_yet(SignalDeclaration const& signal) {
  switch (signal.kind) {
    case SignalKind::lever:
    case SignalKind::button:
    case SignalKind::plate:
      return true;
    case SignalKind::wire:
      return !signal.duration;
    default:
      return false;
  }
}

void report_not_yet(Reading const& reading, SignalDeclaration const& signal) {
  reading.sink.report(
      {Listed("not-yet-checked"),
       fmt::format("The {} '{}' cannot be verified: memory and timing are not verified by this "
                   "version",
                   word_of(signal), signal.name.text),
       {signal.span, "this signal remembers or takes time", {}},
       {},
       fmt::format("Declare 'lever {}' to judge the junction for every value it can have.",
                   signal.name.text)});
}

std::string path_of(Names const& names, std::vector<model::SignalId> const& loop) {
  std::string path;
  for (auto const wire : loop) path += names.signals.all[wire]->name.text + " -> ";
  return path + names.signals.all[loop.front()]->name.text;
}

void report_loop(Reading const& reading, std::vector<model::SignalId> const& loop) {
  auto const& all = reading.names.signals.all;
  diagnostics::Diagnostic found;
  found.name = Listed("loop-of-wires");
  found.headline =
      fmt::format("Wires drive themselves in a loop: {}", path_of(reading.names, loop));
  for (std::size_t i = 0; i < loop.size(); ++i) {
    auto const& used = all[loop[(i + 1) % loop.size()]]->name.text;
    diagnostics::Label label{
        all[loop[i]]->span, fmt::format("'{}' follows '{}'", all[loop[i]]->name.text, used), {}};
    if (i == 0)
      found.primary = std::move(label);
    else
      found.others.push_back(std::move(label));
  }
  found.remedy = "Take one of these names out of the expression that uses it.";
  reading.sink.report(std::move(found));
}

}  // namespace

Signals read_signals(Reading const& reading, model::Practice const& practice) {
  Signals signals;
  for (auto const* signal : reading.names.signals.all) {
    note_unknown(reading, signal->on);
    note_unknown(reading, signal->off);
    if (signal->duration) check_duration(reading, *signal, practice[model::Rule::ticks_per_second]);
    if (is_checked_yet(*signal)) continue;
    report_not_yet(reading, *signal);
    signals.is_sound = false;
  }
  note_unknown_outside_signals(reading);
  auto wires = order_wires(reading.names);
  for (auto const& loop : wires.loops) report_loop(reading, loop);
  signals.is_sound = signals.is_sound && wires.loops.empty();
  signals.wire_order = std::move(wires.order);
  return signals;
}

}  // namespace leat::check
