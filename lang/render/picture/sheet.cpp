#include "lang/render/picture/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

#include "lang/render/columns.hpp"
#include "lang/render/picture/level_svg.hpp"
#include "lang/render/markup.hpp"
#include "lang/render/picture/overlays.hpp"
#include "lang/render/picture/symbols.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

constexpr int edge = 24, heading_height = 22, line_height = 29;
constexpr int wished_width = 1240, least_width = 520;
constexpr std::size_t letter_width = 7;  // of a text, taken wide

// Longer lists go on in words.
constexpr std::size_t most_lines = 60;

struct Placed {
  Cut cut;
  int x = 0, y = 0;
};

struct Layout {
  std::vector<Placed> cuts;
  int width = least_width, bottom = 0;
};

// Cuts are set like words: beside each other while there is room.
Layout laid_out(Sheet const& sheet, int top) {
  Layout layout;
  int x = edge, y = top, row_height = 0;
  for (auto const cut : sheet.cuts) {
    auto extent = extent_of(sheet.scene, cut);
    auto const heading = static_cast<int>(cut_words(cut).size() * letter_width);
    extent.width = std::max(extent.width, heading + margins.left + margins.right);
    if (x > edge && x + extent.width + edge > wished_width) {
      x = edge;
      y += row_height + heading_height;
      row_height = 0;
    }
    layout.cuts.push_back({cut, x, y});
    x += extent.width;
    layout.width = std::max(layout.width, x + edge);
    row_height = std::max(row_height, extent.height);
  }
  layout.bottom = y + heading_height + row_height;
  return layout;
}

std::string text(std::string_view style, int x, int y, std::string_view words) {
  return fmt::format("<text class=\"{}\" x=\"{}\" y=\"{}\">{}</text>\n", style, x, y,
                     escaped(words));
}

struct Block {
  std::string body;
  int height = 0;
};

// Lines of words that are cut to the width of the sheet; the whole stands in a title.
std::string fitting(std::string_view words, int width) {
  auto const most = static_cast<std::size_t>(std::max(width, 100)) / letter_width;
  auto const shown = shortened(showable(words), most);
  auto const title =
      shown == showable(words) ? std::string() : fmt::format("<title>{}</title>", escaped(words));
  return title + escaped(shown);
}

// Words set into as many lines as they need.
Block paragraph(std::string_view style, std::string_view words, int x, int top, int width) {
  auto const columns = static_cast<std::size_t>(width - edge - x) / letter_width;
  Block block;
  std::istringstream lines(wrapped(showable(words), columns, 0));
  for (std::string line; std::getline(lines, line);) {
    block.height += 16;
    block.body += text(style, x, top + block.height - 3, line);
  }
  return block;
}

void add_rest(Block& block, std::size_t count, std::string_view what, int top) {
  if (count <= most_lines) return;
  block.height += 16;
  block.body +=
      text("f-quiet", edge, top + block.height - 3,
           fmt::format("and {}", counted(count - most_lines, fmt::format("more {}", what))));
}

Block signs_block(Sheet const& sheet, int top, int width) {
  constexpr int column_width = 290;
  auto const lines = sign_lines(sheet);
  auto const columns = std::max(1, (width - 2 * edge) / column_width);
  auto const count = static_cast<int>(std::min(lines.size(), most_lines));
  auto const rows = (count + columns - 1) / columns;
  Block block{text("name f-ink", edge, top + 12, "signs"), rows * line_height + 30};
  for (int i = 0; i < count; ++i) {
    auto const x = edge + i / rows * column_width, y = top + 24 + i % rows * line_height;
    auto const& line = lines[static_cast<std::size_t>(i)];
    block.body += fmt::format("<g transform=\"translate({} {}) scale(.6)\">", x, y);
    for (auto const& symbol : line.symbols)
      block.body += fmt::format("<use href=\"#{}\"/>", symbol);
    block.body += fmt::format("</g><text class=\"f-ink\" x=\"{}\" y=\"{}\">{}</text>\n", x + 34,
                              y + 16, fitting(line.words, column_width - 40));
  }
  add_rest(block, lines.size(), "sign", top);
  return block;
}

Block ways_block(Sheet const& sheet, int top, int width) {
  auto const& [design, map, source, is_alone] = sheet.scene.subject;
  if (sheet.scene.ways.empty()) return {};
  Block block{text("name f-ink", edge, top + 12, "ways"), 30};
  for (std::size_t i = 0; i < std::min(sheet.scene.ways.size(), most_lines); ++i) {
    auto const& ways = sheet.scene.ways[i];
    auto words = fmt::format("from {}", map.inlets[ways.inlet].name);
    if (design.profiles.size() > 1) words += ", " + map.profiles[ways.profile].name;
    if (ways.ways.empty()) words += ": it does not fit there";
    auto const y = top + 24 + static_cast<int>(i) * line_height;
    block.body += fmt::format(
        "<g transform=\"translate({} {})\">{}</g><text class=\"f-ink\" x=\"{}\" "
        "y=\"{}\">{}</text>\n",
        edge, y + 10, way_sample(i, 56), edge + 70, y + 14, fitting(words, width - edge - 100));
    block.height += line_height;
  }
  add_rest(block, sheet.scene.ways.size(), "inlet", top);
  auto const remark = paragraph(
      "small f-quiet",
      "disc: delivered; square: stays; ring: goes round; cross: spilled; triangle: to another "
      "level; dots: an unsure move",
      edge, top + block.height - 13, width);
  block.body += remark.body;
  block.height += remark.height - 4;
  return block;
}

