#include <fmt/format.h>

#include "lang/cli/commands.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/script.hpp"
#include "lang/cli/setting.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/train.hpp"

namespace leat::cli {

namespace {

std::optional<explore::TrainOrder> order_of(render::Subject const& subject,
                                            TrainOptions const& options, Terminal& terminal) {
  explore::TrainOrder order;
  auto const inlet = find_inlet(subject.map, options.inlet, terminal);
  if (!inlet) return std::nullopt;
  order.inlet = *inlet;
  if (!options.body.empty()) {
    auto const body = find_name(subject.map.profiles, options.body, "body", terminal);
    if (!body) return std::nullopt;
    order.profile = *body;
  }
  auto const interval =
      ticks_of(options.interval, subject.design.practice[model::Rule::ticks_per_second]);
  if (!interval) {
    terminal.refuse(
        fmt::format("--every does not understand '{}'", render::showable(options.interval)),
        "write 40 ticks or 2 s");
    return std::nullopt;
  }
  order.interval = *interval;
  order.count = options.count;
  if (!explore::is_runnable(order)) {
    terminal.refuse(
        fmt::format("the train would take more than {} ticks to enter", explore::longest_entry),
        "send fewer bodies, or closer together");
    return std::nullopt;
  }
  auto flips = read_flips(subject, options.deeds, terminal);
  if (!flips) return std::nullopt;
  order.flips = std::move(*flips);
  return order;
}

}  // namespace

Exit run(TrainOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  auto const chosen = chosen_junctions(*loaded, options.junction, terminal);
  if (!chosen) return Exit::unusable;
  std::vector<render::TrainPart> parts;
  std::string text;
  for (auto i : with_inlet(*loaded, *chosen, options.inlet)) {
    auto const subject = loaded->subject(i);
    if (subject.map.is_works()) {
      terminal.refuse(
          fmt::format("{} is a works: trains are run through junctions", subject.map.junction.name),
          "name what is placed by --junction; leat follow tells the times through a works");
      return Exit::unusable;
    }
    auto const order = order_of(subject, options, terminal);
    if (!order) return Exit::unusable;
    if (!fits_machine(subject.design)) {
      terminal.refuse("the design has too many signals to be run from as built");
      return Exit::undecided;
    }
    auto const circuit = circuit_to_run(subject.design);
    parts.push_back(
        {subject, *order, explore::run_train(subject.design, logic::Machine(circuit), *order)});
    if (!parts.back().run.is_quiet) {
      terminal.refuse("the signals or the water do not come to rest, before the train or in it",
                      "leat machine names what oscillates, or says what is not known");
      return Exit::undecided;
    }
    if (options.format != "text") continue;
    text.append(text.empty() ? "" : "\n")
        .append(render::train_text(parts.back(), terminal.result_look()));
  }
  terminal.result(options.format == "text" ? text : render::train_document(parts));
  return Exit::holds;
}

}  // namespace leat::cli
