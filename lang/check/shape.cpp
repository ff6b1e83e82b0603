#include "lang/check/shape.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

#include "lang/diagnostics/catalogue.hpp"
#include "lang/source/code_point.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::JunctionDeclaration;
using syntax::LevelDeclaration;

std::string cells(std::size_t count) {
  return count == 1 ? "1 cell" : fmt::format("{} cells", count);
}

std::string rows(std::size_t count) { return count == 1 ? "1 row" : fmt::format("{} rows", count); }

bool fits_bounds(Reading const& reading, JunctionDeclaration const& junction) {
  for (auto const& level : junction.levels) {
    auto const& top = (level.highest ? *level.highest : level.lowest).literal;
    if (top.is_too_large || top.value >= most_levels || level.lowest.literal.is_too_large) {
      reading.sink.report(
          {Listed("too-large"),
           fmt::format("Junction '{}' has a level above {}", junction.name.text, most_levels - 1),
           {top.span, fmt::format("levels go from 0 to {}", most_levels - 1), {}},
           {},
           "Number the levels from 0 upwards, one by one."});
      return false;
    }
    if (top.value < level.lowest.literal.value) {
      reading.sink.report({Listed("level-backwards"),
                           fmt::format("Junction '{}' draws levels {}..{}, which runs backwards",
                                       junction.name.text, level.lowest.literal.value, top.value),
                           {level.span, "the first level of a range is the lower one", {}},
                           {},
                           fmt::format("Write 'level {}..{}'.", top.value, level.lowest.literal.value)});
      return false;
    }
  }
  return true;
}

void report_repeated(Reading const& reading, JunctionDeclaration const& junction, long z,
                     LevelDeclaration const& second, LevelDeclaration const& first) {
  reading.sink.report({Listed("level-repeated"),
                       fmt::format("Junction '{}' draws level {} twice", junction.name.text, z),
                       {second.span, fmt::format("level {} is drawn here again", z), {}},
                       {{first.span, fmt::format("level {} is first drawn here", z), {}}},
                       "Remove one of the drawings, or renumber it."});
}

void report_missing(Reading const& reading, JunctionDeclaration const& junction,
                    std::vector<LevelDeclaration const*> const& levels) {
  auto const gap = std::find(levels.begin(), levels.end(), nullptr);
  auto const missing = std::count(levels.begin(), levels.end(), nullptr);
  auto const above = *std::find_if(gap, levels.end(), [](auto const* level) { return level; });
  reading.sink.report(
      {Listed("level-missing"),
       fmt::format("Junction '{}' has no level {}{}", junction.name.text, gap - levels.begin(),
                   missing > 1 ? fmt::format(" (and {} more are missing)", missing - 1) : ""),
       {above->span, fmt::format("below this, level {} is not drawn", gap - levels.begin()), {}},
       {},
       fmt::format("Levels must run from 0 to the top without a gap: draw level {}, or renumber "
                   "the levels above it.",
                   gap - levels.begin())});
}

bool places_levels(Reading const& reading, JunctionDeclaration const& junction, Shape& shape) {
  if (junction.levels.empty()) {
    if (reading.is_whole)
      reading.sink.report({Listed("no-levels"),
                           fmt::format("Junction '{}' has no drawing", junction.name.text),
                           {junction.name.span, "this junction draws no level", {}},
                           {},
                           "Draw it level by level: 'level 0 { |...| }'."});
    return false;
  }
  if (!fits_bounds(reading, junction)) return false;
  bool is_sound = true;
  for (auto const& level : junction.levels) {
    auto const top = level.highest ? level.highest->literal.value : level.lowest.literal.value;
    if (std::cmp_greater_equal(top, shape.levels.size()))
      shape.levels.resize(static_cast<std::size_t>(top) + 1, nullptr);
    for (auto z = level.lowest.literal.value; z <= top; ++z) {
      auto& at = shape.levels[static_cast<std::size_t>(z)];
      if (at != nullptr && is_sound) {
        report_repeated(reading, junction, z, level, *at);
        is_sound = false;
      }
      if (at == nullptr) at = &level;
    }
  }
  if (std::count(shape.levels.begin(), shape.levels.end(), nullptr) == 0) return is_sound;
  if (is_sound && reading.is_whole) report_missing(reading, junction, shape.levels);
  return false;
}

// The value that occurs most often; among equals the one met first.
std::size_t usual(std::vector<std::size_t> const& values) {
  std::map<std::size_t, std::size_t> count;
  for (auto const value : values) ++count[value];
  std::size_t best = values.front();
  for (auto const value : values) {
    if (count[value] > count[best]) best = value;
  }
  return best;
}

// The width of every row of every level, in the order of the text.
struct Measure {
  std::vector<std::vector<std::size_t>> widths;
  std::size_t width = 0, depth = 0;  // the usual ones
};

Measure measure(JunctionDeclaration const& junction) {
  Measure found;
  std::vector<std::size_t> widths, depths;
  for (auto const& level : junction.levels) {
    auto& of_level = found.widths.emplace_back();
    for (auto const& row : level.rows) of_level.push_back(source::code_point_count(row.text));
    widths.insert(widths.end(), of_level.begin(), of_level.end());
    depths.push_back(level.rows.size());
  }
  if (!widths.empty()) found.width = usual(widths);
  found.depth = usual(depths);
  return found;
}

