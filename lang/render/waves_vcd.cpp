#include <fmt/format.h>

#include <array>
#include <cstdint>
#include <queue>

#include "lang/render/waves.hpp"
#include "lang/source/code_point.hpp"

namespace leat::render {

namespace {

struct Timescale {
  std::string text;
  std::int64_t units_per_second = 1;
};

// The coarsest of the standard's units (1, 10 or 100 of a second's power of a thousand) of which a
// tick holds a whole number; where none does, the nanosecond.
Timescale timescale_of(int ticks_per_second) {
  constexpr std::array<std::string_view, 4> names{"s", "ms", "us", "ns"};
  std::int64_t units = 1;
  for (std::size_t power = 0; power < 10; ++power, units *= 10) {
    if (units % ticks_per_second != 0) continue;
    constexpr std::array<std::string_view, 3> counts{"1", "100", "10"};
    return {fmt::format("{} {}", counts[power % 3], names[(power + 2) / 3]), units};
  }
  return {"1 ns", 1'000'000'000};
}

// A name as an identifier of the standard: what is not ASCII is told by its code point between
// dollar signs, which names of a design do not hold; `_$` before one that would come first.
std::string identifier(std::string_view name) {
  std::string result;
  for (std::size_t at = 0; at < name.size();) {
    auto const point = source::code_point_at(name, at);
    if (point.length == 1 && point.value < 0x80) {
      result += name[at];
    } else {
      if (result.empty()) result = "_$";
      result += fmt::format("${:x}$", static_cast<std::uint32_t>(point.value));
    }
    at += std::max<std::size_t>(point.length, 1);
  }
  return result;
}

// Counts in the 94 printable characters.
std::string code(std::size_t number) {
  std::string result;
  for (;; number = number / 94 - 1) {
    result += static_cast<char>('!' + number % 94);
    if (number < 94) return result;
  }
}

std::string header(WavesSheet const& sheet, std::string const& timescale) {
  auto text = fmt::format("$version leat $end\n$timescale {} $end\n$scope module signals $end\n",
                          timescale);
  for (std::size_t i = 0; i < sheet.shown.size(); ++i) {
    text += fmt::format("$var wire 1 {} {} $end\n", code(i),
                        identifier(sheet.subject.map.signals[sheet.shown[i]].name));
  }
  return text + "$upscope $end\n$enddefinitions $end\n";
}

}  // namespace

std::string waves_vcd(WavesSheet const& sheet) {
  auto const& recording = sheet.recording;
  std::int64_t const ticks_per_second =
      sheet.subject.design.practice[model::Rule::ticks_per_second];
  auto const scale = timescale_of(static_cast<int>(ticks_per_second));
  auto const time_of = [&](int tick) {
    return (tick * scale.units_per_second + ticks_per_second / 2) / ticks_per_second;
  };
  auto text = header(sheet, scale.text) + "#0\n$dumpvars\n";
  // The next change of each signal, earliest first, then in the order of the signals.
  using Next = std::pair<int, std::size_t>;
  std::priority_queue<Next, std::vector<Next>, std::greater<>> next;
  std::vector<std::size_t> done(sheet.shown.size(), 0);
  for (std::size_t i = 0; i < sheet.shown.size(); ++i) {
    auto const signal = sheet.shown[i];
    text += fmt::format("{}{}\n", recording.starts_on[signal] ? 1 : 0, code(i));
    if (!recording.changes[signal].empty()) next.emplace(recording.changes[signal].front(), i);
  }
  text += "$end\n";
  int tick = 0;
  while (!next.empty()) {
    auto const [at, i] = next.top();
    next.pop();
    if (at != tick) text += fmt::format("#{}\n", time_of(at));
    tick = at;
    auto const& changes = recording.changes[sheet.shown[i]];
    auto const count = ++done[i];
    bool const is_on = recording.starts_on[sheet.shown[i]] != (count % 2 != 0);
    text += fmt::format("{}{}\n", is_on ? 1 : 0, code(i));
    if (count < changes.size()) next.emplace(changes[count], i);
  }
  if (recording.last_tick > tick) text += fmt::format("#{}\n", time_of(recording.last_tick));
  return text;
}

}  // namespace leat::render
