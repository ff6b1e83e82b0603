#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

// The kinds of finding (model section 6): one table, from which the design language, the judge and
// the renderers all take them. The short name is a stable identifier; sentences live in lang.
namespace leat::model {

enum class Severity : std::uint8_t { note, warning, error };

enum class FindingKind : std::uint8_t {
  unreached_outlet,
  dry_stand,
  still_water,
  pinned,
  endless_loop,
  split_route,
  unsure_move,
  body_spill,
  water_spill,
  tight_inlet,
  hard_landing,
  thin_cushion,
  narrow_pit,
  long_head_run,
  stacked_sources,
  foot_lift,
  diagonal_current,
  open_edge,
  swimmer_pool,
  idle_signal,
  twin_signals,
  oscillation,
  no_return,
  unreached_state,
  remembering_water,
  formed_source,
  restless_water,
  misrouting_switch,
  stranding_switch,
  spilling_switch,
  crushing_switch,
  stale_acceptance,
  unlike_record,
  unrecorded,
  stale_record,
  count
};

struct FindingRow {
  FindingKind kind;
  std::string_view name;
  Severity severity;
};

inline constexpr std::array<FindingRow, static_cast<std::size_t>(FindingKind::count)> finding_table{
    {
        {FindingKind::unreached_outlet, "unreached-outlet", Severity::error},
        {FindingKind::dry_stand, "dry-stand", Severity::error},
        {FindingKind::still_water, "still-water", Severity::error},
        {FindingKind::pinned, "pinned", Severity::error},
        {FindingKind::endless_loop, "endless-loop", Severity::error},
        {FindingKind::split_route, "split-route", Severity::warning},
        {FindingKind::unsure_move, "unsure-move", Severity::warning},
        {FindingKind::body_spill, "body-spill", Severity::error},
        {FindingKind::water_spill, "water-spill", Severity::warning},
        {FindingKind::tight_inlet, "tight-inlet", Severity::error},
        {FindingKind::hard_landing, "hard-landing", Severity::error},
        {FindingKind::thin_cushion, "thin-cushion", Severity::warning},
        {FindingKind::narrow_pit, "narrow-pit", Severity::warning},
        {FindingKind::long_head_run, "long-head-run", Severity::warning},
        {FindingKind::stacked_sources, "stacked-sources", Severity::warning},
        {FindingKind::foot_lift, "foot-lift", Severity::warning},
        {FindingKind::diagonal_current, "diagonal-current", Severity::warning},
        {FindingKind::open_edge, "open-edge", Severity::note},
        {FindingKind::swimmer_pool, "swimmer-pool", Severity::note},
        {FindingKind::idle_signal, "idle-signal", Severity::warning},
        {FindingKind::twin_signals, "twin-signals", Severity::note},
        {FindingKind::oscillation, "oscillation", Severity::error},
        {FindingKind::no_return, "no-return", Severity::warning},
        {FindingKind::unreached_state, "unreached-state", Severity::note},
        {FindingKind::remembering_water, "remembering-water", Severity::warning},
        {FindingKind::formed_source, "formed-source", Severity::note},
        {FindingKind::restless_water, "restless-water", Severity::error},
        {FindingKind::misrouting_switch, "misrouting-switch", Severity::note},
        {FindingKind::stranding_switch, "stranding-switch", Severity::note},
        {FindingKind::spilling_switch, "spilling-switch", Severity::note},
        {FindingKind::crushing_switch, "crushing-switch", Severity::note},
        {FindingKind::stale_acceptance, "stale-acceptance", Severity::warning},
        {FindingKind::unlike_record, "unlike-record", Severity::error},
        {FindingKind::unrecorded, "unrecorded", Severity::warning},
        {FindingKind::stale_record, "stale-record", Severity::warning},
    }};

inline constexpr FindingRow const& row_of(FindingKind kind) {
  return finding_table[static_cast<std::size_t>(kind)];
}

// Whether it is a danger for bodies inside while cells change.
inline constexpr bool is_of_switching(FindingKind kind) {
  return kind >= FindingKind::misrouting_switch && kind <= FindingKind::crushing_switch;
}

}  // namespace leat::model
