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

// A name with a dot is a signal of a place, which is looked for where it is known which works is
// meant.
void note_unknown_in_clause(Reading const& reading, syntax::Clause const& clause) {
  if (!clause.condition) return;
  for_each_name(*clause.condition, [&](Expression const& name) {
    bool const is_of_place = name.name.find('.') != std::string::npos;
    if (!is_of_place && !reading.names.signals.find(name.name))
      reading.unknown.add(NameKind::signal, {name.name, name.span});
  });
}

void note_unknown_outside_signals(Reading const& reading) {
  for (auto const* block : all_of<syntax::SignalsDeclaration>(reading.document)) {
    for (auto const& never : block->nevers) note_unknown(reading, never.condition);
  }
  for (auto const* mark : reading.names.marks) {
    if (mark->choice) note_unknown(reading, mark->choice->control);
  }
  for (auto const* accept : all_of<syntax::AcceptDeclaration>(reading.document))
    note_unknown(reading, accept->condition);
  for (auto const* block : all_of<syntax::ExpectDeclaration>(reading.document)) {
    for (auto const& clause : block->clauses) note_unknown_in_clause(reading, clause);
  }
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
  found.remedy =
      "Take one of these names out of the expression that uses it, or let a wire take time: "
      "'wire NAME = EXPRESSION after 4 ticks'.";
  reading.sink.report(std::move(found));
}

}  // namespace

bool is_in_range(Reading const& reading, syntax::Duration const& duration,
                 std::string const& of_what, int ticks_a_second) {
  bool const is_seconds = duration.unit.text == "s";
  auto const most = is_seconds ? most_ticks / ticks_a_second : most_ticks;
  auto const& amount = duration.amount;
  if (!amount.is_too_large && amount.value >= least_ticks && amount.value <= most) return true;
  reading.sink.report(
      {Listed("duration-out-of-range"),
       fmt::format("{} has a time that is too {}", of_what,
                   !amount.is_too_large && amount.value < least_ticks ? "short" : "long"),
       {amount.span,
        fmt::format("a time is {} to {} {}", least_ticks, most, is_seconds ? "s" : "ticks"),
        {}},
       {},
       fmt::format("Write a number from {} to {}; one second is {} ticks.", least_ticks, most,
                   ticks_a_second)});
  return false;
}

int ticks_of(syntax::Duration const& duration, int ticks_a_second) {
  auto const amount = static_cast<int>(duration.amount.value);
  return duration.unit.text == "s" ? amount * ticks_a_second : amount;
}

Signals read_signals(Reading const& reading, model::Practice const& practice) {
  Signals signals;
  for (auto const* signal : reading.names.signals.all) {
    note_unknown(reading, signal->on);
    note_unknown(reading, signal->off);
    if (signal->duration)
      is_in_range(reading, *signal->duration, fmt::format("The signal '{}'", signal->name.text),
                  practice[model::Rule::ticks_per_second]);
  }
  note_unknown_outside_signals(reading);
  auto wires = order_wires(reading.names);
  for (auto const& loop : wires.loops) report_loop(reading, loop);
  signals.is_sound = wires.loops.empty();
  signals.wire_order = std::move(wires.order);
  return signals;
}

}  // namespace leat::check
