#include "engine/works/island_form.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>

namespace leat::works {

using model::Cell;
using model::Design;
using model::Place;

void Box::include(Place at) {
  least = {std::min(least.x, at.x), std::min(least.y, at.y), std::min(least.z, at.z)};
  most = {std::max(most.x, at.x), std::max(most.y, at.y), std::max(most.z, at.z)};
}

Forms::Marked Forms::marked(std::vector<model::Port> const& ports) {
  Marked cells;
  for (std::uint32_t port = 0; port < ports.size(); ++port) {
    for (auto c : ports[port].cells) cells.emplace_back(c, port);
  }
  std::sort(cells.begin(), cells.end());
  return cells;
}

Forms::Forms(Design const& plant, std::vector<std::uint32_t> const& island_of)
    : plant_(&plant),
      island_of_(&island_of),
      cones_(plant.circuit),
      inlets_(marked(plant.inlets)),
      outlets_(marked(plant.outlets)) {
  std::map<std::tuple<model::MaterialId, model::MaterialId, std::optional<model::ExpressionId>>,
           model::FillId>
      first;
  for (model::FillId f = 0; f < plant.fills.size(); ++f) {
    auto const& fill = plant.fills[f];
    auto const powered = fill.is_switched() ? fill.powered : fill.unpowered;
    alike_.push_back(first.try_emplace({powered, fill.unpowered, fill.control}, f).first->second);
  }
  auto const rock = first.find({model::material::rock, model::material::rock, std::nullopt});
  solid_ = rock == first.end() ? plant.fills.size() : rock->second;
  number_.assign(plant.fills.size() + 1, no_island);
  for (std::uint32_t plate = 0; plate < plant.plates.size(); ++plate) {
    for (auto c : plant.plates[plate].cells) plates_.emplace_back(c, plate);
  }
  std::sort(plates_.begin(), plates_.end());
  for (std::uint32_t a = 0; a < plant.acceptances.size(); ++a)
    acceptances_.emplace_back(plant.acceptances[a].cell.value_or(model::no_cell), a);
  std::sort(acceptances_.begin(), acceptances_.end());
  note_marked_cells();
}

void Forms::note_marked_cells() {
  is_marked_.assign(plant_->grid.size(), false);
  for (auto const* marked : {&inlets_, &outlets_, &plates_, &acceptances_}) {
    for (auto const& [c, number] : *marked) {
      if (c != model::no_cell) is_marked_[c] = true;
    }
  }
}

// Reads the box of one island in one posture, with a margin of one cell but where the island meets
// the open outside, and numbers fills, ports and signals as they are met.
class Forms::Reader {
 public:
  Reader(Forms& forms, std::uint32_t island, Box const& box, Posture posture)
      : forms_(forms), plant_(*forms.plant_), island_(island), posture_(posture) {
    least_ = {box.least.x - 1, box.least.y - 1, box.least.z - 1};
    most_ = {box.most.x + 1, box.most.y + 1, box.most.z + 1};
    bool const is_at_edge = !plant_.grid.is_inside(least_) || !plant_.grid.is_inside(most_);
    if (plant_.outside_is_open && is_at_edge) clamp();
    auto& design = form_.design;
    design.materials = plant_.materials;
    design.profiles = plant_.profiles;
    design.practice = plant_.practice;
    design.outside_is_open = plant_.outside_is_open && is_at_edge;
    form_.copy.corner = least_;
  }

