#include <algorithm>
#include <iterator>

#include "engine/body/surroundings.hpp"
#include "engine/body/travel.hpp"
#include "engine/model/joins.hpp"
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
  auto const inlet = find_inlet(subject.map, options.inlet, terminal);
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
    question.outlet = find_outlet(subject.map, options.outlet, terminal);
    if (!question.outlet) return std::nullopt;
  }
  return question;
}

render::TrailPart part_of(render::Subject const& subject, model::InletId inlet,
                          Situation const& situation, model::ProfileId profile,
                          body::OutletCells const& outlets) {
  auto const& solved = situation.solved;
  auto const& design = subject.design;
  body::Surroundings const here(solved.arrangement, solved.field, design.profiles[profile]);
  auto graph = body::route_graph(here, body::entries(here, design.inlets[inlet].cells), outlets);
  auto outcome = body::outcome_of(graph);
  auto components = body::strong_components(graph);
  auto dominators = body::immediate_dominators(graph);
  std::vector<render::Pace> paces;
  for (auto outlet : outcome.outlets)
    paces.push_back({outlet, body::quickest_trip(here, graph, outlet),
                     body::longest_trip(here, graph, outlet),
                     body::throughput(here, graph, outlet)});
  return {subject,
          inlet,
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

// The ways from the inlet asked for and, along joins, from every further one that they lead to, in
// the order in which they are come to.
std::vector<render::TrailPart> parts_along(render::Subject const& subject, Question const& question,
                                           Situation const& situation, model::ProfileId profile) {
  std::vector<render::TrailPart> parts;
  auto const outlets = body::outlet_cells(subject.design);
  model::Joins const joins(subject.design);
  std::vector<model::InletId> met{question.inlet};
  std::vector<bool> is_met(subject.design.inlets.size(), false);
  is_met[question.inlet] = true;
  std::vector<works::Stretch> stretches;
  for (std::size_t i = 0; i < met.size(); ++i) {
    parts.push_back(part_of(subject, met[i], situation, profile, outlets));
    for (auto const& pace : parts.back().paces) {
      stretches.push_back({met[i], pace.outlet, pace.quickest, pace.longest});
      auto const& join = joins.from(pace.outlet);
      if (!join || is_met[join->inlet]) continue;
      is_met[join->inlet] = true;
      met.push_back(join->inlet);
    }
  }
  if (met.size() > 1)
    parts.front().arrivals = works::arrivals(subject.design, question.inlet, stretches);
  return parts;
}

// Of the parts from which ways lead to an outlet, by way of the others, the outlets that they lead
// over; none of the other parts. Idea: back from the outlet, over the joins. Cost: linear in the
// paces.
std::vector<std::vector<model::OutletId>> leading_to(std::vector<render::TrailPart> const& parts,
                                                     model::OutletId outlet) {
  auto const& design = parts.front().subject.design;
  model::Joins const joins(design);
  struct Step {
    std::size_t part;
    model::OutletId over;
  };
  std::vector<std::size_t> part_from(design.inlets.size());
  for (std::size_t i = 0; i < parts.size(); ++i) part_from[parts[i].inlet] = i;
  std::vector<std::vector<Step>> before(parts.size());  // by part, what joins lead from into it
  std::vector<std::size_t> open;
  std::vector<std::vector<model::OutletId>> leading(parts.size());
  auto const lead = [&](Step step) {
    if (leading[step.part].empty()) open.push_back(step.part);
    leading[step.part].push_back(step.over);
  };
  for (std::size_t i = 0; i < parts.size(); ++i) {
    for (auto const& pace : parts[i].paces) {
      if (pace.outlet == outlet)
        lead({i, outlet});
      else if (auto const& join = joins.from(pace.outlet))
        before[part_from[join->inlet]].push_back({i, pace.outlet});
    }
  }
  while (!open.empty()) {
    auto const part = open.back();
    open.pop_back();
    for (auto const& step : before[part]) lead(step);
  }
  return leading;
}

render::Journey journey_of(render::TrailPart const& part, render::Scene const& scene,
                           std::vector<model::OutletId> const* outlets) {
  render::Journey journey{part, scene, {}, 0};
  std::array<std::size_t, 4> of_kind{};
  for (auto& ending : body::endings(part.graph)) {
    bool const is_delivery = ending.kind == body::EndingKind::outlet;
    bool const is_asked_for =
        outlets == nullptr || (is_delivery && std::find(outlets->begin(), outlets->end(),
                                                        ending.outlet) != outlets->end());
    if (!is_asked_for) continue;
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

// Every part, or those on the way to one outlet with what leads there.
std::string text_of(std::vector<render::TrailPart> const& parts, Solved const& solved,
                    std::optional<model::OutletId> outlet, Terminal& terminal) {
  std::string text;
  render::Scene const scene{parts.front().subject, &solved.arrangement,
                            water::survey({solved.arrangement, solved.field})};
  std::vector<std::vector<model::OutletId>> wanted;  // by part; where one outlet is asked for
  if (outlet) wanted = leading_to(parts, *outlet);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (outlet && i > 0 && wanted[i].empty()) continue;
    if (i > 0) text += "\n\n";
    text += render::journey_text(journey_of(parts[i], scene, outlet ? &wanted[i] : nullptr),
                                 terminal.result_look());
  }
  if (outlet && wanted.front().empty()) {
    text += "\nIts ways do not lead to " + parts.front().subject.map.outlets[*outlet].name + ".\n";
  }
  auto const together = render::arrivals_text(parts.front(), terminal.result_look());
  return together.empty() ? text : text + "\n\n" + together;
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
      auto own = parts_along(subject, *question, *situation, profile);
      if (options.format == "text") {
        if (!text.empty()) text += "\n\n";
        text += text_of(own, situation->solved, question->outlet, terminal);
      } else {
        std::move(own.begin(), own.end(), std::back_inserter(parts));
      }
    }
  }
  terminal.result(options.format == "text" ? text : render::trail_document(parts));
  return Exit::holds;
}

}  // namespace leat::cli