std::string places_of(PictureScene const& scene, Pin const& pin) {
  if (pin.cells.empty()) return {};
  auto const first = place_words(scene.subject.design.grid.place(pin.cells.front()));
  if (pin.cells.size() == 1) return first;
  return fmt::format("{} and {} more", first, pin.cells.size() - 1);
}

// One finding with as many lines as its words need.
Block pin_block(Sheet const& sheet, Pin const& pin, int top, int width) {
  auto words = fmt::format("{}: {}", word_of(pin.severity), pin.headline);
  if (auto const where = places_of(sheet.scene, pin); !where.empty())
    words += fmt::format(" ({})", where);
  auto block = paragraph("f-ink", words, edge + 36, top, width);
  block.body +=
      fmt::format("<g transform=\"translate({} {})\">{}</g>\n", edge + 13, top + 9, pin_shape(pin));
  block.height += 14;
  return block;
}

Block pins_block(Sheet const& sheet, int top, int width) {
  if (sheet.scene.pins.empty()) return {};
  Block block{text("name f-ink", edge, top + 12, "findings"), 30};
  for (std::size_t i = 0; i < std::min(sheet.scene.pins.size(), most_lines); ++i) {
    auto const one = pin_block(sheet, sheet.scene.pins[i], top + block.height, width);
    block.body += one.body;
    block.height += one.height;
  }
  add_rest(block, sheet.scene.pins.size(), "finding", top);
  return block;
}

std::string description(Sheet const& sheet) {
  auto const& scene = sheet.scene;
  std::vector<std::string> cuts;
  for (auto const cut : sheet.cuts) cuts.push_back(cut_words(cut));
  return fmt::format("{} with {}: {}; {}; {}.", scene.subject.map.junction.name, scene.setting,
                     listed(cuts, "and", 12), counted(scene.wet.size(), "wet cell"),
                     counted(scene.pins.size(), "finding"));
}

std::string headings(Sheet const& sheet) {
  auto const& map = sheet.scene.subject.map;
  auto const title =
      map.title.empty() ? map.junction.name : fmt::format("{}: {}", map.junction.name, map.title);
  auto result = text("head f-ink", edge, edge + 14, shortened(showable(title), 60)) +
                text("f-quiet", edge, edge + 34, shortened(showable(sheet.scene.setting), 70));
  if (!sheet.remark.empty()) result += text("f-quiet", edge, edge + 52, sheet.remark);
  return result;
}

std::string cuts_body(Sheet const& sheet, Layout const& layout) {
  std::string body;
  for (auto const& [cut, x, y] : layout.cuts) {
    body += text("name f-ink", x + margins.left, y + 14, cut_words(cut));
    body += fmt::format("<g transform=\"translate({} {})\">\n{}</g>\n", x + margins.left,
                        y + heading_height - 6 + margins.top, level_svg(sheet.scene, cut));
  }
  return body;
}

}  // namespace

std::size_t cells_of(Sheet const& sheet) {
  std::size_t count = 0;
  for (auto const cut : sheet.cuts) {
    Plane const plane(sheet.scene.subject.design.grid, cut);
    count += static_cast<std::size_t>(plane.width()) * static_cast<std::size_t>(plane.height());
  }
  return count;
}

std::string picture_svg(Sheet const& sheet) {
  auto const layout = laid_out(sheet, edge + (sheet.remark.empty() ? 48 : 66));
  std::string blocks;
  auto bottom = layout.bottom + 6;
  for (auto* make : {&signs_block, &ways_block, &pins_block}) {
    auto const block = (*make)(sheet, bottom, layout.width);
    blocks += block.body;
    bottom += block.height == 0 ? 0 : block.height + 10;
  }
  auto const height = bottom + edge - 10;
  return fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"picture\" role=\"img\" "
      "aria-labelledby=\"picture-title picture-desc\" width=\"{0}\" height=\"{1}\" viewBox=\"0 0 "
      "{0} "
      "{1}\">\n<title id=\"picture-title\">{2}</title>\n<desc id=\"picture-desc\">{3}</desc>\n"
      "<style>\n{4}</style>\n<defs>\n{5}</defs>\n<rect class=\"f-paper\" width=\"{0}\" "
      "height=\"{1}\"/>\n{6}{7}{8}</svg>\n",
      layout.width, height, escaped(sheet.scene.subject.map.junction.name),
      escaped(description(sheet)), style_sheet(sheet.theme),
      symbol_definitions(sheet.scene.subject), headings(sheet), cuts_body(sheet, layout), blocks);
}

}  // namespace leat::render