// A row of the usual width to hold a faulty one against: of the same level, else of any.
syntax::Row const* usual_row(JunctionDeclaration const& junction, Measure const& size,
                             std::size_t level) {
  for (std::size_t turn = 0; turn < junction.levels.size(); ++turn) {
    auto const at = (level + turn) % junction.levels.size();
    for (std::size_t y = 0; y < size.widths[at].size(); ++y) {
      if (size.widths[at][y] == size.width) return &junction.levels[at].rows[y];
    }
  }
  return nullptr;
}

void report_uneven(Reading const& reading, JunctionDeclaration const& junction, Measure const& size,
                   std::size_t at) {
  auto const& level = junction.levels[at];
  auto const& widths = size.widths[at];
  auto const wrong =
      std::find_if(widths.begin(), widths.end(), [&](auto width) { return width != size.width; });
  auto const y = wrong - widths.begin();
  auto const& row = level.rows[static_cast<std::size_t>(y)];
  auto const more =
      std::count_if(wrong + 1, widths.end(), [&](auto width) { return width != size.width; });
  diagnostics::Diagnostic found;
  found.name = Listed("uneven-rows");
  found.headline = fmt::format(
      "Junction '{}' has uneven rows: row {} of level {} is {} wide, not {}{}", junction.name.text,
      y, level.lowest.literal.value, cells(*wrong), size.width,
      more > 0 ? fmt::format(" (and {} more of that level)", rows(static_cast<std::size_t>(more)))
               : "");
  found.primary = {row.span, fmt::format("this row is {} wide", cells(*wrong)),
                   model::Place{0, static_cast<int>(y), static_cast<int>(level.lowest.literal.value)}};
  if (auto const* other = usual_row(junction, size, at))
    found.others.push_back(
        {other->span, fmt::format("this row is {} wide", cells(size.width)), {}});
  found.remedy = *wrong < size.width
                     ? fmt::format("Add {} to the row.", cells(size.width - *wrong))
                     : fmt::format("Take {} off the row.", cells(*wrong - size.width));
  reading.sink.report(std::move(found));
}

void report_uneven_depth(Reading const& reading, JunctionDeclaration const& junction,
                         Measure const& size, std::size_t at) {
  auto const& level = junction.levels[at];
  diagnostics::Diagnostic found;
  found.name = Listed("uneven-levels");
  found.headline =
      fmt::format("Junction '{}' has uneven levels: level {} has {}, not {}", junction.name.text,
                  level.lowest.literal.value, rows(level.rows.size()), size.depth);
  found.primary = {level.span, fmt::format("this level has {}", rows(level.rows.size())), {}};
  for (auto const& other : junction.levels) {
    if (other.rows.size() != size.depth) continue;
    found.others.push_back({other.span, fmt::format("this level has {}", rows(size.depth)), {}});
    break;
  }
  found.remedy = "Draw the same number of rows on every level.";
  reading.sink.report(std::move(found));
}

bool has_even_levels(Reading const& reading, JunctionDeclaration const& junction,
                     Measure const& size) {
  if (size.width == 0 || size.depth == 0) {
    auto const& level = junction.levels.front();
    reading.sink.report({Listed("empty-level"),
                         fmt::format("Junction '{}' has a level without cells", junction.name.text),
                         {level.span, "nothing is drawn on this level", {}},
                         {},
                         "Draw its rows between bars: '|XXX|'."});
    return false;
  }
  bool is_even = true;
  for (std::size_t at = 0; at < junction.levels.size(); ++at) {
    auto const& widths = size.widths[at];
    bool const has_wrong_row =
        std::any_of(widths.begin(), widths.end(), [&](auto width) { return width != size.width; });
    if (has_wrong_row) report_uneven(reading, junction, size, at);
    if (widths.size() != size.depth) report_uneven_depth(reading, junction, size, at);
    is_even = is_even && !has_wrong_row && widths.size() == size.depth;
  }
  return is_even;
}

bool has_bearable_size(Reading const& reading, JunctionDeclaration const& junction,
                       Measure const& size, std::size_t height) {
  bool const is_too_wide = size.width > most_across || size.depth > most_across;
  if (!is_too_wide && size.width * size.depth * height <= static_cast<std::size_t>(most_cells))
    return true;
  reading.sink.report({Listed("too-large"),
                       fmt::format("Junction '{}' is {} x {} x {} cells, more than can be read",
                                   junction.name.text, size.width, size.depth, height),
                       {junction.name.span,
                        fmt::format("a junction may be {0} x {0} x {1} cells, and {2} in all",
                                    most_across, most_levels, most_cells),
                        {}},
                       {},
                       "Split it into several junctions, each in a file of its own."});
  return false;
}

}  // namespace

Shape read_shape(Reading const& reading, JunctionDeclaration const& junction) {
  Shape shape;
  bool const has_all_levels = places_levels(reading, junction, shape);
  if (junction.levels.empty()) return shape;
  auto const size = measure(junction);
  bool const is_even = has_even_levels(reading, junction, size);
  if (!has_all_levels || !is_even) return shape;
  if (!has_bearable_size(reading, junction, size, shape.levels.size())) return shape;
  shape.is_sound = true;
  shape.width = static_cast<int>(size.width);
  shape.depth = static_cast<int>(size.depth);
  return shape;
}

}  // namespace leat::check
