#include "engine/findings/sighting.hpp"

#include <algorithm>
#include <cstdlib>

namespace leat::findings {

namespace {

bool are_touching(model::Grid const& grid, Cell a, Cell b) {
  auto const p = grid.place(a), q = grid.place(b);
  return std::abs(p.x - q.x) <= 1 && std::abs(p.y - q.y) <= 1 && std::abs(p.z - q.z) <= 1;
}

bool are_touching(model::Grid const& grid, std::vector<Cell> const& a, std::vector<Cell> const& b) {
  return std::any_of(a.begin(), a.end(), [&](Cell c) {
    return std::any_of(b.begin(), b.end(), [&](Cell d) { return are_touching(grid, c, d); });
  });
}

// Joins lists of cells that touch, directly or over others. Quadratic in the number of lists, which
// is the number of causes under one set of circumstances.
std::vector<std::vector<Cell>> touching_groups(model::Grid const& grid,
                                               std::vector<std::vector<Cell>> lists) {
  std::vector<std::vector<Cell>> groups;
  while (!lists.empty()) {
    auto group = std::move(lists.back());
    lists.pop_back();
    for (std::size_t i = 0; i < lists.size();) {
      if (!are_touching(grid, group, lists[i])) {
        ++i;
        continue;
      }
      group.insert(group.end(), lists[i].begin(), lists[i].end());
      lists.erase(lists.begin() + static_cast<std::ptrdiff_t>(i));
      i = 0;
    }
    std::sort(group.begin(), group.end());
    group.erase(std::unique(group.begin(), group.end()), group.end());
    groups.push_back(std::move(group));
  }
  return groups;
}

}  // namespace

// Of several sightings of one cause the figure farthest from its limit is the one worth telling;
// where two are as far, the greater one, so that the order of sightings does not matter.
Sightings::Circumstances& Sightings::cause_of(Sighting const& seen, std::uint32_t water) {
  auto& cause = causes_[{seen.kind, seen.severity, seen.cells, seen.outlets}];
  auto const worth = [](int measured, int limit) {
    return std::tuple{std::abs(measured - limit), measured, limit};
  };
  if (cause.waters.empty() ||
      worth(seen.measured, seen.limit) > worth(cause.measured, cause.limit)) {
    cause.measured = seen.measured;
    cause.limit = seen.limit;
  }
  insert_sorted(cause.waters, water);
  return cause;
}

void Sightings::add(std::uint32_t water, std::vector<Sighting> const& seen) {
  for (auto const& sighting : seen) cause_of(sighting, water);
}

void Sightings::add(std::uint32_t water, model::InletId inlet, model::ProfileId profile,
                    std::vector<Sighting> const& seen) {
  for (auto const& sighting : seen) {
    auto& cause = cause_of(sighting, water);
    insert_sorted(cause.inlets, inlet);
    insert_sorted(cause.profiles, profile);
  }
}

std::vector<Finding> Sightings::gathered(model::Grid const& grid) const {
  using Rest = std::tuple<FindingKind, std::optional<model::Severity>, std::vector<model::OutletId>,
                          Circumstances>;
  std::map<Rest, std::vector<std::vector<Cell>>> alike;
  for (auto const& [key, circumstances] : causes_) {
    auto const& [kind, severity, cells, outlets] = key;
    alike[{kind, severity, outlets, circumstances}].push_back(cells);
  }
  std::vector<Finding> findings;
  for (auto const& [rest, lists] : alike) {
    auto const& [kind, severity, outlets, seen] = rest;
    Finding finding;
    finding.kind = kind;
    finding.severity = severity.value_or(model::row_of(kind).severity);
    finding.inlets = seen.inlets;
    finding.outlets = outlets;
    finding.profiles = seen.profiles;
    finding.measured = seen.measured;
    finding.limit = seen.limit;
    finding.waters = seen.waters;
    for (auto& cells : touching_groups(grid, lists)) {
      findings.push_back(finding);
      findings.back().cells = std::move(cells);
    }
  }
  return findings;
}

}  // namespace leat::findings
