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
  stale_acceptance,
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
        {FindingKind::stale_acceptance, "stale-acceptance", Severity::warning},
    }};

inline constexpr FindingRow const& row_of(FindingKind kind) {
  return finding_table[static_cast<std::size_t>(kind)];
}

}  // namespace leat::model
