#include <fmt/format.h>

#include <map>

#include "lang/render/fill_words.hpp"
#include "lang/render/page/page_pieces.hpp"
#include "lang/render/markup.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

// What each cell of a drawing is, in words that mean the same in another design.
class Meanings {
 public:
  explicit Meanings(Subject const& subject) : design_(subject.design) {
    for (model::FillId fill = 0; fill < design_.fills.size(); ++fill)
      fills_.push_back(fill_words(subject, fill));
    add(design_.inlets, subject.map.inlets, "inlet ");
    add(design_.outlets, subject.map.outlets, "outlet ");
  }

  // Empty outside the drawing.
  std::string at(model::Place place) const {
    if (!design_.grid.is_inside(place)) return {};
    auto const c = design_.grid.cell(place);
    auto const port = ports_.find(c);
    auto const& made_of = fills_[design_.fill_of[c]];
    return port == ports_.end() ? made_of : made_of + ", " + port->second;
  }

 private:
  void add(std::vector<model::Port> const& ports, std::vector<source::Named> const& names,
           std::string const& role) {
    for (std::size_t i = 0; i < ports.size(); ++i) {
      for (auto c : ports[i].cells) ports_[c] += role + names[i].name;
    }
  }

  model::Design const& design_;
  std::vector<std::string> fills_;
  std::map<model::Cell, std::string> ports_;
};

std::vector<model::Cell> differing(model::Grid const& grid, Meanings const& own,
                                   Meanings const& other, model::Place shift) {
  std::vector<model::Cell> cells;
  for (int z = 0; z < grid.height(); ++z) {
    for (int y = 0; y < grid.depth(); ++y) {
      for (int x = 0; x < grid.width(); ++x) {
        if (own.at({x, y, z}) != other.at({x + shift.x, y + shift.y, z + shift.z}))
          cells.push_back(grid.cell({x, y, z}));
      }
    }
  }
  return cells;
}

std::string term(std::string_view word, std::string const& text) {
  return text.empty() ? "" : fmt::format("<dt>{}</dt><dd>{}</dd>", word, escaped(text));
}

std::string entry_item(ComparisonEntry const& entry) {
  auto const when = entry.condition == "on" ? "always" : entry.condition;
  auto const share = entry.share.empty() ? "" : fmt::format(" ({})", entry.share);
  return fmt::format(
      "<li class=\"difference {0}\"><h3><span class=\"severity\">{0}</span> {1} "
      "<code>{2}</code></h3><dl>{3}{4}{5}{6}</dl></li>\n",
      word_of(entry.change), escaped(entry.headline), entry.topic,
      term("when", when.empty() ? "" : when + share), term("before", entry.before),
      term("now", entry.after), term("try", entry.steps));
}

}  // namespace

DifferingCells differing_cells(Subject const& before, Subject const& now, model::Place shift) {
  Meanings const was(before), is(now);
  return {differing(before.design.grid, was, is, shift),
          differing(now.design.grid, is, was, {-shift.x, -shift.y, -shift.z})};
}

std::string differences_markup(std::vector<ComparisonSheet> const& sheets) {
  std::string items, proved;
  for (auto const& sheet : sheets) {
    for (auto const& entry : sheet.entries) items += entry_item(entry);
  }
  if (items.empty()) items = "<li>Nothing that bodies, water or signals do.</li>\n";
  return fmt::format(
      "<section class=\"differences\" aria-labelledby=\"differences\">"
      "<h2 id=\"differences\">What is different</h2>\n<ol class=\"notes\">\n{}"
      "</ol></section>\n",
      items);
}

}  // namespace leat::render
