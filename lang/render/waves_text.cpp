#include <fmt/format.h>

#include <algorithm>

#include "lang/render/columns.hpp"
#include "lang/render/time_scale.hpp"
#include "lang/render/waves.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

constexpr std::size_t indent = 4, most_bands = 40, most_deeds = 24, least_columns = 24;

std::vector<int> moments_of(WavesSheet const& sheet) {
  std::vector<int> moments{0};
  auto const& recording = sheet.recording;
  auto const add = [&](std::vector<int> const& ticks) {
    moments.insert(moments.end(), ticks.begin(), ticks.end());
  };
  for (auto s : sheet.shown) add(recording.changes[s]);
  add(recording.unquiet);
  for (auto const& deed : sheet.deeds) moments.push_back(deed.tick);
  std::sort(moments.begin(), moments.end());
  moments.erase(std::unique(moments.begin(), moments.end()), moments.end());
  return moments;
}

// Equal signs in a row, in their colour.
class Line {
 public:
  explicit Line(Look look) : look_(look) {}
  void add(bool is_on, std::size_t columns) {
    if (is_on != is_on_) flush();
    is_on_ = is_on;
    for (std::size_t i = 0; i < columns; ++i) run_ += sign(is_on);
  }
  void cut() {
    flush();
    text_ += painted(look_, Role::quiet, cut_sign(look_));
  }
  std::string finished() {
    flush();
    return std::move(text_);
  }

 private:
  std::string_view sign(bool is_on) const {
    if (look_.is_ascii) return is_on ? "#" : ".";
    return is_on ? "▄" : "·";
  }
  void flush() {
    text_ += painted(look_, is_on_ ? Role::water : Role::quiet, run_);
    run_.clear();
  }
  Look look_;
  bool is_on_ = false;
  std::string text_, run_;
};

std::string signal_line(WavesSheet const& sheet, model::SignalId signal, Band const& band,
                        Look look) {
  Line line(look);
  for (auto const& stretch : band) {
    bool const is_on = sheet.recording.is_on(signal, stretch.from);
    if (!stretch.is_cut()) {
      line.add(is_on, stretch.columns);
      continue;
    }
    auto const at = stretch.cut_at(std::to_string(stretch.from).size());
    line.add(is_on, at);
    line.cut();
    line.add(is_on, stretch.columns - at - 1);
  }
  return line.finished();
}

std::string picture(WavesSheet const& sheet, std::size_t columns, Look look) {
  auto const& names = sheet.subject.map.signals;
  std::size_t name_columns = columns_of("tick");
  for (auto s : sheet.shown) name_columns = std::max(name_columns, columns_of(names[s].name));
  auto const before = indent + name_columns + 3;
  auto const room = std::max(columns, before + least_columns) - before;
  auto const end = sheet.recording.last_tick + 1;
  auto const bands = time_bands(moments_of(sheet), end, room);
  auto const first_column = [&](std::string_view text) {
    return std::string(indent, ' ') + padded(text, name_columns + 3);
  };
  std::string result;
  for (std::size_t b = 0; b < std::min(bands.size(), most_bands); ++b) {
    result += fmt::format("\n{}{}\n", first_column("tick"),
                          painted(look, Role::quiet, scale_line(bands[b], look)));
    for (auto s : sheet.shown)
      result += first_column(names[s].name) + signal_line(sheet, s, bands[b], look) + "\n";
  }
  if (bands.size() > most_bands) {
    result +=
        fmt::format("\nand {} more bands from tick {} on: choose --signals, or take --as vcd\n",
                    bands.size() - most_bands, bands[most_bands].front().from);
  }
  return result;
}

std::string deeds_table(WavesSheet const& sheet) {
  auto const& circuit = sheet.subject.design.circuit;
  std::vector<std::vector<std::string>> lines;
  for (auto const& deed : sheet.deeds) {
    if (lines.size() == most_deeds) break;
    auto const& signal = circuit.signals[deed.input];
    auto words = deed_words(signal.kind, sheet.subject.map.signals[deed.input].name,
                            sheet.recording.is_on(deed.input, deed.tick));
    if (signal.kind == model::SignalKind::button)
      words += fmt::format(" for {}", counted(static_cast<std::size_t>(signal.ticks), "tick"));
    lines.push_back({fmt::format("tick {}", deed.tick), std::move(words)});
  }
  auto text = aligned(lines, indent);
  if (sheet.deeds.size() > most_deeds)
    text += fmt::format("    and {} more\n", sheet.deeds.size() - most_deeds);
  return text;
}

std::string ending(WavesSheet const& sheet, int ticks_per_second, Look look) {
  auto const& recording = sheet.recording;
  std::string text;
  if (!recording.unquiet.empty()) {
    std::vector<std::string> ticks;
    for (auto tick : recording.unquiet) ticks.push_back(std::to_string(tick));
    text += fmt::format("{} within {} {}: what is on from there on is one way it can go\n",
                        painted(look, Role::error, "did not get quiet"),
                        ticks.size() == 1 ? "tick" : "ticks", listed(ticks));
  }
  if (recording.is_over) {
    text += fmt::format("quiet {}\n", recording.active_until == 0
                                          ? "throughout"
                                          : fmt::format("from tick {} on", recording.active_until));
  } else {
    text += fmt::format("not over after {}: --for shows more\n",
                        time_words(recording.last_tick, ticks_per_second));
  }
  return text;
}

}  // namespace

std::string deed_words(model::SignalKind kind, std::string const& name, bool is_on) {
  switch (kind) {
    case model::SignalKind::button:
      return name + (is_on ? " pressed" : " let go");
    case model::SignalKind::plate:
      return name + (is_on ? " pressed" : " left");
    default:
      return name + (is_on ? " on" : " off");
  }
}

std::string time_words(int ticks, int ticks_per_second) {
  auto const count = counted(static_cast<std::size_t>(ticks), "tick");
  if (ticks < ticks_per_second) return count;
  return fmt::format("{} ({:.4g} s)", count,
                     static_cast<double>(ticks) / static_cast<double>(ticks_per_second));
}

std::string waves_text(WavesSheet const& sheet, std::size_t columns, Look look) {
  auto const ticks_per_second = sheet.subject.design.practice[model::Rule::ticks_per_second];
  auto result = fmt::format(
      "{}\n", painted(look, Role::strong,
                      "signals over " + time_words(sheet.recording.last_tick, ticks_per_second)));
  result += sheet.deeds.empty() ? "    nothing is done\n" : deeds_table(sheet);
  result += picture(sheet, columns, look);
  result.append("\n").append(ending(sheet, ticks_per_second, look));
  return result + fmt::format("\n{}\n    {}    on      {}    off      {}    some ticks left out\n",
                              painted(look, Role::quiet, "signs"), look.is_ascii ? "#" : "▄",
                              look.is_ascii ? "." : "·", cut_sign(look));
}

}  // namespace leat::render
