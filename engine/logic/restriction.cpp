#include "engine/logic/restriction.hpp"

#include <algorithm>
#include <unordered_map>

#include "engine/contract.hpp"

namespace leat::logic {

namespace {

using Function = Diagram::Function;
using Level = Diagram::Level;
using Known = std::unordered_map<std::uint64_t, Function>;

std::uint64_t pair_of(Function f, Function g) { return std::uint64_t{f.edge} << 32 | g.edge; }

Function exists_below(Diagram& diagram, Function f, std::vector<Level> const& levels,
                      Known& known) {
  auto const at = diagram.level(f);
  if (levels.empty() || at > levels.back()) return f;
  if (auto const found = known.find(f.edge); found != known.end()) return found->second;
  auto const [f_off, f_on] = diagram.branches(f, at);
  auto const off = exists_below(diagram, f_off, levels, known);
  auto const on = exists_below(diagram, f_on, levels, known);
  bool const is_left_out = std::binary_search(levels.begin(), levels.end(), at);
  auto const result = is_left_out ? diagram.either(off, on) : diagram.node(at, off, on);
  known.emplace(f.edge, result);
  return result;
}

Function simplified_below(Diagram& diagram, Function f, Function care, Known& known) {
  if (care == Diagram::always || diagram.level(f) == Diagram::below_all) return f;
  if (auto const found = known.find(pair_of(f, care)); found != known.end()) return found->second;
  if (!diagram.can_follow(f, care)) return f;
  auto const at = std::min(diagram.level(f), diagram.level(care));
  auto const [f_off, f_on] = diagram.branches(f, at);
  auto const [care_off, care_on] = diagram.branches(care, at);
  Function result;
  if (care_off == Diagram::never) {
    result = simplified_below(diagram, f_on, care_on, known);
  } else if (care_on == Diagram::never) {
    result = simplified_below(diagram, f_off, care_off, known);
  } else if (diagram.level(f) > at) {
    result = simplified_below(diagram, f, diagram.either(care_off, care_on), known);
  } else {
    auto const off = simplified_below(diagram, f_off, care_off, known);
    auto const on = simplified_below(diagram, f_on, care_on, known);
    result = diagram.node(at, off, on);
  }
  known.emplace(pair_of(f, care), result);
  return result;
}

Function cofactor_below(Diagram& diagram, Function f, Level level, bool is_on, Known& known) {
  auto const at = diagram.level(f);
  if (at > level) return f;
  auto const [f_off, f_on] = diagram.branches(f, at);
  if (at == level) return is_on ? f_on : f_off;
  if (auto const found = known.find(f.edge); found != known.end()) return found->second;
  auto const off = cofactor_below(diagram, f_off, level, is_on, known);
  auto const on = cofactor_below(diagram, f_on, level, is_on, known);
  auto const result = diagram.node(at, off, on);
  known.emplace(f.edge, result);
  return result;
}

}  // namespace

std::vector<Level> support(Diagram const& diagram, std::vector<Function> open) {
  std::vector<bool> is_tested, seen(diagram.node_count(), false);
  while (!open.empty()) {
    auto const at = open.back();
    open.pop_back();
    auto const level = diagram.level(at);
    if (level == Diagram::below_all || seen[at.edge >> 1]) continue;
    seen[at.edge >> 1] = true;
    if (level >= is_tested.size()) is_tested.resize(level + 1, false);
    is_tested[level] = true;
    auto const [off, on] = diagram.branches(at, level);
    open.push_back(off);
    open.push_back(on);
  }
  std::vector<Level> levels;
  for (Level level = 0; level < is_tested.size(); ++level) {
    if (is_tested[level]) levels.push_back(level);
  }
  return levels;
}

std::vector<Level> support(Diagram const& diagram, Function f) {
  return support(diagram, std::vector<Function>{f});
}

Function cofactor(Diagram& diagram, Function f, Level level, bool is_on) {
  Known known;
  return cofactor_below(diagram, f, level, is_on, known);
}

Function exists(Diagram& diagram, Function f, std::vector<Level> const& levels) {
  require(std::is_sorted(levels.begin(), levels.end()), "exists: levels must ascend");
  Known known;
  return exists_below(diagram, f, levels, known);
}

Function simplified(Diagram& diagram, Function f, Function care) {
  require(care != Diagram::never, "simplified: some assignment must matter");
  Known known;
  auto const result = simplified_below(diagram, f, care, known);
  return diagram.size(result) < diagram.size(f) ? result : f;
}

}  // namespace leat::logic
