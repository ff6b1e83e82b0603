#include "engine/logic/side_by_side.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "engine/logic/transpose.hpp"

namespace leat::logic {

using model::Operator;
using model::SignalKind;

namespace {

using Plane = SideBySide::Plane;
constexpr auto words = SideBySide::words_per_plane;

template <class Combine>
Plane combined(Plane const& a, Plane const& b, Combine combine) {
  Plane result;
  for (std::size_t w = 0; w < words; ++w) result[w] = combine(a[w], b[w]);
  return result;
}

Plane computed(Program::Instruction const& step, std::vector<Plane> const& registers) {
  auto const& left = registers[step.has_left() ? step.left : 0];
  auto const& right = registers[step.has_right() ? step.right : 0];
  switch (step.op) {
    case Operator::signal:
      return left;
    case Operator::negation:
      return combined(left, left, [](Lanes a, Lanes) { return ~a; });
    case Operator::conjunction:
      return combined(left, right, [](Lanes a, Lanes b) { return a & b; });
    case Operator::disjunction:
      return combined(left, right, [](Lanes a, Lanes b) { return a | b; });
    case Operator::parity:
      return combined(left, right, [](Lanes a, Lanes b) { return a ^ b; });
    case Operator::constant:
      break;
  }
  Plane all;
  all.fill(step.left != 0 ? ~Lanes{0} : 0);
  return all;
}

// What a memory element holds after a round (Machine's own rule, many lanes at a time).
Plane next_of(Program::Memory const& memory, std::vector<Plane> const& registers,
              Plane const& was_triggered) {
  auto const& held = registers[memory.signal];
  auto const& trigger = registers[memory.definition];
  Plane next;
  switch (memory.kind) {
    case SignalKind::toggle:
      for (std::size_t w = 0; w < words; ++w) next[w] = held[w] ^ (trigger[w] & ~was_triggered[w]);
      return next;
    case SignalKind::latch: {
      auto const& reset = registers[memory.reset];
      for (std::size_t w = 0; w < words; ++w) next[w] = trigger[w] | (held[w] & ~reset[w]);
      return next;
    }
    default:
      return trigger;
  }
}

bool is_empty(Plane const& plane) {
  Lanes any = 0;
  for (auto lanes : plane) any |= lanes;
  return any == 0;
}

}  // namespace

SideBySide::SideBySide(Machine const& machine)
    : machine_(&machine),
      settled_(std::max<std::size_t>(machine.program().register_count(), 1)),
      was_triggered_(machine.program().memories().size()),
      next_(machine.program().memories().size()) {
  select_instructions();
  for (std::size_t event = 0; event < machine.input_count(); ++event)
    slices_.push_back(slice_of(event));
}

// Backwards, since each instruction reads only what stands before it.
void SideBySide::select_instructions() {
  auto const& program = machine_->program();
  std::vector<char> is_read(program.register_count(), 0);
  for (auto const& memory : program.memories()) {
    is_read[memory.definition] = 1;
    if (memory.kind == SignalKind::latch) is_read[memory.reset] = 1;
  }
  auto const& all = program.instructions();
  for (auto step = all.rbegin(); step != all.rend(); ++step) {
    if (is_read[step->to] == 0) continue;
    if (step->has_left()) is_read[step->left] = 1;
    if (step->has_right()) is_read[step->right] = 1;
    instructions_.push_back(*step);
  }
  std::reverse(instructions_.begin(), instructions_.end());
}

// What hangs on the input, to the fixed point: an instruction or a memory element that reads
// something touched is touched. All others keep their values, since the state was settled.
SideBySide::Slice SideBySide::slice_of(std::size_t event) const {
  auto const& program = machine_->program();
  auto const& memories = program.memories();
  std::vector<char> is_touched(program.register_count(), 0);
  is_touched[machine_->variables()[event]] = 1;
  bool is_growing = true;
  auto const touch = [&](std::uint32_t reg) {
    is_growing = is_growing || is_touched[reg] == 0;
    is_touched[reg] = 1;
  };
  auto const reads_touched = [&](Program::Instruction const& step) {
    return (step.has_left() && is_touched[step.left] != 0) ||
           (step.has_right() && is_touched[step.right] != 0);
  };
  auto const looks_at_touched = [&](Program::Memory const& memory) {
    return is_touched[memory.definition] != 0 ||
           (memory.kind == SignalKind::latch && is_touched[memory.reset] != 0);
  };
  while (is_growing) {
    is_growing = false;
    for (auto const& step : instructions_)
      if (reads_touched(step)) touch(step.to);
    for (auto const& memory : memories)
      if (looks_at_touched(memory)) touch(memory.signal);
  }
  Slice slice;
  std::copy_if(instructions_.begin(), instructions_.end(), std::back_inserter(slice.instructions),
               reads_touched);
  for (std::size_t m = 0; m < memories.size(); ++m)
    if (looks_at_touched(memories[m])) slice.memories.push_back(m);
  for (std::uint32_t reg = 0; reg < is_touched.size(); ++reg)
    if (is_touched[reg] != 0) slice.registers.push_back(reg);
  return slice;
}

// What reads something an event can change is changed with it, so events without common registers
// do not read of each other either.
bool SideBySide::do_touch(std::size_t event, std::size_t other) const {
  auto const &ones = slices_[event].registers, &others = slices_[other].registers;
  return std::any_of(ones.begin(), ones.end(), [&](std::uint32_t reg) {
    return std::binary_search(others.begin(), others.end(), reg);
  });
}

void SideBySide::load(std::span<Code const> codes) {
  require(codes.size() <= most_states, "SideBySide::load: more states than lanes");
  size_ = codes.size();
  auto const& variables = machine_->variables();
  for (std::size_t w = 0; w < words; ++w) {
    auto const begin = std::min(w * lane_count, size_);
    auto const count = std::min<std::size_t>(lane_count, size_ - begin);
    used_[w] = count == lane_count ? ~Lanes{0} : (Lanes{1} << count) - 1;
    std::array<std::uint64_t, lane_count> rows{};
    std::copy_n(codes.begin() + static_cast<std::ptrdiff_t>(begin), count, rows.begin());
    if (count != 0) transpose(rows);
    for (std::size_t v = 0; v < variables.size(); ++v) settled_[variables[v]][w] = rows[v];
  }
  for (auto const& step : instructions_) settled_[step.to] = computed(step, settled_);
  now_ = settled_;
}

// All memory elements of the slice change together; the lanes in which some did.
SideBySide::Plane SideBySide::round(Slice const& slice) {
  for (auto const& step : slice.instructions) now_[step.to] = computed(step, now_);
  auto const& memories = machine_->program().memories();
  for (auto m : slice.memories) {
    next_[m] = next_of(memories[m], now_, was_triggered_[m]);
    was_triggered_[m] = now_[memories[m].definition];
  }
  Plane changed{};
  for (auto m : slice.memories) {
    auto& held = now_[memories[m].signal];
    for (std::size_t w = 0; w < words; ++w) changed[w] |= (held[w] ^ next_[m][w]) & used_[w];
    held = next_[m];
  }
  return changed;
}

SideBySide::Outcome const& SideBySide::flip(std::size_t event) {
  auto const& slice = slices_[event];
  auto const& memories = machine_->program().memories();
  for (auto m : slice.memories) was_triggered_[m] = settled_[memories[m].definition];
  for (auto& lanes : now_[machine_->variables()[event]]) lanes = ~lanes;
  auto const most_rounds = 2 * slice.memories.size() + 2;
  outcome_.unsettled = used_;
  for (std::size_t i = 0; i < most_rounds && !is_empty(outcome_.unsettled); ++i)
    outcome_.unsettled = round(slice);
  outcome_.changes.clear();
  for (auto m : slice.memories) {
    auto const signal = memories[m].signal;
    outcome_.changes.push_back(
        {machine_->input_count() + m,
         combined(now_[signal], settled_[signal], [](Lanes a, Lanes b) { return a ^ b; })});
  }
  for (auto reg : slice.registers) now_[reg] = settled_[reg];
  return outcome_;
}

}  // namespace leat::logic
