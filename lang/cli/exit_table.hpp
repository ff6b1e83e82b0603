#pragma once
#include <array>
#include <string_view>

// The exit codes, in one table: printed by --help, used by every command.
namespace leat::cli {

enum class Exit { holds = 0, violated = 1, unusable = 2, undecided = 3, fault = 4 };

struct ExitRow {
  Exit code;
  std::string_view meaning;
  int weight;  // of several the heaviest is returned
};

// What is proved wrong outweighs what is not known; a question that could not be asked outweighs
// every answer.
inline constexpr std::array<ExitRow, 5> exit_table{{
    {Exit::holds, "everything holds, for all combinations", 0},
    {Exit::violated, "an expectation is violated or empty, or a finding is severe enough to fail",
     2},
    {Exit::unusable, "the input or the command line cannot be used", 3},
    {Exit::undecided, "undecided, interrupted, or holds only within bounds", 1},
    {Exit::fault, "a fault of this program", 4},
}};

constexpr int weight_of(Exit code) {
  for (auto const& row : exit_table) {
    if (row.code == code) return row.weight;
  }
  return 0;
}

constexpr Exit worst(Exit a, Exit b) { return weight_of(a) < weight_of(b) ? b : a; }

}  // namespace leat::cli
