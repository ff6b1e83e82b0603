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

  // Some controls follow a wire, as what a place is given for a signal is one.
  ExpressionId control() {
    auto const followed = expression();
    if (below(2) == 0) return followed;
    auto const wire = static_cast<model::SignalId>(plant_.circuit.signals.size());
    plant_.circuit.wire_order.push_back(wire);
    return signal({model::SignalKind::wire, false, followed, 0, 0});
  }

  void place(Design const& block) {
    ExpressionId const controls[] = {control(), control()};
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

class Row {
 public:
  Row(unsigned seed, bool has_memory) : random_(seed), has_memory_(has_memory) {
    auto const count = has_memory ? 2 + below(2) : 3 + (below(4) == 0 ? 2 : below(2));
    auto const footprint = below(4) == 0 ? 2 : 1;
    for (unsigned b = 0; b < count; ++b) {
      auto const block = random_junction(10000 + 100 * seed + b, footprint);
      blocks_.push_back(
          Symmetry(block.grid, static_cast<int>(below(Symmetry::count))).applied(block));
    }
    begin();
    for (auto const& block : blocks_) place(block);
    int x = 0;
    for (std::size_t b = 0; b + 1 < blocks_.size(); ++b) {
      x += blocks_[b].grid.width();
      for (unsigned passages = 1 + below(2); passages > 0; --passages) break_through(b, x);
    }
  }

  Design taken() { return std::move(row_); }

 private:
  unsigned below(unsigned bound) { return static_cast<unsigned>(random_() % bound); }

  void begin() {
    int width = 0, depth = 1, height = 1;
    for (auto const& block : blocks_) {
      width += block.grid.width();
      depth = std::max(depth, block.grid.depth());
      height = std::max(height, block.grid.height());
    }
    auto const& first = blocks_.front();
    row_.grid = model::Grid(width, depth, height);
    row_.materials = first.materials;
    row_.practice = first.practice;
    row_.profiles = first.profiles;
    row_.fills = {{model::material::rock, model::material::rock, {}},
                  {model::material::open, model::material::open, {}}};
    row_.fill_of.assign(row_.grid.size(), 0);
  }

  void place(Design const& block) {
    std::vector<ExpressionId> levers;
    for (int lever = 0; lever < 2; ++lever) {
      model::Signal signal;
      signal.starts_on = below(4) == 0;
      row_.circuit.signals.push_back(signal);
      auto const id = static_cast<model::SignalId>(row_.circuit.signals.size() - 1);
      levers.push_back(row_.circuit.add({model::Operator::signal, id, 0}));
    }
    auto const third = has_memory_ && below(3) > 0
                           ? latch(levers)
                           : row_.circuit.add({model::Operator::conjunction, levers[0], levers[1]});
    auto const first_fill = static_cast<model::FillId>(row_.fills.size());
    for (auto fill : block.fills) {
      if (fill.control) {
        auto const& node = block.circuit.expressions[*fill.control];
        fill.control = node.op == model::Operator::signal ? levers[node.left] : third;
      }
      row_.fills.push_back(fill);
    }
    auto const moved = [&](model::Cell c) {
      auto const at = block.grid.place(c);
      return row_.grid.cell({at.x + next_x_, at.y, at.z});
    };
    for (model::Cell c = 0; c < block.grid.size(); ++c) {
      if (block.grid.is_inside(c)) row_.fill_of[moved(c)] = first_fill + block.fill_of[c];
    }
    for (auto const& [from, to] :
         {std::pair{&block.inlets, &row_.inlets}, std::pair{&block.outlets, &row_.outlets}}) {
      for (auto const& port : *from) {
        if (from == &block.outlets && below(2) == 0) continue;
        to->emplace_back();
        for (auto c : port.cells) to->back().cells.push_back(moved(c));
        std::sort(to->back().cells.begin(), to->back().cells.end());
      }
    }
    next_x_ += block.grid.width();
  }

  // On by one lever, off by the other.
  ExpressionId latch(std::vector<ExpressionId> const& levers) {
    row_.circuit.signals.push_back(
        {model::SignalKind::latch, false, levers[below(2)], levers[below(2)], 0});
    return row_.circuit.add({model::Operator::signal,
                             static_cast<model::SignalId>(row_.circuit.signals.size() - 1), 0});
  }

  // Two cells high, on either side of the wall before x.
  void break_through(std::size_t block, int x) {
    auto const &before = blocks_[block].grid, &after = blocks_[block + 1].grid;
    auto const y =
        static_cast<int>(below(static_cast<unsigned>(std::min(before.depth(), after.depth()))));
    auto const z =
        static_cast<int>(below(static_cast<unsigned>(std::min(before.height(), after.height()))));
    for (int side = x - 1; side <= x; ++side) {
      for (int level = z; level < std::min(z + 2, row_.grid.height()); ++level)
        row_.fill_of[row_.grid.cell({side, y, level})] = 1;
    }
  }

  std::mt19937 random_;
  bool has_memory_;
  Design row_;
  std::vector<Design> blocks_;
  int next_x_ = 0;
};

}  // namespace

Design random_row(unsigned seed, bool has_memory) { return Row(seed, has_memory).taken(); }

Design random_plant(unsigned seed, bool has_memory) { return Plant(seed, has_memory).taken(); }

}  // namespace leat::laws
