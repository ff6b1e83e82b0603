#pragma once
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "engine/model/grid.hpp"
#include "lang/source/posture.hpp"
#include "lang/source/source_text.hpp"

namespace leat::source {

struct Named {
  std::string name;
  Span span;  // of its declaration; empty for what is built in
};

// The text of one drawn row: its first glyph's offset, and the offset of each glyph from there on.
struct RowText {
  std::vector<std::size_t> glyph_begins;  // width + 1 entries, the last one past the row
};

// Something placed in a works, and the text of what is drawn for it.
struct PlacedText {
  Named name;    // "north.first"
  Named design;  // the junction
  Standing standing;
  std::shared_ptr<std::map<std::pair<int, int>, RowText> const> rows;
};

// All that is placed in a works, in the order in which it is written, to be looked up by place.
//
// Idea: a balanced tree of boxes over the places in the order of their corners, row by row; a look
// goes down only where a box can hold what is looked for. Cost: about the logarithm of their number
// for each place that is found; linear where all of them reach over each other.
class PlacedTexts {
 public:
  PlacedTexts() = default;
  explicit PlacedTexts(std::vector<PlacedText>);

  bool empty() const { return texts_.empty(); }
  std::size_t size() const { return texts_.size(); }
  PlacedText const& operator[](std::size_t i) const { return texts_[i]; }
  auto begin() const { return texts_.begin(); }
  auto end() const { return texts_.end(); }

  // Those that reach into a box of cells, both corners included: by index, ascending.
  std::vector<std::size_t> within(model::Place least, model::Place most) const;

 private:
  struct Box {
    model::Place least, most;
  };
  static Box box_of(Standing const&);
  static Box around(Box const&, Box const&);

  std::vector<PlacedText> texts_;
  std::vector<std::size_t> by_corner_;
  std::vector<Box> boxes_;  // of node n those of 2n and 2n + 1; last those of `by_corner_`
};

}  // namespace leat::source
