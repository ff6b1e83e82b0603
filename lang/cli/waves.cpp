#include <fmt/format.h>

#include <algorithm>

#include "lang/cli/commands.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/parts.hpp"
#include "lang/cli/script.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/waves.hpp"

namespace leat::cli {

namespace {

std::optional<std::vector<model::SignalId>> shown_signals(render::Subject const& subject,
                                                          std::string const& wanted,
                                                          Terminal& terminal) {
  std::vector<model::SignalId> shown;
  if (wanted.empty()) {
    for (model::SignalId s = 0; s < subject.design.circuit.signals.size(); ++s) shown.push_back(s);
    if (!shown.empty()) return shown;
    terminal.refuse("the design has no signals", "a run over time shows levers, buttons, memory");
    return std::nullopt;
  }
  for (auto part : parts_of(wanted)) {
    std::string const name(part);
    auto const id = find_name(subject.map.signals, name, "signal", terminal);
    if (!id) return std::nullopt;
    if (std::find(shown.begin(), shown.end(), *id) != shown.end()) {
      terminal.refuse(fmt::format("--signals names '{}' twice", name));
      return std::nullopt;
    }
    shown.push_back(*id);
  }
  return shown;
}

// From the script's end: as long as --for says, else until quiet, within what is worth waiting for.
std::optional<logic::RunLength> length_of(render::Subject const& subject, Script const& script,
                                          std::string const& duration, Terminal& terminal) {
  if (duration.empty()) {
    auto const patience = logic::patience(subject.design.circuit);
    return logic::RunLength{script.ticks, std::min(logic::most_ticks, script.ticks + patience)};
  }
  auto const more = ticks_of(duration, subject.design.practice[model::Rule::ticks_per_second]);
  if (!more) {
    terminal.refuse(
        fmt::format("--for does not understand '{}'", render::showable(duration)),
        fmt::format("write 20 ticks or 2 s, at most {} ticks in all", logic::most_ticks));
    return std::nullopt;
  }
  auto const end = script.ticks + *more;
  if (end <= logic::most_ticks) return logic::RunLength{end, end};
  terminal.refuse(fmt::format("the run would last {} ticks", end),
                  fmt::format("at most {} are recorded", logic::most_ticks));
  return std::nullopt;
}

std::string written(render::WavesSheet const& sheet, std::string const& format,
                    Terminal const& terminal) {
  if (format == "vcd") return render::waves_vcd(sheet);
  if (format == "json") return render::waves_document(sheet);
  return render::waves_text(sheet, terminal.result_columns(), terminal.result_look());
}

}  // namespace

// What does not get quiet within the rounds of a tick is not proved to oscillate, and what is on
// from there on is not known: undecided.
Exit run(WavesOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  if (loaded->junctions.empty()) {
    terminal.refuse("the design has no junction");
    return Exit::unusable;
  }
  auto const subject = loaded->subject(0);
  auto shown = shown_signals(subject, options.signals, terminal);
  if (!shown) return Exit::unusable;
  auto script = read_script(subject, options.deeds, terminal);
  if (!script) return Exit::unusable;
  auto const length = length_of(subject, *script, options.duration, terminal);
  if (!length) return Exit::unusable;
  auto recording = logic::record(subject.design.circuit, script->deeds, *length);
  bool const is_known = recording.unquiet.empty();
  terminal.result(
      written({subject, std::move(*shown), std::move(script->deeds), std::move(recording)},
              options.format, terminal));
  if (!is_known)
    terminal.refuse("the signals do not get quiet within a tick",
                    "leat machine names what oscillates");
  return is_known ? Exit::holds : Exit::undecided;
}

}  // namespace leat::cli
