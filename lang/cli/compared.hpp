#pragma once
#include <optional>
#include <vector>

#include "engine/compare/comparison.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/lower/matching.hpp"
#include "lang/render/comparison_sheet.hpp"

// Two files of designs, compared by what they do.
namespace leat::cli {

struct Pair {
  std::optional<std::size_t> before, after;  // indices into the junctions of the two files
};

// Junctions of the same name; where each file has just one, these, whatever they are called.
std::vector<Pair> pairs_of(Loaded const& before, Loaded const& after);

// One pair of junctions, judged and compared.
render::ComparisonSheet compared(Loaded const& before, std::size_t b, Loaded const& after,
                                 std::size_t a, std::vector<lower::Renaming> const&,
                                 bool is_replayable, Terminal&);

struct Compared {
  render::FileComparison comparison;
  compare::Change gravest = compare::Change::same;
  bool is_proved = true;
};

// `is_replayable`: the design before is still in its file, so what it did can be shown by commands.
Compared compare_designs(Loaded const& before, Loaded const& after,
                         std::vector<lower::Renaming> const&, bool is_replayable, Terminal&);

}  // namespace leat::cli
