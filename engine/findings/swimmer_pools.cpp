#include <algorithm>

#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

// The sources joined to `start` by their faces; marks them in `seen`.
std::vector<Cell> pool_from(water::Moment const& now, Cell start, std::vector<bool>& seen) {
  std::vector<Cell> pool{start};
  seen[start] = true;
  auto const reach = [&](Cell c) {
    if (seen[c] || !now.is_source(c)) return;
    seen[c] = true;
    pool.push_back(c);
  };
  for (std::size_t i = 0; i < pool.size(); ++i) {
    auto const c = pool[i];
    reach(now.grid().above(c));
    reach(now.grid().below(c));
    for (auto side : model::sides) reach(now.grid().beside(c, side));
  }
  std::sort(pool.begin(), pool.end());
  return pool;
}

}  // namespace

// Standing water is water of sources: it has nowhere to run.
std::vector<Sighting> swimmer_pools(Basin const& basin) {
  auto const from = basin.arrangement.practice()[model::Rule::swimmer_pool];
  water::Moment const now{basin.arrangement, basin.field};
  std::vector<bool> seen_cells(basin.field.size(), false);
  std::vector<Sighting> seen;
  auto const begin = basin.field.begin(), end = basin.field.end();
  for (auto at = begin; (at = std::find(at, end, water::source)) != end; ++at) {
    auto const c = static_cast<Cell>(at - begin);
    if (seen_cells[c]) continue;
    auto pool = pool_from(now, c, seen_cells);
    auto const size = static_cast<int>(pool.size());
    if (size >= from)
      seen.push_back({FindingKind::swimmer_pool, std::move(pool), {}, size, from, {}});
  }
  return seen;
}

}  // namespace leat::findings
