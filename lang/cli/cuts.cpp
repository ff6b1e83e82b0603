#include "lang/cli/cuts.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "lang/cli/loaded.hpp"
#include "lang/cli/parts.hpp"
#include "lang/render/columns.hpp"

namespace leat::cli {

namespace {

std::optional<int> number_of(std::string_view word) {
  constexpr std::size_t most_digits = 6;
  if (word.empty() || word.size() > most_digits) return std::nullopt;
  int number = 0;
  for (char c : word) {
    if (c < '0' || c > '9') return std::nullopt;
    number = 10 * number + (c - '0');
  }
  return number;
}

// Narrows a stretch of rows or columns to "20..40". The option and what it counts have one name.
bool narrow(std::string const& text, std::string_view what, int& least, int& most,
            Terminal& terminal) {
  if (text.empty()) return true;
  auto const dots = text.find("..");
  auto const begin = number_of(trimmed(std::string_view(text).substr(0, dots)));
  auto const end = dots == std::string::npos
                       ? begin
                       : number_of(trimmed(std::string_view(text).substr(dots + 2)));
  if (!begin || !end || *begin > *end) {
    terminal.refuse(fmt::format("--{} does not understand '{}'", what, render::showable(text)),
                    "write one number, or the first and the last: 20..40");
    return false;
  }
  if (*begin < least || *end > most) {
    terminal.refuse(fmt::format("--{} {} lies outside of what is drawn", what, text),
                    fmt::format("its {} are {} to {}", what, least, most));
    return false;
  }
  least = *begin;
  most = *end;
  return true;
}

// Where something placed in a works stands, with one cell around it.
std::optional<render::Box> box_of_place(render::Subject const& subject, std::string const& name,
                                        Terminal& terminal) {
  std::vector<source::Named> names;
  for (auto const& placed : subject.map.placed) names.push_back(placed.name);
  auto const id = find_name(names, name, "place", terminal);
  if (!id) return std::nullopt;
  auto const& standing = subject.map.placed[*id].standing;
  auto const& low = standing.corner;
  auto const whole = render::whole_box(subject.design.grid);
  return render::Box{{std::max(low.x - 1, 0), std::max(low.y - 1, 0), std::max(low.z, 0)},
                     {std::min(low.x + standing.across(), whole.most.x),
                      std::min(low.y + standing.along(), whole.most.y),
                      std::min(low.z + standing.height - 1, whole.most.z)}};
}

// The part that is asked for; the whole where none is.
std::optional<render::Box> box_of(render::Subject const& subject, DrawOptions const& options,
                                  Terminal& terminal) {
  auto box = render::whole_box(subject.design.grid);
  if (!options.place.empty()) {
    auto const found = box_of_place(subject, options.place, terminal);
    if (!found) return std::nullopt;
    box = *found;
  }
  if (!narrow(options.columns, "columns", box.least.x, box.most.x, terminal) ||
      !narrow(options.rows, "rows", box.least.y, box.most.y, terminal))
    return std::nullopt;
  return box;
}

// "row 3" or "column 5".
std::optional<render::Cut> section_of(std::string const& text, render::Box const& box,
                                      Terminal& terminal) {
  auto const words = words_of(text);
  auto const number = words.size() == 2 ? number_of(words[1]) : std::nullopt;
  bool const is_row = number && words[0] == "row";
  if (!number || (!is_row && words[0] != "column")) {
    terminal.refuse(fmt::format("--section does not understand '{}'", render::showable(text)),
                    "write \"row 3\" or \"column 5\"");
    return std::nullopt;
  }
  auto const least = is_row ? box.least.y : box.least.x, most = is_row ? box.most.y : box.most.x;
  if (*number < least || *number > most) {
    terminal.refuse(fmt::format("there is no {} {} to be cut", words[0], *number),
                    fmt::format("the {}s are {} to {}", words[0], least, most));
    return std::nullopt;
  }
  return render::Cut{is_row ? render::Cut::Kind::row : render::Cut::Kind::column, *number, {}};
}

}  // namespace

std::optional<std::vector<render::Cut>> cuts_of(render::Subject const& subject,
                                                DrawOptions const& options, Terminal& terminal) {
  auto const box = box_of(subject, options, terminal);
  if (!box) return std::nullopt;
  for (auto level : options.levels) {
    if (level >= box->least.z && level <= box->most.z) continue;
    terminal.refuse(fmt::format("junction {} has no level {}", subject.map.junction.name, level),
                    fmt::format("its levels are {} to {}", box->least.z, box->most.z));
    return std::nullopt;
  }
  auto const is_asked = [&](int z) {
    if (options.levels.empty()) return options.sections.empty();
    return std::find(options.levels.begin(), options.levels.end(), z) != options.levels.end();
  };
  std::vector<render::Cut> cuts;
  for (int z = box->most.z; z >= box->least.z; --z) {
    if (is_asked(z)) cuts.push_back({render::Cut::Kind::level, z, {}});
  }
  for (auto const& text : options.sections) {
    auto const cut = section_of(text, *box, terminal);
    if (!cut) return std::nullopt;
    cuts.push_back(*cut);
  }
  if (*box != render::whole_box(subject.design.grid)) {
    for (auto& cut : cuts) cut.box = box;
  }
  return cuts;
}

}  // namespace leat::cli
