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
Sightings::Cause& Sightings::cause_of(Sighting const& sighting, std::uint32_t water) {
  auto& cause = causes_[{sighting.kind, sighting.severity, sighting.cells, sighting.outlets}];
  auto& seen = cause.seen;
  auto const worth = [](int measured, int limit) {
    return std::tuple{std::abs(measured - limit), measured, limit};
  };
  if (seen.waters.empty() ||
      worth(sighting.measured, sighting.limit) > worth(seen.measured, seen.limit)) {
    seen.measured = sighting.measured;
    seen.limit = sighting.limit;
  }
  insert_sorted(seen.waters, water);
  return cause;
}

void Sightings::add(std::uint32_t water, std::vector<Sighting> const& seen) {
  for (auto const& sighting : seen) cause_of(sighting, water);
}

void Sightings::add(std::uint32_t water, model::InletId inlet, model::ProfileId profile,
                    std::vector<Sighting> const& seen) {
  for (auto const& sighting : seen) {
    auto& cause = cause_of(sighting, water);
    insert_sorted(cause.seen.inlets, inlet);
    insert_sorted(cause.seen.profiles, profile);
    insert_sorted(cause.met[{inlet, profile}], water);
  }
}

void Sightings::tell_whom(Met const& met, Finding& finding) {
  auto const pairs = finding.inlets.size() * finding.profiles.size();
  bool const do_all = met.size() == pairs &&
                      std::all_of(met.begin(), met.end(),
                                  [&](auto const& who) { return who.second == finding.waters; });
  if (do_all) return;
  for (auto const& [who, waters] : met)
    finding.meetings.push_back({who.first, who.second, logic::RowSet(0), waters});
}

std::vector<Finding> Sightings::gathered(model::Grid const& grid) const {
  using Rest = std::tuple<FindingKind, std::optional<model::Severity>, std::vector<model::OutletId>,
                          Circumstances>;
  std::map<Rest, std::vector<std::pair<std::vector<Cell>, Met const*>>> alike;
  for (auto const& [key, cause] : causes_) {
    auto const& [kind, severity, cells, outlets] = key;
    alike[{kind, severity, outlets, cause.seen}].emplace_back(cells, &cause.met);
  }
  std::vector<Finding> findings;
  for (auto const& [rest, causes] : alike) {
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
    std::vector<std::vector<Cell>> lists;
    for (auto const& [cells, met] : causes) lists.push_back(cells);
    for (auto& cells : touching_groups(grid, std::move(lists))) {
      Met met;
      for (auto const& [own, own_met] : causes) {
        bool const is_of_it =
            own.empty() || std::binary_search(cells.begin(), cells.end(), own.front());
        if (!is_of_it) continue;
        for (auto const& [who, waters] : *own_met)
          for (auto water : waters) insert_sorted(met[who], water);
      }
      findings.push_back(finding);
      findings.back().cells = std::move(cells);
      tell_whom(met, findings.back());
    }
  }
  return findings;
}

}  // namespace leat::findings
