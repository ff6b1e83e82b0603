#include <fmt/format.h>

#include "lang/render/columns.hpp"
#include "lang/render/example.hpp"
#include "lang/render/train.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::string end_words(Subject const& subject, explore::Arrival const& body) {
  if (body.outlet) return subject.map.outlets[*body.outlet].name;
  if (body.end == body::End::spill) return "leaves the drawing";
  if (body.cell == model::no_cell) return "does not fit into the inlet";
  return "is at " + place_code(subject.design.grid.place(body.cell)) + " at the end";
}

std::vector<std::optional<model::OutletId>> outlets_of(explore::TrainRun const& run) {
  std::vector<std::optional<model::OutletId>> outlets;
  for (auto const& body : run.bodies) outlets.push_back(body.outlet);
  return outlets;
}

}  // namespace

std::string train_text(TrainPart const& part, Look look) {
  auto const& [subject, order, run] = part;
  auto result = fmt::format(
      "{}\n    from     {}\n    train    {}, a {} every {}\n    before   {}\n    deals    {}\n\n",
      painted(look, Role::strong, "junction " + subject.map.junction.name),
      subject.map.inlets[order.inlet].name, counted(run.bodies.size(), "body", "bodies"),
      subject.map.profiles[order.profile].name, time_words(subject, order.interval),
      order.flips.empty() ? "as built" : player_steps(subject, order.flips),
      dealt_words(subject, outlets_of(run)));
  std::vector<std::vector<std::string>> lines{{"body", "enters", "ends", "where"}};
  for (std::size_t i = 0; i < run.bodies.size(); ++i) {
    auto const& body = run.bodies[i];
    lines.push_back({std::to_string(i + 1), fmt::format("tick {}", body.entered),
                     fmt::format("tick {}", body.ended), end_words(subject, body)});
  }
  result += aligned(lines, 4);
  if (run.had_choice)
    result +=
        "\n    A body had a choice of moves and took the first sure one: other runs are "
        "possible.\n";
  return result;
}

}  // namespace leat::render
