#include <algorithm>
#include <map>

#include "engine/works/judge_works.hpp"
#include "engine/works/region_findings.hpp"
#include "engine/works/showing.hpp"
#include "tests/laws/random_plant.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

using model::FindingKind;

#ifdef LEAT_SANITIZED
constexpr unsigned rows_drawn = 20;
#else
constexpr unsigned rows_drawn = 200;
#endif

// What shows where, apart from how bad it is: by kind and cell, in which rows.
using Shown = std::map<std::pair<FindingKind, model::Cell>, logic::RowSet>;

bool is_of_bodies(FindingKind kind) {
  switch (kind) {
    case FindingKind::dry_stand:
    case FindingKind::still_water:
    case FindingKind::pinned:
    case FindingKind::endless_loop:
    case FindingKind::split_route:
    case FindingKind::unsure_move:
    case FindingKind::body_spill:
    case FindingKind::tight_inlet:
    case FindingKind::hard_landing:
    case FindingKind::thin_cushion:
    case FindingKind::narrow_pit:
    case FindingKind::long_head_run:
    case FindingKind::stacked_sources:
    case FindingKind::foot_lift:
    case FindingKind::diagonal_current:
    case FindingKind::open_edge:
      return true;
    default:
      return false;
  }
}

bool is_of_water(FindingKind kind) {
  return kind == FindingKind::water_spill || kind == FindingKind::formed_source ||
         kind == FindingKind::swimmer_pool;
}

// Of ways that part only the rows are asked: where they do is told otherwise.
void add(Shown& shown, findings::Finding const& finding, logic::RowSet const& rows) {
  auto const cells =
      finding.kind == FindingKind::split_route ? std::vector<model::Cell>{0} : finding.cells;
  for (auto cell : cells) {
    auto& all = shown.try_emplace({finding.kind, cell}, rows).first->second;
    all = all | rows;
  }
}

Shown shown_by(Judgement const& judged) {
  Shown shown;
  for (auto const& finding : judged.findings) {
    if (is_of_bodies(finding.kind) || is_of_water(finding.kind)) add(shown, finding, finding.rows);
  }
  return shown;
}

// By the rows of the whole drawing.
Shown shown_by(works::WorksJudgement const& composed, Judgement const& whole) {
  Shown shown;
  auto const& variables = composed.conditions->variables();
  auto const count = static_cast<int>(whole.variables.size());
  auto const add_while = [&](findings::Finding const& finding, works::Function condition) {
    if (!is_of_bodies(finding.kind) && !is_of_water(finding.kind)) return;
    logic::RowSet rows(count);
    for (logic::Row row = 0; row < rows.row_count(); ++row) {
      if (!whole.combinations.reachable.contains(row)) continue;
      std::vector<bool> values;
      for (auto variable : variables) {
        auto const at =
            static_cast<int>(std::find(whole.variables.begin(), whole.variables.end(), variable) -
                             whole.variables.begin());
        values.push_back(at < count && (row >> (count - 1 - at) & 1u) != 0);
      }
      if (composed.conditions->diagram().is_true(condition, values)) rows.insert(row);
    }
    add(shown, finding, rows);
  };
  for (auto const& found : composed.findings) add_while(found.finding, found.condition);
  for (auto const& piece : works::pieces_of(composed)) {
    for (auto const& finding : piece.judged->findings)
      add_while(finding, works::showing(composed, piece, works::occasion_of(finding)));
  }
  return shown;
}

bool is_left_out(works::WorksJudgement const& composed, FindingKind kind) {
  auto const& kinds = composed.kinds_left_out;
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

bool is_proved(works::WorksJudgement const& composed, FindingKind kind) {
  return std::all_of(composed.findings.begin(), composed.findings.end(), [&](auto const& found) {
    return found.finding.kind != kind || found.is_proved;
  });
}

// Every island, however few signals it depends on.
works::PlantBudget by_regions() {
  works::PlantBudget budget;
  budget.part.most_variables = 0;
  return budget;
}

struct Counts {
  std::size_t same = 0, wider = 0, left_out = 0;
};

// Nothing is missing; nothing is told for nothing but where that is allowed.
void compare(unsigned seed, bool has_memory, Counts& counts) {
  auto const plant = laws::random_row(seed, has_memory);
  Budget budget;
  budget.switching.most_switchings = 0;
  auto const whole = judge(plant, budget);
  if (!whole.is_decided || !whole.histories.is_followed) return;
  auto const composed = works::judge_works(plant, by_regions());
  REQUIRE(composed.too_large_regions.empty());
  auto const is = shown_by(composed, whole), wanted = shown_by(whole);
  auto const nothing = logic::RowSet(static_cast<int>(whole.variables.size()));
  auto const rows_of = [&](Shown const& shown, auto const& key) {
    auto const at = shown.find(key);
    return at == shown.end() ? nothing : at->second;
  };
  auto all = is;
  all.insert(wanted.begin(), wanted.end());
  for (auto const& [key, rows] : all) {
    if (is_left_out(composed, key.first)) {
      ++counts.left_out;
      continue;
    }
    INFO("seed " << seed << ", kind " << model::row_of(key.first).name << ", cell " << key.second);
    auto const here = rows_of(is, key), there = rows_of(wanted, key);
    CHECK((there & ~here).is_empty());
    if (is_proved(composed, key.first)) CHECK((here & ~there).is_empty());
    (here == there ? counts.same : counts.wider) += 1;
  }
}

}  // namespace

// Source: docs/model.md, regions: findings are looked for in all combinations.
TEST_CASE("law: what is found in regions is what is found in the whole, row by row") {
  Counts counts;
  for (unsigned seed = 0; seed < rows_drawn; ++seed) compare(seed, false, counts);
  INFO(counts.same << " same, " << counts.wider << " wider, " << counts.left_out << " left out");
  CHECK(counts.same > 5 * rows_drawn);
  CHECK(20 * counts.wider < counts.same);
  CHECK(3 * counts.left_out < counts.same);
}

TEST_CASE("law: with memory regions leave out nothing that is found in the whole") {
  Counts counts;
  for (unsigned seed = 0; seed < rows_drawn / 2; ++seed) compare(seed, true, counts);
  CHECK(counts.same > rows_drawn);
}
