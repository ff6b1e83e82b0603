#pragma once
#include <string>
#include <utility>
#include <vector>

#include "engine/water/survey.hpp"
#include "lang/render/fill_words.hpp"
#include "lang/render/look.hpp"
#include "lang/render/subject.hpp"

// Levels drawn with characters.
//
// Each cell is a pair of signs (more where strengths have more digits). A dry cell shows the
// design's own mark; behind a switched mark stands + while it is powered and - while it is not. A
// wet cell shows what its water is, S for a placed source, G for a formed one, F for falling
// water, a figure for the strength of a flow, and behind it the current as an arrow, or a dot
// where it is still. Cells that are spoken of stand in square brackets, neighbours in one pair.
namespace leat::render {

// What is drawn: the design alone, or with its settled water under one arrangement.
struct Scene {
  Scene(Subject of, model::Arrangement const* under, std::vector<water::WetCell> settled)
      : subject(of), arrangement(under), wet(std::move(settled)), ports(port_cells(of.design)) {}

  Subject subject;
  model::Arrangement const* arrangement = nullptr;
  std::vector<water::WetCell> wet;  // ascending
  std::vector<PortCell> ports;      // of the design
};

// Half-open ranges of columns and rows.
struct Window {
  int x_begin = 0, x_end = 0, y_begin = 0, y_end = 0;
  bool operator==(Window const&) const = default;
};

// A part of one level.
struct View {
  int z = 0;
  Window window;
  bool contains(model::Place) const;
};

Window whole(model::Grid const&);
// The marked cells of one level with a margin around, cut off at the drawing's edge and at `most`
// columns and rows from the first of them.
Window around(model::Grid const&, std::vector<model::Cell> const& cells, int z, int margin,
              int most = 40);

struct PictureStyle {
  Look look;
  std::size_t indent = 2;
};

// One level with rulers: column numbers above, row numbers at the left; no heading.
std::string level_picture(Scene const&, int z, Window, std::vector<model::Cell> const& marked,
                          PictureStyle);

// "level 2", and which part of it where the window cuts some off.
std::string level_heading(model::Grid const&, int z, Window);

// The levels that hold marked cells, from the top down, each with a heading and as much around the
// cells as they need; `caption` follows each heading. Of many levels the upper ones.
std::string marked_pictures(Scene const&, std::vector<model::Cell> const& marked,
                            std::string const& caption, Look);

}  // namespace leat::render
