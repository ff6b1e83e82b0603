#include "engine/works/mixed_waters.hpp"

#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/strong_components.hpp>

#include "engine/logic/restriction.hpp"
#include "engine/model/joins.hpp"

namespace leat::works {

namespace {

// How many of a part's pieces have unlike waters, by routes, in one combination.
std::size_t remembering(WorksJudgement const& judged, std::uint32_t part) {
  if (auto const& walk = judged.by_regions[part]) return walk->remembering();
  auto const& findings = judged.parts[part].findings;
  return std::any_of(findings.begin(), findings.end(), [](findings::Finding const& finding) {
    return finding.kind == model::FindingKind::remembering_water &&
           finding.severity >= model::Severity::warning;
  });
}

// By copy, whether joins lead from it, through whatever copies, back into it: within its strong
// component, or from itself to itself.
std::vector<bool> copies_that_return(model::Design const& plant, Islands const& islands) {
  model::Joins const joins(plant);
  std::vector<std::vector<std::uint32_t>> copies_into(plant.inlets.size());
  auto const count = static_cast<std::uint32_t>(islands.copies.size());
  for (std::uint32_t c = 0; c < count; ++c) {
    for (auto inlet : islands.copies[c].inlets) copies_into[inlet].push_back(c);
  }
  std::vector<std::pair<std::uint32_t, std::uint32_t>> arrows;
  for (std::uint32_t c = 0; c < count; ++c) {
    for (auto outlet : islands.copies[c].outlets) {
      auto const& join = joins.from(outlet);
      if (!join) continue;
      for (auto into : copies_into[join->inlet]) arrows.emplace_back(c, into);
    }
  }
  using Graph = boost::compressed_sparse_row_graph<boost::directedS>;
  Graph const graph(boost::edges_are_unsorted_multi_pass, arrows.begin(), arrows.end(), count);
  std::vector<std::uint32_t> component(count);
  boost::strong_components(graph, boost::make_iterator_property_map(
                                      component.begin(), boost::get(boost::vertex_index, graph)));
  std::vector<bool> returns(count, false);
  for (auto const& [from, to] : arrows)
    if (component[from] == component[to]) returns[from] = true;
  return returns;
}

// Which waters are taken together that follow from one signal, or from what another remembers.
class Mixing {
 public:
  Mixing(model::Design const& plant, Conditions& conditions)
      : conditions_(conditions),
        is_memory_(plant.circuit.signals.size(), false),
        is_followed_(conditions.variables().size(), false) {
    for (auto variable : conditions.variables()) {
      is_memory_[variable] = plant.circuit.signals[variable].is_memory();
      memory_count_ += is_memory_[variable] ? 1 : 0;
    }
  }

  // Whether memory of the plant does not stand in a copy's own rows. `own`: what its part depends
  // on.
  bool has_other_memory(Copy const& copy, std::vector<model::SignalId> const& own) const {
    auto const own_count = std::count_if(own.begin(), own.end(), [&](model::SignalId signal) {
      return is_memory_[copy.signals[signal]];
    });
    return own_count < memory_count_;
  }

  // Whether some copy before follows from a signal of this one.
  bool shares_signals(Copy const& copy, std::vector<model::SignalId> const& own) {
    bool is_shared = false;
    for (auto level : logic::support(conditions_.diagram(), inputs_of(copy, own, conditions_))) {
      is_shared = is_shared || is_followed_[level];
      is_followed_[level] = true;
    }
    return is_shared;
  }

 private:
  Conditions& conditions_;
  std::vector<bool> is_memory_;  // by signal, of the variables
  std::ptrdiff_t memory_count_ = 0;
  std::vector<bool> is_followed_;  // by level
};

}  // namespace

MixedWaters mixed_waters(model::Design const& plant, WorksJudgement const& judged) {
  auto const& islands = judged.islands;
  MixedWaters mixed;
  Mixing mixing(plant, *judged.conditions);
  std::vector<bool> returns;  // by copy, once some part remembers
  for (std::uint32_t part = 0; part < islands.parts.size(); ++part) {
    auto const count = remembering(judged, part);
    if (count == 0) continue;
    if (returns.empty()) returns = copies_that_return(plant, islands);
    auto const own = support(islands.parts[part]);
    mixed.may_mix = mixed.may_mix || count > 1 || !plant.circuit.nevers.empty();
    for (auto c : islands.parts[part].copies) {
      auto const& copy = islands.copies[c];
      mixed.may_return = mixed.may_return || returns[c];
      mixed.may_mix = mixed.may_mix || mixed.may_return || mixing.has_other_memory(copy, own) ||
                      mixing.shares_signals(copy, own);
    }
  }
  return mixed;
}

}  // namespace leat::works
