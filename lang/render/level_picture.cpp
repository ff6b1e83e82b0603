#include "lang/render/level_picture.hpp"
#include "lang/render/words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "lang/render/columns.hpp"
#include "lang/render/water_signs.hpp"

namespace leat::render {

namespace {

struct Sign {
  std::string text;
  Role role = Role::plain;
};

water::WetCell const* wet_cell(Scene const& scene, model::Cell c) {
  auto const found =
      std::lower_bound(scene.wet.begin(), scene.wet.end(), c,
                       [](water::WetCell const& wet, model::Cell cell) { return wet.cell < cell; });
  return found != scene.wet.end() && found->cell == c ? &*found : nullptr;
}

Sign dry_sign(Scene const& scene, model::Cell c) {
  auto const& design = scene.subject.design;
  auto const fill = design.fill_of[c];
  auto const& mark = scene.subject.map.fills[fill].name;
  if (!design.fills[fill].is_switched()) return {mark, Role::plain};
  if (scene.arrangement == nullptr || columns_of(mark) > 1) return {mark, Role::named};
  bool const is_powered = scene.arrangement->material_of(c) == design.fills[fill].powered;
  return {mark + (is_powered ? "+" : "-"), Role::named};
}

Sign sign_of(Scene const& scene, model::Cell c, Look look) {
  if (auto const* wet = wet_cell(scene, c)) return {water_sign(*wet, look), Role::water};
  return dry_sign(scene, c);
}

std::size_t cell_width(Scene const& scene) {
  int strongest = 9;
  for (auto const& wet : scene.wet) {
    if (water::is_flow(wet.state)) strongest = std::max(strongest, wet.strength);
  }
  return std::to_string(strongest).size() + 1;
}

bool is_marked(std::vector<model::Cell> const& marked, model::Cell c) {
  return std::binary_search(marked.begin(), marked.end(), c);
}

// Every column has its number while they have two digits, then every fifth.
std::string ruler(Window window, std::size_t width, std::size_t before) {
  std::string line(before, ' ');
  bool const is_every = static_cast<std::size_t>(window.x_end - 1) < 100 || width > 2;
  for (int x = window.x_begin; x < window.x_end; ++x) {
    bool const is_numbered = is_every || x % 5 == 0;
    auto const at = before + 1 + static_cast<std::size_t>(x - window.x_begin) * (width + 1);
    if (!is_numbered || at < line.size()) continue;
    line.append(at - line.size(), ' ').append(std::to_string(x));
  }
  return line;
}

std::string row_line(Scene const& scene, model::Place at, Window window,
                     std::vector<model::Cell> const& marked, Look look, std::size_t width) {
  std::string line;
  bool was_marked = false;
  for (at.x = window.x_begin; at.x < window.x_end; ++at.x) {
    auto const c = scene.subject.design.grid.cell(at);
    bool const is_now = is_marked(marked, c);
    line += is_now == was_marked ? " " : painted(look, Role::strong, is_now ? "[" : "]");
    auto const sign = sign_of(scene, c, look);
    line += painted(look, sign.role, sign.text);
    auto const used = columns_of(sign.text);
    if (used < width) line.append(width - used, ' ');
    was_marked = is_now;
  }
  if (was_marked) line += painted(look, Role::strong, "]");
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

std::string range_words(std::string_view what, int begin, int end) {
  if (end - begin == 1) return fmt::format("{} {}", what, begin);
  return fmt::format("{}s {} to {}", what, begin, end - 1);
}

}  // namespace

bool View::contains(model::Place at) const {
  return at.z == z && at.x >= window.x_begin && at.x < window.x_end && at.y >= window.y_begin &&
         at.y < window.y_end;
}

Window whole(model::Grid const& grid) { return {0, grid.width(), 0, grid.depth()}; }

Window around(model::Grid const& grid, std::vector<model::Cell> const& cells, int z, int margin,
              int most) {
  Window window{grid.width(), 0, grid.depth(), 0};
  for (auto c : cells) {
    auto const at = grid.place(c);
    if (at.z != z) continue;
    window = {std::min(window.x_begin, at.x), std::max(window.x_end, at.x + 1),
              std::min(window.y_begin, at.y), std::max(window.y_end, at.y + 1)};
  }
  if (window.x_end == 0) return whole(grid);
  window.x_begin = std::max(0, window.x_begin - margin);
  window.y_begin = std::max(0, window.y_begin - margin);
  window.x_end = std::min({grid.width(), window.x_end + margin, window.x_begin + most});
  window.y_end = std::min({grid.depth(), window.y_end + margin, window.y_begin + most});
  return window;
}

std::string level_picture(Scene const& scene, int z, Window window,
                          std::vector<model::Cell> const& marked, PictureStyle style) {
  auto const width = cell_width(scene);
  auto const number_width = std::to_string(window.y_end - 1).size();
  auto const before = style.indent + number_width + 2;
  std::string result = painted(style.look, Role::quiet, ruler(window, width, before)) + "\n";
  for (int y = window.y_begin; y < window.y_end; ++y) {
    auto const number = padded_left(std::to_string(y), number_width);
    result += std::string(style.indent, ' ') + painted(style.look, Role::quiet, number) + "  ";
    result += row_line(scene, {0, y, z}, window, marked, style.look, width) + "\n";
  }
  return result;
}

std::string level_heading(model::Grid const& grid, int z, Window window) {
  if (window == whole(grid)) return fmt::format("level {}", z);
  return fmt::format("level {}, {}, {}", z, range_words("row", window.y_begin, window.y_end),
                     range_words("column", window.x_begin, window.x_end));
}

std::string marked_pictures(Scene const& scene, std::vector<model::Cell> const& marked,
                            std::string const& caption, Look look) {
  constexpr std::size_t most_levels = 3;
  auto const& grid = scene.subject.design.grid;
  std::vector<int> levels;
  for (auto c = marked.rbegin(); c != marked.rend(); ++c) {
    auto const z = grid.place(*c).z;
    if (levels.empty() || levels.back() != z) levels.push_back(z);
  }
  std::string result;
  for (std::size_t i = 0; i < std::min(levels.size(), most_levels); ++i) {
    auto const window = around(grid, marked, levels[i], 3);
    auto heading = level_heading(grid, levels[i], window);
    if (!caption.empty()) heading += ", " + caption;
    result.append("\n    ").append(painted(look, Role::quiet, heading)).append("\n");
    result += level_picture(scene, levels[i], window, marked, {look, 4});
  }
  if (levels.size() > most_levels) {
    auto const more =
        fmt::format("and {} further down", counted(levels.size() - most_levels, "level"));
    result.append("    ").append(painted(look, Role::quiet, more)).append("\n");
  }
  return result + "\n";
}

}  // namespace leat::render
