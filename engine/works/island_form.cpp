#include "engine/works/island_form.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>

#include "engine/logic/modules.hpp"

namespace leat::works {

using model::Cell;
using model::Design;
using model::Place;

void Box::include(Place at) {
  least = {std::min(least.x, at.x), std::min(least.y, at.y), std::min(least.z, at.z)};
  most = {std::max(most.x, at.x), std::max(most.y, at.y), std::max(most.z, at.z)};
}

Forms::Forms(Design const& plant, std::vector<std::uint8_t> const& is_joining,
             std::vector<std::uint32_t> const& island_of)
    : plant_(&plant), island_of_(&island_of), cones_(plant.circuit) {
  std::map<std::tuple<model::MaterialId, model::MaterialId, std::optional<model::ExpressionId>>,
           std::uint32_t>
      kinds;
  solid_ = static_cast<model::FillId>(plant.fills.size());
  for (model::FillId f = 0; f <= solid_; ++f) {
    auto const fill = f < solid_ ? plant.fills[f] : model::Fill{};
    auto const powered = fill.is_switched() ? fill.powered : fill.unpowered;
    auto const next = static_cast<std::uint32_t>(of_kind_.size());
    auto const kind =
        kinds.try_emplace({powered, fill.unpowered, fill.control}, next).first->second;
    kind_of_.push_back(kind);
    if (kind == next) of_kind_.emplace_back();
    of_kind_[kind].push_back(f);
  }
  number_.assign(kind_of_.size(), no_island);
  for (model::FillId f = 0; f < solid_; ++f)
    is_other_solid_.push_back(is_joining[f] == 0 && kind_of_[f] != kind_of_[solid_]);
  is_other_solid_.push_back(false);
  has_other_solids_ =
      std::find(is_other_solid_.begin(), is_other_solid_.end(), true) != is_other_solid_.end();
  for (model::InletId id = 0; id < plant.inlets.size(); ++id)
    mark(plant.inlets[id].cells, Role::inlet, id);
  for (model::OutletId id = 0; id < plant.outlets.size(); ++id)
    mark(plant.outlets[id].cells, Role::outlet, id);
  for (std::uint32_t id = 0; id < plant.plates.size(); ++id)
    mark(plant.plates[id].cells, Role::plate, id);
  for (std::uint32_t id = 0; id < plant.acceptances.size(); ++id) {
    if (auto const cell = plant.acceptances[id].cell)
      mark({*cell}, Role::acceptance, id);
    else
      accepted_anywhere_.push_back(id);
  }
}

void Forms::mark(std::vector<Cell> const& cells, Role role, std::uint32_t id) {
  for (auto cell : cells) {
    auto const island = (*island_of_)[cell];
    if (island == no_island) continue;
    if (marks_.size() <= island) marks_.resize(island + 1);
    marks_[island].push_back({cell, role, id});
  }
}

// Reads the box of one island in one posture, with a margin of one cell but where the island meets
// the open outside, and numbers fills, ports and signals as they are met.
class Forms::Reader {
 public:
  Reader(Forms& forms, std::uint32_t island, Box const& box, Posture posture)
      : forms_(forms), plant_(*forms.plant_), island_(island) {
    least_ = {box.least.x - 1, box.least.y - 1, box.least.z - 1};
    most_ = {box.most.x + 1, box.most.y + 1, box.most.z + 1};
    bool const is_at_edge = !plant_.grid.is_inside(least_) || !plant_.grid.is_inside(most_);
    if (plant_.outside_is_open && is_at_edge) clamp();
    form_.design.outside_is_open = plant_.outside_is_open && is_at_edge;
    form_.copy.corner = least_;
    form_.copy.posture = posture;
    auto const width = most_.x - least_.x + 1, depth = most_.y - least_.y + 1;
    form_.design.grid = model::Grid(posture.is_across() ? depth : width,
                                    posture.is_across() ? width : depth, most_.z - least_.z + 1);
  }

  Form read() {
    read_cells();
    for (auto kind : met_) number(kind, no_island);
    read_marks();
    for (auto id : forms_.accepted_anywhere_) accept(id, {});
    wire();
    return std::move(form_);
  }

 private:
  void clamp() {
    auto const& grid = plant_.grid;
    least_ = {std::max(least_.x, 0), std::max(least_.y, 0), std::max(least_.z, 0)};
    most_ = {std::min(most_.x, grid.width() - 1), std::min(most_.y, grid.depth() - 1),
             std::min(most_.z, grid.height() - 1)};
  }

  Place whole(Place at) const { return place_in_plant(form_.copy, form_.design.grid, at); }

