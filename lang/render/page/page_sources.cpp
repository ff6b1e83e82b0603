#include <fmt/format.h>

#include <algorithm>

#include "lang/render/page/page_pieces.hpp"
#include "lang/render/markup.hpp"
#include "lang/source/code_point.hpp"

namespace leat::render {

namespace {

// A text is shown line by line; a tab is one blank.
std::string shown_line(std::string_view line) {
  std::string plain(line);
  std::replace(plain.begin(), plain.end(), '\t', ' ');
  return escaped(plain);
}

// UTF-16 units of a piece of a line as it is shown: what is written as an entity counts one.
int units_of(std::string_view piece) {
  auto const shown = shown_line(piece);
  int units = 0;
  for (std::size_t at = 0; at < shown.size();) {
    auto const point = source::code_point_at(shown, at);
    units += point.value >= 0x10000 ? 2 : 1;
    at = shown[at] == '&' ? shown.find(';', at) + 1 : at + std::max<std::size_t>(point.length, 1);
  }
  return units;
}

struct Glyph {
  std::uint32_t cell = 0;
  int file = 0, line = 0, column = 0;
};

std::optional<Glyph> glyph_of(Subject const& subject, model::Place at) {
  auto const span = subject.map.span_of(at);
  if (span == subject.map.junction.span) return std::nullopt;
  auto const position = subject.text.position(span.begin);
  auto const line = subject.text.line(position.line, position.file);
  auto const begin = subject.text.begin_of(position.file);
  auto const before = static_cast<std::size_t>(subject.text.file_text(position.file).data() +
                                               (span.begin - begin) - line.data());
  return Glyph{playback::number_of(subject.design.grid, subject.design.grid.cell(at)),
               static_cast<int>(position.file), static_cast<int>(position.line) - 1,
               units_of(line.substr(0, before))};
}

// Glyphs that follow each other evenly, cell by cell.
class Runs {
 public:
  explicit Runs(int first_file) : first_file_(first_file) {}
  void add(Glyph const& glyph) {
    bool const is_next = count_ > 0 && glyph.cell == last_.cell + 1 && glyph.file == last_.file &&
                         glyph.line == last_.line;
    auto const step = glyph.column - last_.column;
    if (is_next && (count_ == 1 || step == step_)) {
      step_ = step;
      ++count_;
    } else {
      put();
      first_ = glyph;
      step_ = 0;
      count_ = 1;
    }
    last_ = glyph;
  }
  Json take() {
    put();
    return std::move(list_);
  }

 private:
  void put() {
    if (count_ == 0) return;
    for (auto number : {static_cast<int>(first_.cell), count_, first_file_ + first_.file,
                        first_.line, first_.column, step_})
      list_.push_back(number);
  }

  Json list_ = Json::array();
  Glyph first_, last_;
  int first_file_, count_ = 0, step_ = 0;
};

}  // namespace

Json glyphs_data(Subject const& subject, std::size_t first_file) {
  Runs runs(static_cast<int>(first_file));
  auto const& grid = subject.design.grid;
  for (int z = 0; z < grid.height(); ++z) {
    for (int y = 0; y < grid.depth(); ++y) {
      for (int x = 0; x < grid.width(); ++x) {
        if (auto const glyph = glyph_of(subject, {x, y, z})) runs.add(*glyph);
      }
    }
  }
  return runs.take();
}

Json line_data(source::SourceText const& text, source::Span span, std::size_t first_file) {
  if (span == source::Span{}) return nullptr;
  auto const at = text.position(span.begin);
  return Json::array({first_file + at.file, at.line - 1});
}

std::string sources_markup(source::SourceText const& text, std::size_t first_file) {
  std::string result;
  for (std::size_t file = 0; file < text.file_count(); ++file) {
    result += fmt::format(
        "<div class=\"file\"><h3>{0}</h3>\n<pre class=\"text\" data-file=\"{1}\" tabindex=\"0\" "
        "role=\"group\" aria-label=\"the text of {0}\">\n",
        escaped(text.name(file)), first_file + file);
    for (std::size_t line = 1; line <= text.line_count(file); ++line)
      result += shown_line(text.line(line, file)) + "\n";
    result += "</pre></div>\n";
  }
  return result;
}

}  // namespace leat::render
