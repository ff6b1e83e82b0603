#include "lang/cli/held_record.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <numeric>
#include <set>

#include "engine/compare/deviations.hpp"
#include "lang/render/columns.hpp"

namespace leat::cli {

namespace {

using compare::Change;

constexpr std::size_t most_nodes = std::size_t{1} << 22;

template <class Id>
compare::Counterparts<Id> themselves(std::size_t count) {
  compare::Counterparts<Id> same;
  for (Id id = 0; id < count; ++id) same.push_back(id);
  return same;
}

compare::Matching identity(model::Design const& design) {
  return {themselves<model::SignalId>(design.circuit.signals.size()),
          themselves<model::InletId>(design.inlets.size()),
          themselves<model::OutletId>(design.outlets.size()),
          themselves<model::ProfileId>(design.profiles.size()),
          {}};
}

render::ComparisonEntry entry(Change change, std::string name, std::string headline) {
  render::ComparisonEntry entry;
  entry.change = change;
  entry.topic = "record";
  entry.name = std::move(name);
  entry.headline = std::move(headline);
  return entry;
}

// By which key each difference is accepted.
std::set<std::string> keys_of(render::ComparisonSheet const& sheet) {
  std::set<std::string> keys;
  for (auto const& entry : sheet.entries) {
    if (entry.topic == "route") keys.insert(entry.name + "/" + entry.body);
    if (entry.topic == "finding" || entry.topic == "record") keys.insert(entry.name);
    if (entry.topic == "time") keys.insert(record::times_key);
  }
  return keys;
}

void add_stale(record::Junction const& recorded, record::Recalled const& recalled,
               render::ComparisonSheet& sheet) {
  for (auto i : recalled.obsolete_routes) {
    auto const& route = recorded.routes[i];
    sheet.entries.push_back(
        entry(Change::other, key_of(route),
              fmt::format("The record of the {} from {} speaks of what there is no more",
                          route.body, route.inlet)));
  }
  for (auto i : recalled.obsolete_findings)
    sheet.entries.push_back(entry(Change::other, recorded.findings[i].name,
                                  fmt::format("The record of {} speaks of what there is no more",
                                              recorded.findings[i].name)));
  if (!recalled.obsolete_times.empty())
    sheet.entries.push_back(
        entry(Change::other, record::times_key, "Recorded times speak of what there is no more"));
}

}  // namespace

std::variant<std::optional<record::Record>, FileFault> record_beside(std::string const& design) {
  auto const path = record::path_beside(design);
  std::error_code ignored;
  if (design == "-" || !std::filesystem::exists(path, ignored))
    return std::optional<record::Record>();
  auto text = read_file(path);
  if (auto* fault = std::get_if<FileFault>(&text)) return std::move(*fault);
  auto read = record::read(std::get<FileText>(text).text);
  if (auto const* unreadable = std::get_if<record::Unreadable>(&read))
    return FileFault{path, fmt::format("{} {}", render::showable(path), unreadable->headline),
                     "Restore it, or remove it and run leat record again."};
  return std::optional(std::move(std::get<record::Record>(read)));
}

record::Junction const* find(record::Record const& record, std::string const& junction) {
  auto const at = std::find_if(record.junctions.begin(), record.junctions.end(),
                               [&](auto const& j) { return j.name == junction; });
  return at == record.junctions.end() ? nullptr : &*at;
}

std::size_t count_gone(record::Record const& record, std::vector<lower::Junction> const& there) {
  auto const is_gone = [&](record::Junction const& junction) {
    return std::none_of(there.begin(), there.end(), [&](lower::Junction const& one) {
      return one.map.junction.name == junction.name;
    });
  };
  return static_cast<std::size_t>(
      std::count_if(record.junctions.begin(), record.junctions.end(), is_gone));
}

HeldRecord::HeldRecord(render::Subject const& subject, Judged const& judged,
                       record::Junction const* recorded) {
  auto const variables = judged.variables();
  compare::Ground ground({subject.design, variables}, most_nodes);
  auto now = judged.behaviour(subject.design, ground.after(), ground);
  is_whole_ = now.are_routes_whole && ground.is_whole();
  now_ = record::recorded(subject.map, now, ground);
  sheet_.junction_before = sheet_.junction_after = subject.map.junction.name;
  if (recorded == nullptr)
    findings_.push_back(findings::finding_of(model::FindingKind::unrecorded));
  else
    hold(subject, judged, *recorded, std::move(now), ground);
}

void HeldRecord::hold(render::Subject const& subject, Judged const& judged,
                      record::Junction const& recorded, compare::Behaviour now,
                      compare::Ground& ground) {
  auto const recalled = record::recalled(recorded, subject.map, ground);
  auto const matching = identity(subject.design);
  now.verdicts.clear();
  auto const comparison = compare::compare(recalled.behaviour, now, matching, ground);
  sheet_ = render::comparison_sheet({subject, subject, recalled.behaviour, now, matching,
                                     comparison, ground, std::nullopt, true});
  for (auto i : compare::unrecorded_passages(recalled.behaviour, now)) {
    auto const& inlet = subject.map.inlets[now.passages[i].inlet].name;
    auto const& body = subject.map.profiles[now.passages[i].profile].name;
    sheet_.entries.push_back(
        entry(Change::other, inlet + "/" + body,
              fmt::format("Nothing is recorded of the {} from {}", body, inlet)));
  }
  add_stale(recorded, recalled, sheet_);
  auto const keys = keys_of(sheet_);
  keys_.assign(keys.begin(), keys.end());
  auto const stale = recalled.obsolete_routes.size() + recalled.obsolete_findings.size() +
                     recalled.obsolete_times.size();
  findings_ =
      compare::deviations(recalled.behaviour, now, comparison, stale, judged.row_inputs(), ground);
}

}  // namespace leat::cli
