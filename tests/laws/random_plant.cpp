#include "tests/laws/random_plant.hpp"

#include <algorithm>
#include <map>

#include "tests/laws/random_junction.hpp"
#include "tests/laws/symmetry.hpp"

namespace leat::laws {

using model::Design;
using model::ExpressionId;

namespace {

class Plant {
 public:
  Plant(unsigned seed, bool has_memory) : random_(seed) {
    auto const kinds = 1 + below(3), blocks = 2 + below(4);
    std::vector<Design> designs;
    for (unsigned k = 0; k < kinds; ++k) designs.push_back(random_junction(1000 * seed + k));
    for (unsigned b = 0; b < blocks; ++b)
      blocks_.push_back(turned(designs[below(static_cast<unsigned>(designs.size()))]));
    begin(designs.front());
    add_signals(2 + below(3), has_memory);
    for (auto const& block : blocks_) place(block);
    join();
  }

  Design taken() { return std::move(plant_); }

 private:
  unsigned below(unsigned bound) { return static_cast<unsigned>(random_() % bound); }

  Design turned(Design const& design) {
    return Symmetry(design.grid, static_cast<int>(below(Symmetry::count))).applied(design);
  }

  void begin(Design const& first) {
    int width = 1, depth = 1, height = 1;
    for (auto const& block : blocks_) {
      width += block.grid.width() + 1;
      depth = std::max(depth, block.grid.depth() + 2);
      height = std::max(height, block.grid.height() + 2);
    }
    plant_.grid = model::Grid(width, depth, height);
    plant_.materials = first.materials;
    plant_.practice = first.practice;
    plant_.profiles = first.profiles;
    plant_.fills.push_back({});
    plant_.fill_of.assign(plant_.grid.size(), 0);
  }

  ExpressionId signal(model::Signal const& added) {
    plant_.circuit.signals.push_back(added);
    auto const id = static_cast<model::SignalId>(plant_.circuit.signals.size() - 1);
    return plant_.circuit.add({model::Operator::signal, id, 0});
  }

  void add_signals(unsigned levers, bool has_memory) {
    for (unsigned s = 0; s < levers; ++s) {
      model::Signal lever;
      lever.starts_on = below(4) == 0;
      values_.push_back(signal(lever));
    }
    if (!has_memory) return;
    model::Signal latch{model::SignalKind::latch, false, values_[0], values_[1], 0};
    values_.push_back(signal(latch));
  }

  ExpressionId expression() {
    auto const any = [&] {
      auto const value = values_[below(static_cast<unsigned>(values_.size()))];
      return below(3) == 0 ? plant_.circuit.add({model::Operator::negation, value, 0}) : value;
    };
    auto const left = any();
    if (below(2) == 0) return left;
    constexpr model::Operator operators[] = {model::Operator::conjunction,
                                             model::Operator::disjunction, model::Operator::parity};
    return plant_.circuit.add({operators[below(3)], left, any()});
  }

  void place(Design const& block) {
    ExpressionId const controls[] = {expression(), expression()};
    std::vector<model::FillId> fill_of_block;
    for (auto fill : block.fills) {
      if (fill.control) fill.control = controls[block.circuit.expressions[*fill.control].left % 2];
      fill_of_block.push_back(static_cast<model::FillId>(plant_.fills.size()));
      plant_.fills.push_back(fill);
    }
    auto const moved = [&](model::Cell c) {
      auto const at = block.grid.place(c);
      return plant_.grid.cell({at.x + next_x_, at.y + 1, at.z + 1});
    };
    for (model::Cell c = 0; c < block.grid.size(); ++c) {
      if (block.grid.is_inside(c)) plant_.fill_of[moved(c)] = fill_of_block[block.fill_of[c]];
    }
    for (auto const& [from, to] :
         {std::pair{&block.inlets, &plant_.inlets}, std::pair{&block.outlets, &plant_.outlets}}) {
      for (auto const& port : *from) {
        to->emplace_back();
        for (auto c : port.cells) to->back().cells.push_back(moved(c));
        std::sort(to->back().cells.begin(), to->back().cells.end());
      }
    }
    next_x_ += block.grid.width() + 1;
  }

  void join() {
    auto const inlets = static_cast<unsigned>(plant_.inlets.size());
    for (model::OutletId outlet = 0; outlet < plant_.outlets.size(); ++outlet) {
      if (below(2) == 0) plant_.joins.push_back({outlet, below(inlets), std::nullopt});
    }
  }

  std::mt19937 random_;
  Design plant_;
  std::vector<Design> blocks_;
  std::vector<ExpressionId> values_;
  int next_x_ = 1;
};

}  // namespace

Design random_plant(unsigned seed, bool has_memory) { return Plant(seed, has_memory).taken(); }

}  // namespace leat::laws
