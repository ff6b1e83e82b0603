#include "tests/laws/random_junction.hpp"

#include <algorithm>
#include <set>

namespace leat::laws {

namespace {

using model::Cell;
using model::Fill;
using model::FillId;
using model::Operator;
using model::Place;
namespace material = model::material;

class Crew {
 public:
  Crew(unsigned seed, int footprint)
      : dice_(seed),
        footprint_(footprint),
        hole_every_(one_in(2) ? 300 : number(8, 30)),
        rare_every_(number(15, 60)),
        pillar_every_(number(4, 12)) {}

  model::Design dig() {
    design_.grid = model::Grid{number(3, 9), number(3, 9), number(2, 9)};  // in this order
    declare_fills();
    for (int z = 0, next_floor = 0; z < grid().height(); ++z) {
      bool const is_floor = z == next_floor;
      if (is_floor) next_floor += number(2, 4);
      for_each_column([&](int x, int y) { put({x, y, z}, is_floor ? floor() : room()); });
    }
    for (int pits = number(0, 2); pits > 0; --pits) sink_pit();
    for (int springs = number(1, 4); springs > 0; --springs) hang_spring();
    if (!one_in(3)) dig_run();
    place_ports();
    set_profiles();
    if (one_in(4)) open_the_outside();
    if (one_in(3)) set_figures();
    return std::move(design_);
  }

 private:
  model::Grid const& grid() const { return design_.grid; }
  int number(int least, int most) {
    return least + static_cast<int>(dice_() % static_cast<unsigned>(most - least + 1));
  }
  bool one_in(int n) { return number(1, n) == 1; }
  Place somewhere() {
    return {number(0, grid().width() - 1), number(0, grid().depth() - 1),
            std::max(number(0, grid().height() - 1), number(0, grid().height() - 1))};
  }
  // A place in a room with rock under it, if a few throws find one.
  Place on_a_floor() {
    auto at = somewhere();
    for (int throws = 0; throws < 20; ++throws, at = somewhere()) {
      auto const c = grid().cell(at);
      if (design_.fill_of[c] != material::open) continue;
      if (design_.fill_of[grid().below(c)] == material::rock) break;
    }
    return at;
  }
  void put(Place at, FillId fill) {
    if (grid().is_inside(at)) design_.fill_of[grid().cell(at)] = fill;
  }
  template <class Visit>
  void for_each_column(Visit visit) {
    for (int y = 0; y < grid().depth(); ++y) {
      for (int x = 0; x < grid().width(); ++x) visit(x, y);
    }
  }

  FillId declare(Fill fill) {
    design_.fills.push_back(fill);
    return static_cast<FillId>(design_.fills.size() - 1);
  }
  FillId declare(model::Material made_of) {
    auto const id = static_cast<model::MaterialId>(design_.materials.size());
    design_.materials.push_back(made_of);
    return declare(Fill{id, id, {}});
  }

  void declare_fills() {
    auto& circuit = design_.circuit;
    circuit.signals = {{model::SignalKind::lever, false, 0},
                       {model::SignalKind::lever, one_in(2), 0}};
    auto const first = circuit.add({Operator::signal, 0, 0});
    auto const second = circuit.add({Operator::signal, 1, 0});
    auto const both = circuit.add({Operator::conjunction, first, second});
    for (model::MaterialId id = 0; id < 5; ++id) declare(Fill{id, id, {}});
    for (auto made_of :
         {model::Material{.water_enters = true, .carries = true, .shows_slope = true},
          {.water_enters = true, .body_enters = true, .bears_sources = true},
          {.body_enters = true, .carries = true, .shows_slope = true}}) {
      rare_.push_back(declare(made_of));
    }
    rare_.push_back(material::sign);
    rare_.push_back(material::plate);
    for (auto control : {first, second, both}) {
      rare_.push_back(declare(Fill{material::rock, material::open, control}));
      rare_.push_back(declare(Fill{material::open, material::rock, control}));
      rare_.push_back(declare(Fill{material::water, material::open, control}));
    }
    design_.fill_of.assign(grid().size(), material::rock);
  }

  FillId rare() {
    return rare_[static_cast<std::size_t>(number(0, static_cast<int>(rare_.size()) - 1))];
  }
  FillId floor() {
    return one_in(rare_every_)   ? rare()
           : one_in(hole_every_) ? FillId{material::open}
                                 : FillId{material::rock};
  }
  FillId room() {
    return one_in(rare_every_)     ? rare()
           : one_in(pillar_every_) ? FillId{material::rock}
                                   : FillId{material::open};
  }

  void sink_pit() {
    auto const at = somewhere();
    bool const is_wide = one_in(2), is_filled = one_in(2);
    for (int z = std::max(1, at.z - 4); z <= at.z; ++z) {
      auto const fill =
          is_filled && z < at.z - 2 ? FillId{material::water} : FillId{material::open};
      put({at.x, at.y, z}, fill);
      if (is_wide) put({at.x + 1, at.y, z}, fill);
    }
  }

  // A source, and often its twin two cells on, so that between them a third can form.
  void hang_spring() {
    auto const at = one_in(3) ? somewhere() : on_a_floor();
    put(at, material::water);
    if (one_in(3)) put({at.x + 2, at.y, at.z}, material::water);
    if (one_in(4)) put({at.x, at.y, at.z + 1}, material::water);
    if (one_in(4)) put({at.x, at.y, at.z - 1}, material::sign);
    near_water_.push_back({at.x + 1, at.y, at.z});
  }

