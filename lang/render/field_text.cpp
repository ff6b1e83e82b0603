#include "lang/render/field_text.hpp"

#include <fmt/format.h>

#include "lang/render/example.hpp"
#include "lang/render/water_signs.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::string wire_words(Subject const& subject, model::Arrangement const& now) {
  auto const& design = subject.design;
  std::size_t powered = 0, switched = 0;
  for (model::Cell c = 0; c < design.fill_of.size(); ++c) {
    auto const& fill = design.fills[design.fill_of[c]];
    if (!fill.is_switched() || !design.grid.is_inside(c)) continue;
    ++switched;
    if (now.material_of(c) == fill.powered) ++powered;
  }
  if (switched == 0) return "none";
  return fmt::format("{}, {} of them powered", counted(switched, "cell"), powered);
}

std::size_t spilling(FieldPart const& part) {
  std::size_t count = 0;
  for (auto const& wet : part.wet) count += wet.spills ? 1 : 0;
  return count;
}

}  // namespace

std::string field_text(FieldPart const& part, Scene const& scene, std::optional<int> level,
                       Look look) {
  auto const& grid = part.subject.design.grid;
  auto const setting = situation_text(part.subject, part.assignment, part.flips);
  auto result =
      fmt::format("{}\n    {}        {}\n    switched    {}\n    wet         {}\n",
                  painted(look, Role::strong, "junction " + part.subject.map.junction.name),
                  part.flips.empty() ? "with" : "done", setting,
                  wire_words(part.subject, *scene.arrangement), counted(part.wet.size(), "cell"));
  if (auto const caveat = caveat_of(part.standing); !caveat.empty())
    result += fmt::format("    but         {}\n", caveat);
  if (auto const count = spilling(part); count > 0) {
    result += fmt::format("    spills      from {}\n", counted(count, "cell"));
  }
  if (!level && grid.height() > 1) result += "\nlevels from the top down\n";
  std::vector<View> drawn;
  for (int z = grid.height() - 1; z >= 0; --z) {
    if (level && *level != z) continue;
    drawn.push_back({z, whole(grid)});
    result += "\n    " + painted(look, Role::quiet, level_heading(grid, z, whole(grid))) + "\n";
    result += level_picture(scene, z, whole(grid), {}, {look, 4});
  }
  return result + "\n" + painted(look, Role::quiet, "signs") + "\n" +
         legend(scene, drawn, {look, 4});
}

}  // namespace leat::render
