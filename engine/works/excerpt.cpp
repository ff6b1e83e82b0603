#include "engine/works/excerpt.hpp"

#include <algorithm>
#include <utility>

#include "engine/water/influence.hpp"

namespace leat::works {

using model::Cell;
using model::Profile;
using model::Rule;

namespace {

constexpr std::uint32_t looked_at = 0, beyond = 1;  // islands

}  // namespace

Excerpts::Excerpts(model::Design const& design, Supports const& supports)
    : design_(design),
      supports_(supports),
      bounds_(supports.bounds()),
      is_joining_(joining_fills(design)),
      is_water_(design.grid.size(), false),
      is_material_(design.grid.size(), false),
      is_pool_(design.grid.size(), false) {}

Excerpt Excerpts::of(Region const& region) {
  for (auto c : region.wet) add_surroundings(c);
  for (model::ProfileId p = 0; p < region.feet.size(); ++p) {
    for (auto feet : region.feet[p]) add_body(feet, design_.profiles[p]);
  }
  add_grounds();
  return taken();
}

// Of what is solid for good a drawing keeps what it needs by itself.
void Excerpts::add_material(Cell c) {
  if (is_material_[c] || !design_.grid.is_inside(c) || is_joining_[design_.fill_of[c]] == 0) return;
  is_material_[c] = true;
  found_.material.push_back(c);
  bool const would_form_on_rock =
      bounds_.side_sources(c, false) >= design_.practice[Rule::source_makers];
  if (would_form_on_rock) add_material(design_.grid.below(c));
}

void Excerpts::add_water(Cell c) {
  add_material(c);
  if (is_water_[c] || !is_material_[c]) return;
  is_water_[c] = true;
  found_.water.push_back(c);
  open_.push_back(c);
}

// What moves look at, and the families that look beyond: how deep the water is and how wide a pit,
// how far it is down an edge, how high a stack of sources.
void Excerpts::add_body(Cell feet, Profile const& profile) {
  for (auto c : supports_.read_by_moves(feet, profile)) add_water(c);
  auto const& grid = design_.grid;
  auto const at = grid.place(feet);
  for (int y = 0; y < profile.footprint; ++y) {
    for (int x = 0; x < profile.footprint; ++x) {
      auto const column = grid.cell({at.x + x, at.y + y, at.z});
      add_cushion(column);
      add_drop(column);
      for (auto side : model::sides) add_drop(grid.beside(column, side));
      for (int level = 0; level < profile.height; ++level) add_pit(grid.raised(column, level));
      for (int level = 0; level <= profile.height; ++level) add_stack(grid.raised(column, level));
    }
  }
}

// What families of water alone look at: neighbours, and pools as a whole.
void Excerpts::add_surroundings(Cell c) {
  auto const& grid = design_.grid;
  for (auto near : {c, grid.above(c), grid.below(c)}) add_pool(near);
  for (auto side : model::sides) add_pool(grid.beside(c, side));
}

// Down to what carries whatever it is made of.
void Excerpts::add_drop(Cell c) {
  for (; design_.grid.is_inside(c); c = design_.grid.below(c)) {
    add_material(c);
    auto const& fill = design_.fills[design_.fill_of[c]];
    auto const stops = [&](model::MaterialId id) {
      return design_.materials[id].carries || !design_.materials[id].body_enters;
    };
    if (stops(fill.unpowered) && (!fill.is_switched() || stops(fill.powered))) return;
  }
}

void Excerpts::add_cushion(Cell c) {
  auto const deepest = design_.practice[Rule::cushion_advised];
  for (int depth = 0; depth <= deepest && bounds_.may_be_wet(c); ++depth) {
    add_water(c);
    c = design_.grid.below(c);
  }
  add_water(c);
}

void Excerpts::add_pit(Cell c) {
  for (auto side : model::sides) {
    auto next = design_.grid.beside(c, side);
    for (int width = 1; width < design_.practice[Rule::pit_width]; ++width) {
      add_material(next);
      if (!design_.grid.is_inside(next) || !is_material_[next]) break;
      next = design_.grid.beside(next, side);
    }
  }
}

void Excerpts::add_stack(Cell c) {
  for (auto up = c; bounds_.may_be_source(up); up = design_.grid.above(up)) add_water(up);
  for (auto down = c; bounds_.may_be_source(down); down = design_.grid.below(down)) add_water(down);
}

void Excerpts::add_pool(Cell c) {
  std::vector<Cell> open{c};
  while (!open.empty()) {
    auto const next = open.back();
    open.pop_back();
    add_water(next);
    if (!bounds_.may_be_source(next) || is_pool_[next]) continue;
    is_pool_[next] = true;
    open.insert(open.end(), {design_.grid.above(next), design_.grid.below(next)});
    for (auto side : model::sides) open.push_back(design_.grid.beside(next, side));
  }
}

void Excerpts::add_grounds() {
  water::Influence const influence(bounds_);
  while (!open_.empty()) {
    auto const grounds = influence.grounds(open_.back());
    open_.pop_back();
    for (auto c : grounds.water) add_water(c);
    for (auto c : grounds.material) add_material(c);
  }
}

Excerpt Excerpts::taken() {
  for (auto c : found_.water) is_water_[c] = is_pool_[c] = false;
  for (auto c : found_.material) is_material_[c] = false;
  std::sort(found_.water.begin(), found_.water.end());
  std::sort(found_.material.begin(), found_.material.end());
  return std::exchange(found_, {});
}

Cuttings::Cuttings(model::Design const& design)
    : is_joining_(joining_fills(design)), island_of_(design.grid.size()), likeness_(design) {
  for (Cell c = 0; c < island_of_.size(); ++c) {
    bool const is_solid = is_joining_[design.fill_of[c]] == 0 || !design.grid.is_inside(c);
    island_of_[c] = is_solid ? no_island : beyond;
  }
}

Likeness::Known Cuttings::cut(model::Design const& held, Excerpt const& excerpt) {
  auto const first =
      excerpt.material.empty() ? model::Place{} : held.grid.place(excerpt.material.front());
  Box box{first, first};
  for (auto c : excerpt.material) {
    island_of_[c] = looked_at;
    box.include(held.grid.place(c));
  }
  Forms forms(held, is_joining_, island_of_);
  auto known = likeness_.known(extent_of(box, excerpt.material.size()),
                               [&](Posture posture) { return forms.of(looked_at, box, posture); });
  for (auto c : excerpt.material) island_of_[c] = beyond;
  return known;
}

std::size_t kinds_of(std::vector<Region> const& regions, model::Design const& design,
                     Supports const& supports, AsBuilt& as_built) {
  Excerpts excerpts(design, supports);
  Cuttings cuttings(design);
  std::size_t count = 0;
  for (auto const& region : regions) {
    auto const excerpt = excerpts.of(region);
    count += cuttings.cut(as_built.held(supports, region).design, excerpt).is_new ? 1u : 0u;
  }
  return count;
}

bool changes_by_itself(Excerpt const& excerpt, water::Bounds const& whole, water::Bounds const& own,
                       Frame const& frame) {
  water::Influence const influence(own);
  auto const is_of = [&](std::vector<Cell> const& cells, Cell here) {
    return !own.design().grid.is_inside(here) ||
           std::binary_search(cells.begin(), cells.end(), frame.in_whole(here));
  };
  auto const is_closed = [&](Cell c) {
    if (!frame.holds(c)) return true;
    auto const reads = influence.reads(frame.own(c));
    return std::all_of(reads.water.begin(), reads.water.end(),
                       [&](Cell read) { return is_of(excerpt.water, read); }) &&
           std::all_of(reads.material.begin(), reads.material.end(),
                       [&](Cell read) { return is_of(excerpt.material, read); });
  };
  auto const is_as_sure = [&](Cell c) {
    if (!whole.is_surely_wet(c)) return true;
    auto const here = frame.own(c);
    return own.least(here) >= whole.least(c) &&
           (own.is_surely_source(here) || !whole.is_surely_source(c));
  };
  return std::all_of(excerpt.water.begin(), excerpt.water.end(), is_closed) &&
         std::all_of(excerpt.water.begin(), excerpt.water.end(), is_as_sure);
}

}  // namespace leat::works