  // The box lies in the drawing and its rim, which is solid: where the outside is open, the box was
  // clamped. So cells are counted on from the first by steps, which wrap where a posture goes west
  // or north in the plant.
  void read_cells() {
    auto const& grid = plant_.grid;
    auto const first = grid.cell(whole({0, 0, 0}));
    auto const east = grid.cell(whole({1, 0, 0})) - first,
               south = grid.cell(whole({0, 1, 0})) - first;
    auto const layer = grid.above(0);
    auto const& own = form_.design.grid;
    row_.resize(static_cast<std::size_t>(own.width()));
    for (int z = 0; z < own.height(); ++z) {
      for (int y = 0; y < own.depth(); ++y) {
        auto const here = first + static_cast<Cell>(z) * layer + static_cast<Cell>(y) * south;
        read_row(here, east);
        if (forms_.has_other_solids_) leave_out_untouched(here, east);
        add_row();
      }
    }
  }

  // What belongs to another island is solid here: nothing of it is ever looked at.
  void read_row(Cell here, Cell step) {
    auto const* islands = forms_.island_of_->data() + here;
    auto const* fill_of = plant_.fill_of.data() + here;
    if (step == 1) {
      std::copy_n(fill_of, row_.size(), row_.data());
      auto const own = island_, solid = forms_.solid_;
      for (auto& cell : row_) {
        cell = *islands == own || *islands == no_island ? cell : solid;
        ++islands;
      }
    } else {
      auto const stride = static_cast<std::ptrdiff_t>(static_cast<std::int32_t>(step));
      for (auto& cell : row_) {
        cell = *islands == island_ || *islands == no_island ? *fill_of : forms_.solid_;
        islands += stride;
        fill_of += stride;
      }
    }
  }

  // Such cells lie in the drawing, so all their neighbours have a number.
  void leave_out_untouched(Cell here, Cell step) {
    for (auto& cell : row_) {
      if (forms_.is_other_solid_[cell] && !is_touched(here)) cell = forms_.solid_;
      here += step;
    }
  }
  bool is_touched(Cell c) const {
    auto const& grid = plant_.grid;
    for (auto level : {grid.below(c), c, grid.above(c)}) {
      auto const north = grid.beside(level, model::Side::north),
                 south = grid.beside(level, model::Side::south);
      for (auto middle : {north, level, south}) {
        for (auto next = middle - 1; next != middle + 2; ++next)
          if ((*forms_.island_of_)[next] == island_) return true;
      }
    }
    return false;
  }

  void add_row() {
    auto& runs = form_.runs;
    auto last = last_;
    for (auto const cell : row_) {
      if (cell != last) {
        last = cell;
        if (forms_.number_[cell] == no_island) add_fill(cell);
        auto const fill = forms_.number_[cell];
        if (runs.empty() || runs.back().fill != fill) runs.push_back({read_, fill});
      }
      runs.back().end = ++read_;
    }
    last_ = last;
  }

  // A kind met first gets the next number.
  void add_fill(model::FillId met) {
    auto fill = met < plant_.fills.size() ? plant_.fills[met] : model::Fill{};
    if (!fill.is_switched()) fill.powered = fill.unpowered;
    met_.push_back(forms_.kind_of_[met]);
    number(met_.back(), static_cast<std::uint32_t>(form_.design.fills.size()));
    form_.design.fills.push_back(fill);
  }
  void number(std::uint32_t kind, std::uint32_t number) {
    for (auto fill : forms_.of_kind_[kind]) forms_.number_[fill] = number;
  }

  static Place from(Place a, Place b) { return {b.x - a.x, b.y - a.y, b.z - a.z}; }

  // In the order of the drawing in this posture.
  void read_marks() {
    if (island_ >= forms_.marks_.size()) return;
    auto const first = whole({0, 0, 0});
    auto const east = from(first, whole({1, 0, 0})), south = from(first, whole({0, 1, 0}));
    std::vector<std::pair<Cell, Mark const*>> marks;
    marks.reserve(forms_.marks_[island_].size());
    for (auto const& mark : forms_.marks_[island_]) {
      auto const way = from(first, plant_.grid.place(mark.cell));
      Place const own{way.x * east.x + way.y * east.y, way.x * south.x + way.y * south.y, way.z};
      marks.emplace_back(form_.design.grid.cell(own), &mark);
    }
    std::sort(marks.begin(), marks.end(), [](auto const& a, auto const& b) {
      return std::tie(a.first, a.second->role, a.second->id) <
             std::tie(b.first, b.second->role, b.second->id);
    });
    for (auto const& [own, mark] : marks) read_mark(*mark, own);
  }

  void read_mark(Mark const& mark, Cell own) {
    switch (mark.role) {
      case Role::inlet:
        return enter_port(form_.copy.inlets, form_.design.inlets, mark.id, own);
      case Role::outlet:
        return enter_port(form_.copy.outlets, form_.design.outlets, mark.id, own);
      case Role::plate:
        plate_cells_[mark.id].push_back(own);
        return;
      case Role::acceptance:
        return accept(mark.id, own);
    }
  }