  Form read() {
    bool const is_across = posture_.quarters % 2 == 1;
    auto const width = most_.x - least_.x + 1, depth = most_.y - least_.y + 1;
    form_.width = is_across ? depth : width;
    form_.depth = is_across ? width : depth;
    form_.height = most_.z - least_.z + 1;
    form_.fills_drawn.reserve(static_cast<std::size_t>(width * depth * form_.height));
    form_.design.grid = model::Grid(form_.width, form_.depth, form_.height);
    for (int z = 0; z < form_.height; ++z) {
      for (int y = 0; y < form_.depth; ++y) read_row(y, z);
    }
    for (auto met : met_) forms_.number_[met] = no_island;
    accept_everywhere();
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

  // Where in the plant a cell of the drawing in this posture is: the turns are undone, then the
  // mirror. A turn to the left takes east to north.
  Place whole(Place at) const {
    auto const width = most_.x - least_.x, depth = most_.y - least_.y;
    auto x = at.x, y = at.y;
    switch (posture_.quarters) {
      case 1:
        std::tie(x, y) = std::pair(width - at.y, at.x);
        break;
      case 2:
        std::tie(x, y) = std::pair(width - at.x, depth - at.y);
        break;
      case 3:
        std::tie(x, y) = std::pair(at.y, depth - at.x);
        break;
      default:
        break;
    }
    if (posture_.is_mirrored) x = width - x;
    return {least_.x + x, least_.y + y, least_.z + at.z};
  }

  // The margin of an island lies within the rim, so cells can be counted on from the first.
  void read_row(int y, int z) {
    auto const first = whole({0, y, z}), next = whole({1, y, z}),
               last = whole({form_.width - 1, y, z});
    auto const east = next.x - first.x, south = next.y - first.y;
    auto const& grid = plant_.grid;
    auto const step = east != 0
                          ? grid.beside(0, east > 0 ? model::Side::east : model::Side::west)
                          : grid.beside(0, south > 0 ? model::Side::south : model::Side::north);
    bool const is_inside = grid.is_inside(first) && grid.is_inside(last);
    auto const written = form_.fills_drawn.size();
    form_.fills_drawn.resize(written + static_cast<std::size_t>(form_.width));
    auto* fill = &form_.fills_drawn[written];
    auto place = first;
    auto here = grid.cell(first), own = form_.design.grid.cell({0, y, z});
    for (int x = 0; x < form_.width; ++x, ++own, ++fill, here += step) {
      *fill = is_inside || grid.is_inside(place) ? read_cell(here, own) : number_of_solid();
      place.x += east;
      place.y += south;
    }
  }

  // What belongs to another island is solid here: nothing of it is ever looked at.
  model::FillId read_cell(Cell here, Cell own) {
    auto const island = (*forms_.island_of_)[here];
    if (island == island_ && forms_.is_marked_[here]) read_marks(here, own);
    return island == island_ || island == no_island ? number_of_fill(here) : number_of_solid();
  }

  void read_marks(Cell here, Cell own) {
    meet(forms_.inlets_, here,
         [&](std::uint32_t id) { enter_port(form_.copy.inlets, form_.design.inlets, id, own); });
    meet(forms_.outlets_, here,
         [&](std::uint32_t id) { enter_port(form_.copy.outlets, form_.design.outlets, id, own); });
    meet(forms_.plates_, here, [&](std::uint32_t id) { plate_cells_[id].push_back(own); });
    meet(forms_.acceptances_, here, [&](std::uint32_t id) { accept(id, own); });
  }

  template <class Visit>
  static void meet(Marked const& marked, Cell c, Visit const& visit) {
    auto at = std::lower_bound(marked.begin(), marked.end(), std::pair{c, 0u});
    for (; at != marked.end() && at->first == c; ++at) visit(at->second);
  }

  // A fill met first gets the next number.
  model::FillId number_of_fill(Cell here) {
    auto const alike = forms_.alike_[plant_.fill_of[here]];
    auto const number = forms_.number_[alike];
    return number != no_island ? number : number_of(alike, plant_.fills[alike]);
  }
  model::FillId number_of_solid() {
    auto const number = forms_.number_[forms_.solid_];
    return number != no_island ? number : number_of(forms_.solid_, {});
  }

  model::FillId number_of(std::size_t met, model::Fill fill) {
    auto& number = forms_.number_[met];
    number = static_cast<std::uint32_t>(form_.design.fills.size());
    met_.push_back(met);
    if (!fill.is_switched()) fill.powered = fill.unpowered;
    form_.design.fills.push_back(fill);
    return number;
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

  void accept_everywhere() {
    meet(forms_.acceptances_, model::no_cell, [&](std::uint32_t id) { accept(id, {}); });
  }

  // The circuit, once all that it controls is known.
  void wire() {
    auto& design = form_.design;
    std::vector<std::optional<model::ExpressionId>*> uses;
    for (auto& fill : design.fills) uses.push_back(&fill.control);
    for (auto& acceptance : design.acceptances) uses.push_back(&acceptance.condition);
    std::erase_if(uses, [](auto const* use) { return !use->has_value(); });
    std::vector<model::ExpressionId> roots;
    for (auto const* use : uses) roots.push_back(**use);
    auto cone = forms_.cones_.of(roots);
    for (std::size_t i = 0; i < uses.size(); ++i) *uses[i] = cone.roots[i];
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

  Forms& forms_;
  Design const& plant_;
  std::uint32_t island_;
  Posture posture_;
  Place least_, most_;
  Form form_;
  std::vector<std::size_t> met_;  // fills that have a number
  std::map<std::uint32_t, std::vector<Cell>> plate_cells_;
};

Form Forms::of(std::uint32_t island, Box const& box, Posture posture) {
  return Reader(*this, island, box, posture).read();
}

namespace {

class Words {
 public:
  explicit Words(std::vector<std::uint32_t>& words) : words_(words) {}

  void add(std::uint32_t word) { words_.push_back(word); }
  void add(std::optional<std::uint32_t> const& word) { add(word ? *word + 1 : 0); }
  void add(std::vector<Cell> const& cells) {
    add(static_cast<std::uint32_t>(cells.size()));
    words_.insert(words_.end(), cells.begin(), cells.end());
  }
  void add(model::Fill const& fill) {
    add(std::uint32_t{fill.powered} << 8 | fill.unpowered);
    add(fill.control);
  }
  void add(model::ExpressionNode const& node) {
    add(static_cast<std::uint32_t>(node.op));
    add(node.left);
    add(node.right);
  }
  void add(model::Signal const& signal) {
    add(static_cast<std::uint32_t>(signal.kind) << 1 | (signal.starts_on ? 1u : 0u));
    add(signal.definition);
    add(signal.reset);
    add(static_cast<std::uint32_t>(signal.ticks));
  }
  void add(model::Port const& port) { add(port.cells); }
  void add(model::Plate const& plate) {
    add(plate.signal);
    add(plate.cells);
  }
  void add(model::Acceptance const& acceptance) {
    add(static_cast<std::uint32_t>(acceptance.kind));
    add(acceptance.cell);
    add(acceptance.condition);
  }
  template <class Each>
  void all(std::vector<Each> const& each) {
    add(static_cast<std::uint32_t>(each.size()));
    for (auto const& one : each) add(one);
  }

 private:
  std::vector<std::uint32_t>& words_;
};

}  // namespace

std::vector<std::uint32_t> Form::key() const {
  std::vector<std::uint32_t> key{
      static_cast<std::uint32_t>(width), static_cast<std::uint32_t>(depth),
      static_cast<std::uint32_t>(height), design.outside_is_open ? 1u : 0u};
  key.insert(key.end(), fills_drawn.begin(), fills_drawn.end());
  Words words(key);
  words.all(design.fills);
  words.all(design.circuit.signals);
  words.all(design.circuit.expressions);
  words.all(design.circuit.nevers);
  words.all(design.inlets);
  words.all(design.outlets);
  words.all(design.plates);
  words.all(design.acceptances);
  return key;
}

Design drawn(Form form) {
  auto& design = form.design;
  auto const rim = static_cast<model::FillId>(design.fills.size());
  auto const outside = design.outside_is_open ? model::material::open : model::material::rock;
  design.fills.push_back({outside, outside, std::nullopt});
  design.fill_of.assign(design.grid.size(), rim);
  auto next = form.fills_drawn.begin();
  for (int z = 0; z < form.height; ++z) {
    for (int y = 0; y < form.depth; ++y) {
      auto c = design.grid.cell({0, y, z});
      for (int x = 0; x < form.width; ++x) design.fill_of[c++] = *next++;
    }
  }
  return std::move(design);
}

}  // namespace leat::works
