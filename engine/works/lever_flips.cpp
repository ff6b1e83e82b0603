#include "engine/works/lever_flips.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "engine/works/claims.hpp"

namespace leat::works {

namespace {

using Level = logic::Diagram::Level;

// Levels in an order in which each flip leads to a combination that is kept, depth first; none
// where there is none, or they are too many for all orders to be looked through.
class Order {
 public:
  Order(logic::Diagram const& diagram, Function kept, std::vector<Level> const& levels,
        Instance from)
      : diagram_(diagram), kept_(kept), levels_(levels), values_(std::move(from)) {
    constexpr std::size_t most = 12;
    if (levels.size() > most) return;
    is_dead_.assign(std::size_t{1} << levels.size(), false);
    go_on(0);
  }

  std::optional<std::vector<Level>> found() const {
    return order_.size() == levels_.size() ? std::optional(order_) : std::nullopt;
  }

 private:
  bool go_on(std::size_t done) {
    if (order_.size() == levels_.size()) return true;
    if (is_dead_[done]) return false;
    for (std::size_t i = 0; i < levels_.size(); ++i) {
      if ((done >> i & 1u) != 0) continue;
      auto const level = levels_[i];
      values_[level] = !values_[level];
      order_.push_back(level);
      if (diagram_.is_true(kept_, values_) && go_on(done | std::size_t{1} << i)) return true;
      order_.pop_back();
      values_[level] = !values_[level];
    }
    is_dead_[done] = true;
    return false;
  }

  logic::Diagram const& diagram_;
  Function kept_;
  std::vector<Level> const& levels_;
  Instance values_;
  std::vector<bool> is_dead_;  // by set of levels done
  std::vector<Level> order_;
};

class Levers {
 public:
  Levers(model::Circuit const& plant, Conditions& conditions)
      : plant_(plant), conditions_(conditions), diagram_(conditions.diagram()) {
    for (auto variable : conditions.variables())
      values_.push_back(plant.signals[variable].starts_on);
  }

  void flip(model::SignalId signal) {
    if (plant_.signals[signal].kind == model::SignalKind::wire) return flip_wire(signal);
    auto const& variables = conditions_.variables();
    auto const at = std::find(variables.begin(), variables.end(), signal);
    require(at != variables.end(), "lever_flips: an input that conditions follow from");
    flip_level(static_cast<Level>(at - variables.begin()));
  }

  std::vector<model::SignalId> taken() { return std::move(inputs_); }

 private:
  void flip_level(Level level) {
    inputs_.push_back(conditions_.variables()[level]);
    values_[level] = !values_[level];
  }

  void flip_wire(model::SignalId signal) {
    auto const wire = conditions_.of_signal(signal);
    auto const changed = diagram_.is_true(wire, values_) ? !wire : wire;
    auto const reachable = conditions_.reachable();
    auto next = nearest(diagram_, diagram_.both(changed, reachable), values_);
    if (!next) next = nearest(diagram_, changed, values_);
    // Then its levers are not known, and it is named itself.
    if (diagram_.has_run_out()) return inputs_.push_back(signal);
    require(next.has_value(), "lever_flips: a wire that changes");
    std::vector<Level> levels;
    for (Level level = 0; level < values_.size(); ++level)
      if ((*next)[level] != values_[level]) levels.push_back(level);
    // With memory its values would have to be led along.
    bool const is_free = conditions_.has_memory() || reachable == logic::Diagram::always;
    if (!is_free) levels = Order(diagram_, reachable, levels, values_).found().value_or(levels);
    for (auto level : levels) flip_level(level);
  }

  model::Circuit const& plant_;
  Conditions& conditions_;
  logic::Diagram& diagram_;
  Instance values_;
  std::vector<model::SignalId> inputs_;
};

}  // namespace

std::vector<model::SignalId> lever_flips(model::Circuit const& plant, Conditions& conditions,
                                         std::vector<model::SignalId> const& flips) {
  Levers levers(plant, conditions);
  for (auto signal : flips) levers.flip(signal);
  return levers.taken();
}

std::optional<std::vector<model::SignalId>> flips_to(model::Circuit const& plant,
                                                     Conditions const& conditions,
                                                     Instance const& instance) {
  if (conditions.has_memory()) return std::nullopt;
  auto const& variables = conditions.variables();
  Instance built;
  std::vector<Level> levels;
  for (Level level = 0; level < variables.size(); ++level) {
    built.push_back(plant.signals[variables[level]].starts_on);
    if (built[level] != instance[level]) levels.push_back(level);
  }
  if (conditions.reachable() != logic::Diagram::always) {
    auto order = Order(conditions.diagram(), conditions.reachable(), levels, built).found();
    if (!order) return std::nullopt;
    levels = std::move(*order);
  }
  std::vector<model::SignalId> flips;
  for (auto level : levels) flips.push_back(variables[level]);
  return flips;
}

}  // namespace leat::works
