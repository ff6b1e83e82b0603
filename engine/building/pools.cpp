#include "engine/building/pools.hpp"

#include <algorithm>
#include <tuple>

#include "engine/water/settle.hpp"

namespace leat::building {

namespace {

std::vector<Cell> placed_sources(model::Arrangement const& now) {
  std::vector<bool> is_source;
  for (model::FillId f = 0; f < now.design().fills.size(); ++f)
    is_source.push_back(now.made_of(f).is_source);
  auto cells = model::cells_filled(now.design(), is_source);
  std::erase_if(cells, [&](Cell c) { return !now.grid().is_inside(c); });
  return cells;
}

std::vector<bool> powered_fills(model::Arrangement const& now) {
  std::vector<bool> powered;
  for (auto const& fill : now.design().fills) {
    auto const f = static_cast<model::FillId>(powered.size());
    powered.push_back(now.made_of(f) == now.design().materials[fill.powered]);
  }
  return powered;
}

// Takes in where water is while sources are placed one after the other.
void add_ways_there(model::Arrangement const& now, std::vector<Cell> const& order,
                    std::vector<bool>& is_wet) {
  auto building = now.design();
  auto const pending = static_cast<model::FillId>(building.fills.size());
  building.fills.push_back({model::material::open, model::material::open, {}});
  for (auto c : order) building.fill_of[c] = pending;
  auto powered = powered_fills(now);
  powered.push_back(false);
  for (auto c : order) {
    building.fill_of[c] = now.design().fill_of[c];
    auto const field = water::settle_fresh(model::Arrangement(building, powered)).field;
    for (Cell w = 0; w < field.size(); ++w) {
      if (water::is_wet(field[w])) is_wet[w] = true;
    }
  }
}

// The pieces of wet cells that touch over faces, each ascending.
std::vector<std::vector<Cell>> pieces_of(model::Grid const& grid, std::vector<bool> is_wet) {
  std::vector<std::vector<Cell>> pieces;
  for (Cell begin = 0; begin < is_wet.size(); ++begin) {
    if (!is_wet[begin]) continue;
    std::vector<Cell> piece{begin};
    is_wet[begin] = false;
    auto const reach = [&](Cell n) {
      if (!is_wet[n]) return;
      is_wet[n] = false;
      piece.push_back(n);
    };
    for (std::size_t i = 0; i < piece.size(); ++i) {
      for (auto side : model::sides) reach(grid.beside(piece[i], side));
      reach(grid.above(piece[i]));
      reach(grid.below(piece[i]));
    }
    std::sort(piece.begin(), piece.end());
    pieces.push_back(std::move(piece));
  }
  return pieces;
}

Pool pool_of(model::Arrangement const& now, std::vector<Cell> wet,
             std::vector<Cell> const& sources) {
  auto const& grid = now.grid();
  Pool pool;
  std::vector<Cell> holders;
  auto const look = [&](Cell n) {
    if (!now[n].water_enters) holders.push_back(n);
  };
  for (auto c : wet) {
    for (auto side : model::sides) look(grid.beside(c, side));
    look(grid.below(c));
    pool.highest = std::max(pool.highest, grid.place(c).z);
    if (std::binary_search(sources.begin(), sources.end(), c)) pool.sources.push_back(c);
  }
  std::sort(holders.begin(), holders.end());
  holders.erase(std::unique(holders.begin(), holders.end()), holders.end());
  for (auto c : holders) {
    if (grid.is_inside(c))
      pool.holders.push_back(c);
    else if (!now.outside_is_open())
      ++pool.around;
  }
  pool.wet = std::move(wet);
  return pool;
}

std::vector<Pool> pools_in(model::Arrangement const& now, std::vector<bool> const& is_wet,
                           std::vector<Cell> const& sources) {
  std::vector<Pool> pools;
  for (auto& piece : pieces_of(now.grid(), is_wet))
    pools.push_back(pool_of(now, std::move(piece), sources));
  std::sort(pools.begin(), pools.end(), [](Pool const& a, Pool const& b) {
    return std::tie(a.highest, a.wet.front()) < std::tie(b.highest, b.wet.front());
  });
  return pools;
}

std::vector<Cell> order_of(std::vector<Pool> const& pools) {
  std::vector<Cell> order;
  for (auto const& pool : pools)
    order.insert(order.end(), pool.sources.begin(), pool.sources.end());
  return order;
}

}  // namespace

Pools pools_of(model::Arrangement const& now, std::size_t most_work) {
  constexpr std::size_t most_rounds = 4;
  auto const sources = placed_sources(now);
  Pools found;
  if (sources.empty()) return found;
  auto const full = water::settle_fresh(now).field;
  std::vector<bool> is_wet(full.size());
  for (Cell c = 0; c < full.size(); ++c) is_wet[c] = water::is_wet(full[c]);
  found.pools = pools_in(now, is_wet, sources);
  found.is_each_tried = false;
  if (sources.size() > most_work / now.grid().size()) return found;
  for (std::size_t round = 0; round < most_rounds && !found.is_each_tried; ++round) {
    auto const tried = order_of(found.pools);
    add_ways_there(now, tried, is_wet);
    found.pools = pools_in(now, is_wet, sources);
    found.is_each_tried = order_of(found.pools) == tried;
  }
  return found;
}

}  // namespace leat::building
