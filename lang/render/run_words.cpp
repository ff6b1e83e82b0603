#include <fmt/format.h>

#include <array>

#include "lang/render/columns.hpp"
#include "lang/render/findings_formats.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

std::vector<std::pair<std::string_view, std::size_t>> verdict_counts(ToldRun const& run) {
  constexpr std::array<std::string_view, 6> verdicts{"holds",     "violated", "empty",
                                                     "undecided", "unusable", "interrupted"};
  std::vector<std::pair<std::string_view, std::size_t>> counts;
  for (auto verdict : verdicts) {
    std::size_t count = 0;
    for (auto const& file : run.files) count += file.verdict == verdict ? 1 : 0;
    counts.emplace_back(verdict, count);
  }
  return counts;
}

std::string run_line(ToldRun const& run) {
  std::string counts;
  for (auto const& [verdict, count] : verdict_counts(run)) {
    if (count == 0) continue;
    counts += fmt::format("{}{} {}", counts.empty() ? "" : ", ", count,
                          verdict == "holds" && count > 1 ? "hold" : verdict);
  }
  auto line = counted(run.files.size(), "file");
  if (!counts.empty()) line += ": " + counts;
  if (run.without_junctions > 0)
    line +=
        fmt::format("; {} no junction", counted(run.without_junctions, "more draws", "more draw"));
  if (run.is_interrupted) line += "; interrupted: nothing is said of what was not judged yet";
  return line + "\n";
}

std::string spot_words(Spot const& spot) {
  auto const file = showable(spot.file);
  return spot.line == 0 ? file : fmt::format("{}:{}:{}", file, spot.line, spot.column);
}

}  // namespace leat::render
