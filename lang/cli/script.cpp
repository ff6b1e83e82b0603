#include "lang/cli/script.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "lang/cli/loaded.hpp"
#include "lang/cli/parts.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/words.hpp"

namespace leat::cli {

namespace {

using logic::Handling;
using model::SignalKind;

constexpr std::string_view how_to_write =
    "write what is done with commas between: NAME, NAME on, NAME off, wait 20 ticks, wait 2 s";

class Reader {
 public:
  Reader(render::Subject const& subject, Terminal& terminal)
      : subject_(subject), terminal_(terminal) {}

  std::optional<Script> read(std::string_view text) {
    if (trimmed(text).empty()) return Script{};
    for (auto step : parts_of(text)) {
      if (step.empty()) {
        terminal_.refuse("--do has a comma with nothing beside it", how_to_write);
        return std::nullopt;
      }
      if (!read_step(step)) return std::nullopt;
    }
    script_.ticks = now_ + waited_;
    return std::move(script_);
  }

 private:
  bool read_step(std::string_view step) {
    auto const words = words_of(step);
    bool const has_number = words.size() > 1 && words[1].front() >= '0' && words[1].front() <= '9';
    if (words.front() == "wait" && has_number) return wait(step);
    now_ += (waited_ > 0 ? waited_ : 1);
    waited_ = 0;
    if (!is_within_bounds(step)) return false;
    std::vector<std::string_view> deed;
    for (auto word : words) {
      if (word != "and") {
        deed.push_back(word);
        continue;
      }
      if (!read_deed(deed, step)) return false;
      deed.clear();
    }
    return read_deed(deed, step);
  }

  bool wait(std::string_view step) {
    auto const ticks_per_second = subject_.design.practice[model::Rule::ticks_per_second];
    auto const ticks = ticks_of(step.substr(std::string_view("wait").size()), ticks_per_second);
    if (!ticks) return is_not_understood(step);
    waited_ += *ticks;
    return is_within_bounds(step);
  }

  bool read_deed(std::vector<std::string_view> const& words, std::string_view step) {
    if (words.empty() || words.size() > 2) return is_not_understood(step);
    auto handling = Handling::flip;
    if (words.size() == 2) {
      if (words[1] != "on" && words[1] != "off") return is_not_understood(step);
      handling = words[1] == "on" ? Handling::turn_on : Handling::turn_off;
    }
    std::string const name(words.front());
    if (name == "wait" && !is_signal(name)) return is_not_understood(step);
    auto const id = find_name(subject_.map.signals, name, "signal", terminal_);
    if (!id || !can_be_done(*id, name, handling)) return false;
    script_.deeds.push_back({now_, *id, handling});
    return true;
  }

  bool is_signal(std::string const& name) const {
    auto const& signals = subject_.map.signals;
    return std::any_of(signals.begin(), signals.end(),
                       [&](source::Named const& named) { return named.name == name; });
  }

  bool can_be_done(model::SignalId id, std::string const& name, Handling handling) {
    auto const kind = subject_.design.circuit.signals[id].kind;
    if (kind == SignalKind::clock) {
      terminal_.refuse(fmt::format("'{}' is a clock: it runs by itself", name),
                       "wait until it has changed");
      return false;
    }
    if (kind >= SignalKind::wire) {
      terminal_.refuse(
          fmt::format("'{}' is a {}: it follows from other signals", name, render::word_of(kind)),
          "do something to the inputs that it depends on");
      return false;
    }
    if (kind == SignalKind::button && handling == Handling::turn_off) {
      terminal_.refuse(fmt::format("'{}' is a button: it goes off by itself", name),
                       "wait until its pulse is over");
      return false;
    }
    bool is_twice = false;
    auto const& deeds = script_.deeds;
    for (auto deed = deeds.rbegin(); deed != deeds.rend() && deed->tick == now_; ++deed)
      is_twice = is_twice || deed->input == id;
    if (is_twice) terminal_.refuse(fmt::format("--do does two things to '{}' in one tick", name));
    return !is_twice;
  }

  bool is_within_bounds(std::string_view step) {
    if (now_ + waited_ <= logic::most_ticks) return true;
    terminal_.refuse(
        fmt::format("--do goes past tick {} at '{}'", logic::most_ticks, render::showable(step)),
        "longer runs are not recorded");
    return false;
  }

  bool is_not_understood(std::string_view step) {
    terminal_.refuse(fmt::format("--do does not understand '{}'", render::showable(step)),
                     how_to_write);
    return false;
  }

  render::Subject const& subject_;
  Terminal& terminal_;
  Script script_;
  int now_ = 0, waited_ = 0;
};

}  // namespace

std::optional<int> ticks_of(std::string_view text, int ticks_per_second) {
  text = trimmed(text);
  int number = 0;
  auto const [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (fault != std::errc{} || number < 1 || number > logic::most_ticks) return std::nullopt;
  auto const unit = trimmed(text.substr(static_cast<std::size_t>(end - text.data())));
  if (unit == "tick" || unit == "ticks") return number;
  if (unit != "s") return std::nullopt;
  auto const ticks = std::int64_t{number} * ticks_per_second;
  return ticks > logic::most_ticks ? std::nullopt : std::optional<int>(static_cast<int>(ticks));
}

std::optional<Script> read_script(render::Subject const& subject, std::string const& text,
                                  Terminal& terminal) {
  return Reader(subject, terminal).read(text);
}

}  // namespace leat::cli
