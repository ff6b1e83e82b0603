#include "engine/works/supports.hpp"

#include <algorithm>
#include <iterator>

#include "engine/logic/cone.hpp"
#include "engine/water/influence.hpp"

namespace leat::works {

using model::Cell;
using model::Profile;
using model::Side;

Signals united(Signals const& a, Signals const& b) {
  Signals all;
  std::set_union(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(all));
  return all;
}

bool includes(Signals const& all, Signals const& some) {
  return std::includes(all.begin(), all.end(), some.begin(), some.end());
}

namespace {

// What expressions follow from.
class Origins {
 public:
  explicit Origins(model::Circuit const& circuit) : circuit_(circuit), cones_(circuit) {}

  Signals const& of(model::ExpressionId root) {
    auto const [entry, is_new] = known_.try_emplace(root);
    if (!is_new) return entry->second;
    for (auto signal : cones_.of({root}).signals) {
      auto const& own = circuit_.signals[signal];
      if (own.is_input() || own.is_memory()) entry->second.push_back(signal);
    }
    std::sort(entry->second.begin(), entry->second.end());
    return entry->second;
  }

 private:
  model::Circuit const& circuit_;
  logic::Cones cones_;
  std::map<model::ExpressionId, Signals> known_;
};

}  // namespace

Supports::Supports(model::Design const& design)
    : design_(&design), bounds_(design), of_water_(design.grid.size()) {
  Origins origins(design.circuit);
  for (auto const& fill : design.fills) {
    bool const is_switched = fill.control && fill.powered != fill.unpowered;
    of_fill_.push_back(is_switched ? origins.of(*fill.control) : Signals());
  }
  for (auto const& acceptance : design.acceptances)
    of_acceptance_.push_back(acceptance.condition ? origins.of(*acceptance.condition) : Signals());
  water::Influence const influence(bounds_);
  std::vector<std::vector<Cell>> read_by(design.grid.size());
  std::map<model::SignalId, std::vector<Cell>> switching;
  for (Cell c = 0; c < design.grid.size(); ++c) {
    if (!design.grid.is_inside(c)) continue;
    auto const reads = influence.reads(c);
    for (auto read : reads.water) read_by[read].push_back(c);
    for (auto read : reads.material) {
      for (auto signal : of_fill_[design.fill_of[read]]) switching[signal].push_back(c);
    }
  }
  for (auto const& [signal, cells] : switching) lead_on(read_by, signal, cells);
  for (auto fill : design.fill_of) {
    if (!includes(all_, of_fill_[fill])) all_ = united(all_, of_fill_[fill]);
  }
}

// Signals are led on in ascending order, so that each list comes out sorted.
void Supports::lead_on(std::vector<std::vector<Cell>> const& read_by, model::SignalId signal,
                       std::vector<Cell> const& from) {
  std::vector<Cell> open;
  auto const take = [&](Cell c) {
    auto& own = of_water_[c];
    if (!own.empty() && own.back() == signal) return;
    own.push_back(signal);
    open.push_back(c);
  };
  for (auto c : from) take(c);
  while (!open.empty()) {
    auto const c = open.back();
    open.pop_back();
    for (auto reader : read_by[c]) take(reader);
  }
}

// The feet-level cells of the body, and those it would have one cell further to each side.
template <class Visit>
void Supports::each_column(Cell feet, Profile const& profile, bool is_beside, Visit visit) const {
  auto const& grid = design_->grid;
  auto const last = profile.footprint - 1;
  auto const rim = is_beside ? 1 : 0;
  for (int y = -rim; y <= last + rim; ++y) {
    for (int x = -rim; x <= last + rim; ++x) {
      bool const is_across = (x < 0 || x > last) && (y < 0 || y > last);
      auto const at = grid.place(feet);
      if (!is_across) visit(grid.cell({at.x + x, at.y + y, at.z}));
    }
  }
}

template <class Test>
bool Supports::any_of_body(Cell feet, Profile const& profile, Test test) const {
  bool is_found = false;
  each_column(feet, profile, false, [&](Cell column) {
    for (int level = 0; level < profile.height; ++level)
      is_found = is_found || test(design_->grid.raised(column, level));
  });
  return is_found;
}

bool Supports::may_fit(Cell feet, Profile const& profile) const {
  return !any_of_body(feet, profile, [&](Cell c) {
    auto const& fill = design_->fills[design_->fill_of[c]];
    bool const may_enter = design_->materials[fill.unpowered].body_enters ||
                           (fill.is_switched() && design_->materials[fill.powered].body_enters);
    return !may_enter;
  });
}

bool Supports::may_fall(Cell feet, Profile const& profile) const {
  if (any_of_body(feet, profile, [&](Cell c) { return bounds_.is_surely_wet(c); })) return false;
  bool is_carried = false;
  each_column(feet, profile, false, [&](Cell column) {
    auto const& fill = design_->fills[design_->fill_of[design_->grid.below(column)]];
    auto const carries = [&](model::MaterialId id) {
      return design_->materials[id].carries || !design_->materials[id].body_enters;
    };
    is_carried =
        is_carried || (carries(fill.unpowered) && (!fill.is_switched() || carries(fill.powered)));
  });
  return !is_carried;
}

std::vector<Cell> Supports::read_by_moves(Cell feet, Profile const& profile) const {
  auto const z = design_->grid.place(feet).z;
  auto const deepest = may_fall(feet, profile) ? 2 + design_->practice[model::Rule::sink_cells]
                                               : (profile.floats ? 1 : 2);
  std::vector<Cell> read;
  each_column(feet, profile, true, [&](Cell column) {
    for (int level = -std::min(deepest, z + 1); level <= profile.height; ++level)
      read.push_back(design_->grid.raised(column, level));
  });
  return read;
}

Signals Supports::of_moves(Cell feet, Profile const& profile) const {
  Signals all;
  for (auto c : read_by_moves(feet, profile)) {
    for (auto const* more : {&of_fill_[design_->fill_of[c]], &of_water_[c]})
      if (!includes(all, *more)) all = united(all, *more);
  }
  return all;
}

Signals Supports::of_surroundings(Cell c) const {
  auto const& grid = design_->grid;
  Signals all;
  auto const add = [&](Cell near) {
    for (auto const* more : {&of_fill_[design_->fill_of[near]], &of_water_[near]})
      if (!includes(all, *more)) all = united(all, *more);
  };
  for (auto near : {c, grid.above(c), grid.below(c)}) add(near);
  for (auto side : model::sides) add(grid.beside(c, side));
  return all;
}

// Where one move may lead, in any water within the bounds.
std::vector<Cell> Supports::next_feet(Cell feet, Profile const& profile) const {
  auto const& grid = design_->grid;
  std::vector<Cell> next;
  auto const under = [&](Cell c) {
    for (int depth = 0; depth <= design_->practice[model::Rule::sink_cells]; ++depth) {
      next.push_back(c);
      if (grid.place(c).z < 0) break;
      c = grid.below(c);
    }
  };
  if (may_fall(feet, profile)) {
    under(grid.below(feet));
    for (auto side : model::sides) under(grid.beside(grid.below(feet), side));
  }
  if (any_of_body(feet, profile, [&](Cell c) { return bounds_.may_be_wet(c); })) {
    next.push_back(grid.above(feet));
    if (!profile.floats) next.push_back(grid.below(feet));
    for (auto side : model::sides) {
      next.push_back(grid.beside(feet, side));
      next.push_back(grid.above(grid.beside(feet, side)));
    }
  }
  return next;
}

std::vector<Cell> Supports::feet_cells(Profile const& profile) const {
  auto const& grid = design_->grid;
  std::vector<bool> is_met(grid.size(), false);
  std::vector<Cell> met;
  auto const meet = [&](Cell feet) {
    if (is_met[feet] || !grid.is_inside(feet) || !may_fit(feet, profile)) return;
    is_met[feet] = true;
    met.push_back(feet);
  };
  for (auto const& inlet : design_->inlets) {
    for (auto c : inlet.cells) meet(c);
  }
  std::vector<bool> is_outlet(grid.size(), false);
  for (auto const& outlet : design_->outlets) {
    for (auto c : outlet.cells) is_outlet[c] = true;
  }
  for (std::size_t i = 0; i < met.size(); ++i) {
    if (is_outlet[met[i]]) continue;
    for (auto next : next_feet(met[i], profile)) meet(next);
  }
  std::sort(met.begin(), met.end());
  return met;
}

}  // namespace leat::works