  // From near a corner, high up: a channel that a source feeds, over an edge with a sign into a
  // shaft, perhaps with a pool, and perhaps a column of falling water in the way that lifts. Or the
  // water runs on signs at head level, under a roof.
  void dig_run() {
    Place at{number(0, 1), number(0, 1), std::max(1, grid().height() - number(2, 3))};
    bool const goes_east = grid().width() >= grid().depth(), is_at_head = one_in(4);
    auto const ahead = [&](Place from) {
      ++(goes_east ? from.x : from.y);
      return from;
    };
    put({at.x, at.y, at.z + (is_at_head ? 1 : 0)}, material::water);
    at = ahead(at);
    near_water_.push_back(at);
    int const room = std::max(grid().width(), grid().depth()) - 4;
    for (int length = number(1, std::max(1, room)); length > 0; --length, at = ahead(at)) {
      dig_wide(at, 2);
      if (!is_at_head) continue;
      put(at, material::sign);
      put({at.x, at.y, at.z + 2}, material::rock);
    }
    if (one_in(4)) put({at.x, at.y, at.z + 2}, material::water);
    int const pool = number(0, 3);
    for (int column = number(0, 1); column < 2; ++column, at = ahead(at)) {
      dig_wide(at, 2);
      for (int z = 1; z < at.z; ++z) {
        put({at.x, at.y, z}, z <= pool ? material::water : material::open);
      }
      if (!one_in(4)) put(at, material::sign);
    }
  }

  void dig_wide(Place at, int height) {
    put({at.x, at.y, at.z - 1}, material::rock);
    for (int level = 0; level < height; ++level) {
      for (int i = 0; i < footprint_ * footprint_; ++i) {
        put({at.x + i / 2, at.y + i % 2, at.z + level}, material::open);
      }
    }
  }

  void place_ports() {
    auto const open_place = [&](Place at) {
      for (int level = 0; level < 2; ++level) {
        for (int y = 0; y < footprint_; ++y) {
          for (int x = 0; x < footprint_; ++x) {
            Place const cell{at.x + x, at.y + y, at.z + level};
            if (!grid().is_inside(cell)) continue;
            if (design_.fill_of[grid().cell(cell)] == material::rock) put(cell, material::open);
          }
        }
      }
      return at;
    };
    for (int inlet = 0; inlet < 2; ++inlet) {
      auto at =
          one_in(4) ? on_a_floor() : near_water_[near_water_.size() - 1 - inlet_from_end(inlet)];
      if (!grid().is_inside(at)) at = on_a_floor();
      design_.inlets.push_back({{grid().cell(open_place(at))}});
    }
    std::set<Cell> taken;
    for (int outlet = 0; outlet < 3; ++outlet) {
      model::Port port;
      for (int cells = number(1, 4); cells > 0; --cells) {
        auto const c = grid().cell(open_place(on_a_floor()));
        if (taken.insert(c).second) port.cells.push_back(c);
      }
      std::sort(port.cells.begin(), port.cells.end());
      if (!port.cells.empty()) design_.outlets.push_back(port);
    }
  }

  std::size_t inlet_from_end(int inlet) const {
    return std::min(static_cast<std::size_t>(inlet), near_water_.size() - 1);
  }

  void set_profiles() {
    design_.profiles = {{.footprint = footprint_, .height = 2, .floats = true},
                        {.footprint = footprint_, .height = 1, .floats = true},
                        {.footprint = footprint_, .height = 2, .floats = false}};
  }

  void open_the_outside() {
    design_.outside_is_open = true;
    for (Cell c = 0; c < grid().size(); ++c) {
      if (!grid().is_inside(c)) design_.fill_of[c] = material::open;
    }
  }

  void set_figures() {
    design_.practice.set(model::Rule::hole_search, number(0, 8));
    design_.practice.set(model::Rule::source_strength, number(2, 12));
    if (one_in(3)) design_.practice.set(model::Rule::source_makers, number(1, 4));
    if (one_in(3)) design_.practice.set(model::Rule::eager_makers, number(1, 4));
  }

  std::mt19937 dice_;
  int footprint_;
  int hole_every_, rare_every_, pillar_every_;  // one cell in so many
  model::Design design_;
  std::vector<FillId> rare_;
  std::vector<Place> near_water_;
};

}  // namespace

model::Design random_junction(unsigned seed, int footprint) { return Crew(seed, footprint).dig(); }

model::Design with_many_levers(model::Design design, unsigned seed) {
  design.circuit = {};
  std::vector<model::ExpressionId> levers;
  for (model::SignalId lever = 0; lever < 6; ++lever) {
    design.circuit.signals.push_back({model::SignalKind::lever, (seed >> lever & 1u) != 0, 0});
    levers.push_back(design.circuit.add({model::Operator::signal, lever, 0}));
  }
  for (std::size_t f = 0; f < design.fills.size(); ++f) {
    if (design.fills[f].control) design.fills[f].control = levers[f % levers.size()];
  }
  return design;
}

std::vector<explore::Setting> settings_of(model::Design const& design) {
  auto const is_drawn = explore::fills_drawn(design);
  std::vector<explore::Setting> settings;
  for (unsigned row = 0; row < 4; ++row) {
    auto setting = explore::setting_in(design, is_drawn, {(row & 2u) != 0, (row & 1u) != 0});
    if (std::find(settings.begin(), settings.end(), setting) == settings.end())
      settings.push_back(std::move(setting));
  }
  return settings;
}

std::vector<model::Arrangement> arrangements_of(model::Design const& design) {
  std::vector<model::Arrangement> arrangements;
  for (auto const& setting : settings_of(design)) arrangements.emplace_back(design, setting);
  return arrangements;
}

}  // namespace leat::laws
