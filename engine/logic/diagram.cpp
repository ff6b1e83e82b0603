#include "engine/logic/diagram.hpp"

#include <algorithm>
#include <unordered_map>
#include <unordered_set>

#include "engine/contract.hpp"

namespace leat::logic {

namespace {

// The third number of a remembered result where an operation has only two; no edge is as high.
constexpr std::uint32_t of_both = 0xfffffff0u, of_differ = 0xfffffff1u;
constexpr std::size_t first_places = 1024;

}  // namespace

Diagram::Diagram(std::size_t most_nodes, std::uint32_t deepest)
    : most_nodes_(most_nodes),
      deepest_(deepest),
      nodes_(1),
      places_(first_places),
      computed_(first_places) {
  require(most_nodes <= std::size_t{1} << 30, "Diagram: more nodes than edges can tell");
  require(deepest <= most_depth, "Diagram: deeper than a stack allows");
}

std::size_t Diagram::place_of(Node const& node) const {
  auto mixed = (node.level * 0x9e3779b97f4a7c15u + node.off) * 0xc2b2ae3d27d4eb4fu + node.on;
  mixed = (mixed ^ mixed >> 29) * 0x165667b19e3779f9u;
  auto place = mixed >> 32 & (places_.size() - 1);
  for (; places_[place] != 0; place = (place + 1) & (places_.size() - 1)) {
    auto const& known = nodes_[places_[place]];
    if (known.level == node.level && known.off == node.off && known.on == node.on) break;
  }
  return place;
}

void Diagram::double_places() {
  places_.assign(2 * places_.size(), 0);
  for (std::uint32_t n = 1; n < nodes_.size(); ++n) places_[place_of(nodes_[n])] = n;
  if (computed_.places() < places_.size()) computed_.grow();
}

Diagram::Function Diagram::node(Level level, Function off, Function on) {
  if (off == on) return off;
  auto const flip = on.edge & 1u;
  Node const wanted{level, off.edge ^ flip, on.edge ^ flip, std::max(depth(off), depth(on)) + 1};
  auto place = place_of(wanted);
  if (places_[place] == 0) {
    if (nodes_.size() >= most_nodes_) has_run_out_ = true;
    if (!can_follow(wanted.depth)) return never;
    if (2 * nodes_.size() >= places_.size()) {
      double_places();
      place = place_of(wanted);
    }
    places_[place] = static_cast<std::uint32_t>(nodes_.size());
    nodes_.push_back(wanted);
    levels_ = std::max(levels_, level + 1);
  }
  return {places_[place] << 1 | flip};
}

Diagram::Function Diagram::both(Function f, Function g) {
  if (f == never || g == never || f == !g) return never;
  if (f == always || f == g) return g;
  if (g == always) return f;
  if (f.edge > g.edge) std::swap(f, g);
  return both_of_nodes(f, g);
}

Diagram::Function Diagram::both_of_nodes(Function f, Function g) {
  if (auto const known = computed_.find(f.edge, g.edge, of_both)) return {*known};
  if (!can_follow(f, g)) return never;
  auto const at = std::min(level(f), level(g));
  auto const [f_off, f_on] = branches(f, at);
  auto const [g_off, g_on] = branches(g, at);
  auto const off = both(f_off, g_off), on = both(f_on, g_on);
  auto const result = node(at, off, on);
  computed_.remember(f.edge, g.edge, of_both, result.edge);
  return result;
}

Diagram::Function Diagram::differ(Function f, Function g) {
  auto const flip = (f.edge ^ g.edge) & 1u;
  f.edge &= ~1u, g.edge &= ~1u;
  if (f.edge > g.edge) std::swap(f, g);
  if (f == g) return {never.edge ^ flip};
  if (f == always) return {g.edge ^ 1u ^ flip};
  if (auto const known = computed_.find(f.edge, g.edge, of_differ)) return {*known ^ flip};
  if (!can_follow(f, g)) return never;
  auto const at = std::min(level(f), level(g));
  auto const [f_off, f_on] = branches(f, at);
  auto const [g_off, g_on] = branches(g, at);
  auto const off = differ(f_off, g_off), on = differ(f_on, g_on);
  auto const result = node(at, off, on);
  computed_.remember(f.edge, g.edge, of_differ, result.edge);
  return {result.edge ^ flip};
}

Diagram::Function Diagram::choice(Function f, Function g, Function h) {
  if ((f.edge & 1u) != 0) f = !f, std::swap(g, h);
  if (f == always || g == h) return g;
  if (g == always || g == f) return either(f, h);
  if (g == never || g == !f) return both(!f, h);
  if (h == always || h == !f) return either(!f, g);
  if (h == never || h == f) return both(f, g);
  if (g == !h) return differ(f, h);
  auto const flip = g.edge & 1u;
  g.edge ^= flip, h.edge ^= flip;
  if (auto const known = computed_.find(f.edge, g.edge, h.edge)) return {*known ^ flip};
  auto const at = std::min({level(f), level(g), level(h)});
  if (!can_follow(std::min(depth(f) + depth(g) + depth(h), levels_ - at))) return never;
  auto const [f_off, f_on] = branches(f, at);
  auto const [g_off, g_on] = branches(g, at);
  auto const [h_off, h_on] = branches(h, at);
  auto const off = choice(f_off, g_off, h_off), on = choice(f_on, g_on, h_on);
  auto const result = node(at, off, on);
  computed_.remember(f.edge, g.edge, h.edge, result.edge);
  return {result.edge ^ flip};
}

bool Diagram::is_true(Function f, std::vector<bool> const& is_on) const {
  while (level(f) != below_all) {
    auto const [off, on] = branches(f, level(f));
    f = is_on[level(f)] ? on : off;
  }
  return f == always;
}

// The nodes of a function, each after those it leads to: nodes are made bottom up, so by number.
std::vector<std::uint32_t> Diagram::below(Function f) const {
  std::vector<std::uint32_t> found{f.edge >> 1};
  std::unordered_set<std::uint32_t> seen{f.edge >> 1};
  for (std::size_t i = 0; i < found.size(); ++i) {
    auto const& node = nodes_[found[i]];
    for (auto edge : {node.off, node.on}) {
      if (seen.insert(edge >> 1).second) found.push_back(edge >> 1);
    }
  }
  std::sort(found.begin(), found.end());
  return found;
}

std::size_t Diagram::size(Function f) const { return below(f).size(); }

// While one branch is never, the share is half of the other's. Below that both shares are carried
// along, true and false, so that none is lost as the small rest of the other.
long double Diagram::share(Function f) const {
  long double part = 1;
  for (; level(f) != below_all; part /= 2) {
    auto const [off, on] = branches(f, level(f));
    if (off != never && on != never) break;
    f = off == never ? on : off;
  }
  if (level(f) == below_all) return f == always ? part : 0;
  struct Shares {
    long double held = 1, missed = 0;
  };
  std::unordered_map<std::uint32_t, Shares> of_node{{0u, {}}};
  auto const of = [&](std::uint32_t edge) {
    auto const plain = of_node.at(edge >> 1);
    return (edge & 1u) != 0 ? Shares{plain.missed, plain.held} : plain;
  };
  for (auto n : below(f)) {
    if (n == 0) continue;
    auto const off = of(nodes_[n].off), on = of(nodes_[n].on);
    of_node[n] = {(off.held + on.held) / 2, (off.missed + on.missed) / 2};
  }
  return part * of(f.edge).held;
}

}  // namespace leat::logic
