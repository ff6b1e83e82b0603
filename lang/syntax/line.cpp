#include "lang/syntax/line.hpp"

#include <utility>

#include "lang/source/code_point.hpp"

namespace leat::syntax {

std::string joined(std::vector<std::string> const& words, std::string_view between) {
  std::string text;
  for (auto const& word : words) {
    if (&word != &words.front()) text += between;
    text += word;
  }
  return text;
}

void Lines::line(std::vector<std::string> cells, source::Span origin, Shape shape,
                 std::size_t hang) {
  lines_.push_back({std::move(cells), shape, LineKind::plain, origin, 2 * open_.size() + hang,
                    std::exchange(begins_paragraph_, false)});
}

void Lines::open(std::string head, source::Span origin) {
  line({std::move(head)}, origin);
  lines_.back().kind = LineKind::opens_block;
  open_.push_back(lines_.size() - 1);
}

// No comment is in a block that was written on one line, for a comment ends its line.
bool Lines::may_stay_on_one_line(std::size_t opening, std::size_t end, std::size_t most) const {
  auto const& head = lines_[opening];
  auto const inside = lines_.size() - opening - 1;
  if (inside > most) return false;
  auto const written = source_.text({head.origin.begin, end});
  if (written.find('\n') != std::string_view::npos) return false;
  auto width = head.indent + source::code_point_count(head.cells.front()) + 4 * (inside + 1);
  for (auto i = opening + 1; i < lines_.size(); ++i) {
    if (lines_[i].kind != LineKind::plain) return false;
    width += source::code_point_count(joined(lines_[i].cells, " "));
  }
  return width <= widest_line;
}

void Lines::close(std::size_t end, std::size_t most_on_one_line, Shape shape) {
  auto const opening = open_.back();
  open_.pop_back();
  if (may_stay_on_one_line(opening, end, most_on_one_line)) {
    std::string inside = "{ ";
    for (auto i = opening + 1; i < lines_.size(); ++i)
      inside += joined(lines_[i].cells, " ") + (i + 1 < lines_.size() ? "  " : " ");
    lines_.resize(opening + 1);
    auto& head = lines_.back();
    head.cells.push_back(inside + "}");
    head.shape = shape;
    head.kind = LineKind::plain;
    head.origin.end = end;
    return;
  }
  lines_[opening].cells.front() += " {";
  line({"}"}, {end - 1, end});
  lines_.back().kind = LineKind::closes_block;
}

}  // namespace leat::syntax
