#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "lang/source/source_text.hpp"

// A design as lines, on the way from the tree to its text.
namespace leat::syntax {

// Lines of one shape that stand below each other share their columns; those of none share nothing.
enum class Shape {
  none,
  signal,
  material,
  mark,       // of a material
  port_mark,  // of an inlet, outlet or plate
  row,        // of a drawing
  level,      // on one line
  number,
  place,
  join,
  port,
  setting,  // of a body or of practice
  body,     // on one line
  route,       // a clause, and when it applies
  body_route,  // the same of one body
  finding      // a clause, and where
};

enum class LineKind { plain, opens_block, closes_block };

struct Line {
  std::vector<std::string> cells;  // a blank between each two
  Shape shape = Shape::none;
  LineKind kind = LineKind::plain;
  source::Span origin;  // where in the text it comes from
  std::size_t indent = 0;        // blanks before it
  bool begins_paragraph = false;
};

std::string joined(std::vector<std::string> const& words, std::string_view between);

inline constexpr std::size_t widest_line = 100;

// Gathers the lines of a document.
class Lines {
 public:
  explicit Lines(source::SourceText const& source) : source_(source) {}

  void paragraph() { begins_paragraph_ = true; }
  // The line begins none after all.
  void join_paragraphs(std::size_t line) { lines_[line].begins_paragraph = false; }
  // `hang` is how much further in it stands than its neighbours.
  void line(std::vector<std::string> cells, source::Span origin, Shape shape = Shape::none,
            std::size_t hang = 0);
  void open(std::string head, source::Span origin);
  // `end` is past the closing brace. A block that was written on one line stays on it if it has no
  // more entries than given and fits.
  void close(std::size_t end, std::size_t most_on_one_line = 1, Shape shape = Shape::none);
  std::vector<Line> const& all() const { return lines_; }

 private:
  bool may_stay_on_one_line(std::size_t opening, std::size_t end, std::size_t most) const;

  source::SourceText const& source_;
  std::vector<Line> lines_;
  std::vector<std::size_t> open_;  // the lines that opened the blocks around
  bool begins_paragraph_ = false;
};

}  // namespace leat::syntax
