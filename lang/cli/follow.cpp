#include <algorithm>

#include "engine/body/surroundings.hpp"
#include "engine/body/travel.hpp"
#include "lang/cli/commands.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/setting.hpp"
#include "lang/render/trail_text.hpp"

namespace leat::cli {

namespace {

// Endings of each kind that are shown; the rest is counted.
constexpr std::size_t most_of_a_kind = 4;

struct Question {
  model::InletId inlet = 0;
  std::vector<model::ProfileId> profiles;
  std::optional<model::OutletId> outlet;
};

std::optional<Question> question_of(render::Subject const& subject, FollowOptions const& options,
                                    Terminal& terminal) {
  Question question;
  auto const inlet = find_name(subject.map.inlets, options.inlet, "inlet", terminal);
  if (!inlet) return std::nullopt;
  question.inlet = *inlet;
  for (model::ProfileId p = 0; p < subject.design.profiles.size(); ++p) {
    question.profiles.push_back(p);
  }
  if (!options.body.empty()) {
    auto const body = find_name(subject.map.profiles, options.body, "body", terminal);
    if (!body) return std::nullopt;
    question.profiles = {*body};
  }
  if (!options.outlet.empty()) {
    question.outlet = find_name(subject.map.outlets, options.outlet, "outlet", terminal);
    if (!question.outlet) return std::nullopt;
  }
  return question;
}

render::TrailPart part_of(render::Subject const& subject, Question const& question,
                          Situation const& situation, model::ProfileId profile) {
  auto const& solved = situation.solved;
  auto const& design = subject.design;
  body::Surroundings const here(solved.arrangement, solved.field, design.profiles[profile]);
  auto graph = body::route_graph(here, body::entries(here, design.inlets[question.inlet].cells),
                                 body::outlet_cells(design));
  auto outcome = body::outcome_of(graph);
  auto components = body::strong_components(graph);
  auto dominators = body::immediate_dominators(graph);
  std::vector<render::Pace> paces;
  for (auto outlet : outcome.outlets)
    paces.push_back({outlet, body::quickest_trip(here, graph, outlet),
                     body::longest_trip(here, graph, outlet),
                     body::throughput(here, graph, outlet)});
  return {subject,
          question.inlet,
          profile,
          situation.assignment,
          situation.flips,
          situation.standing,
          std::move(graph),
          std::move(outcome),
          std::move(components),
          std::move(dominators),
          std::move(paces)};
}

render::Journey journey_of(render::TrailPart const& part, render::Scene const& scene,
                           std::optional<model::OutletId> outlet) {
  render::Journey journey{part, scene, {}, 0};
  std::array<std::size_t, 4> of_kind{};
  for (auto& ending : body::endings(part.graph)) {
    bool const is_delivery = ending.kind == body::EndingKind::outlet;
    if (outlet && !(is_delivery && ending.outlet == *outlet)) continue;
    bool const is_shown =
        is_delivery || of_kind[static_cast<std::size_t>(ending.kind)]++ < most_of_a_kind;
    if (is_shown) {
      journey.endings.push_back(std::move(ending));
    } else {
      ++journey.left_out;
    }
  }
  return journey;
}

std::string text_of(render::TrailPart const& part, Solved const& solved,
                    std::optional<model::OutletId> outlet, Terminal& terminal) {
  render::Scene const scene{part.subject, &solved.arrangement,
                            water::survey({solved.arrangement, solved.field})};
  auto const journey = journey_of(part, scene, outlet);
  auto text = render::journey_text(journey, terminal.result_look());
  if (outlet && journey.endings.empty()) {
    text += "\nIts ways do not lead to " + part.subject.map.outlets[*outlet].name + ".\n";
  }
  return text;
}

}  // namespace

Exit run(FollowOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  auto const chosen = chosen_junctions(*loaded, options.junction, terminal);
  if (!chosen) return Exit::unusable;
  std::vector<render::TrailPart> parts;
  std::string text;
  for (auto i : with_inlet(*loaded, *chosen, options.inlet)) {
    auto const subject = loaded->subject(i);
    auto const question = question_of(subject, options, terminal);
    if (!question) return Exit::unusable;
    auto const situation = read_situation(subject, options.when, options.deeds, terminal);
    if (!situation) return Exit::unusable;
    for (auto profile : question->profiles) {
      parts.push_back(part_of(subject, *question, *situation, profile));
      if (options.format != "text") continue;
      if (!text.empty()) text += "\n\n";
      text += text_of(parts.back(), situation->solved, question->outlet, terminal);
    }
  }
  terminal.result(options.format == "text" ? text : render::trail_document(parts));
  return Exit::holds;
}

}  // namespace leat::cli