  template <class Id>
  static void enter_port(std::vector<Id>& known, std::vector<model::Port>& ports, Id id, Cell own) {
    auto const at =
        static_cast<std::size_t>(std::find(known.begin(), known.end(), id) - known.begin());
    if (at == known.size()) {
      known.push_back(id);
      ports.emplace_back();
    }
    ports[at].cells.push_back(own);
  }

  void accept(std::uint32_t id, std::optional<Cell> cell) {
    form_.copy.acceptances.push_back(id);
    form_.design.acceptances.push_back(plant_.acceptances[id]);
    form_.design.acceptances.back().cell = cell;
  }

  // The circuit, once all that it controls is known.
  void wire() {
    auto& design = form_.design;
    std::vector<model::ExpressionId> roots;
    for_each_use([&](model::ExpressionId use) { roots.push_back(use); });
    auto cone = forms_.cone_of(roots);
    for_each_use(
        [&, root = cone.roots.begin()](model::ExpressionId& use) mutable { use = *root++; });
    design.circuit = std::move(cone.circuit);
    form_.copy.signals = std::move(cone.signals);
    for (auto& [plate, cells] : plate_cells_) {
      auto const signal = plant_.plates[plate].signal;
      auto const& signals = form_.copy.signals;
      auto const own = std::find(signals.begin(), signals.end(), signal);
      if (own == signals.end()) continue;
      design.plates.push_back({static_cast<model::SignalId>(own - signals.begin()), cells});
    }
    std::sort(design.plates.begin(), design.plates.end(),
              [](auto const& a, auto const& b) { return a.signal < b.signal; });
  }

  template <class Visit>
  void for_each_use(Visit visit) {
    for (auto& fill : form_.design.fills)
      if (fill.control) visit(*fill.control);
    for (auto& acceptance : form_.design.acceptances)
      if (acceptance.condition) visit(*acceptance.condition);
  }

  Forms& forms_;
  Design const& plant_;
  std::uint32_t island_;
  Place least_, most_;
  Form form_;
  std::vector<model::FillId> row_;  // that is being read
  model::FillId last_ = no_island;  // of the row before
  std::uint32_t read_ = 0;          // cells in runs
  std::vector<std::uint32_t> met_;  // kinds of fills that have a number
  std::map<std::uint32_t, std::vector<Cell>> plate_cells_;
};

logic::Cone Forms::cone_of(std::vector<model::ExpressionId> const& roots) {
  auto cone = cones_.of(roots);
  auto const levers = logic::modules(cone);
  return levers.empty() ? cone : cones_.of(roots, levers);
}

Form Forms::of(std::uint32_t island, Box const& box, Posture posture) {
  return Reader(*this, island, box, posture).read();
}

namespace {

bool is_joining(model::Material const& material) {
  return material.water_enters || material.body_enters || material.is_source ||
         material.shows_slope;
}

}  // namespace

std::vector<std::uint8_t> joining_fills(Design const& plant) {
  std::vector<std::uint8_t> joining;
  for (auto const& fill : plant.fills) {
    auto const &powered = plant.materials[fill.powered],
               &unpowered = plant.materials[fill.unpowered];
    joining.push_back(is_joining(unpowered) ||
                      (fill.is_switched() && (is_joining(powered) || powered != unpowered)));
  }
  return joining;
}

Part part_of(Form form, Design const& plant) {
  Part part{std::move(form.design), std::move(form.runs), {}};
  auto& design = part.design;
  design.materials = plant.materials;
  design.profiles = plant.profiles;
  design.practice = plant.practice;
  auto const outside = design.outside_is_open ? model::material::open : model::material::rock;
  design.fills.push_back({outside, outside, std::nullopt});  // the rim's, always the last one
  return part;
}

Design Part::drawn() const {
  auto whole = design;
  auto const& grid = whole.grid;
  whole.fill_of.assign(grid.size(), static_cast<model::FillId>(whole.fills.size() - 1));
  auto run = runs.begin();
  std::uint32_t next = 0;
  for (int z = 0; z < grid.height(); ++z) {
    for (int y = 0; y < grid.depth(); ++y) {
      auto* cell = whole.fill_of.data() + grid.cell({0, y, z});
      for (auto const end = next + static_cast<std::uint32_t>(grid.width()); next != end;) {
        if (next == run->end) ++run;
        auto const count = std::min(run->end, end) - next;
        cell = std::fill_n(cell, count, run->fill);
        next += count;
      }
    }
  }
  return whole;
}

}  // namespace leat::works
