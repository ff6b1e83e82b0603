#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "lang/render/look.hpp"

// The scale of a picture over time: ticks laid out on columns, with long stretches in which nothing
// happens drawn short and marked.
namespace leat::render {

// The ticks from `from` up to, but without, `to`; nothing changes after `from`.
struct Stretch {
  int from = 0, to = 0;
  std::size_t columns = 0;
  bool is_cut() const { return static_cast<std::size_t>(to - from) > columns; }
  // Where a cut stretch bears its sign.
  std::size_t cut_at(std::size_t label) const { return (label + columns) / 2; }
};

using Band = std::vector<Stretch>;

// The stretches between moments, ascending and the first at tick 0, up to `end`, in as many bands
// of `columns` as they take. A stretch has room for its first tick in figures. Where all can be
// drawn with at least a column for each tick in one band, nothing is cut.
std::vector<Band> time_bands(std::vector<int> const& moments, int end, std::size_t columns);

// "0 1  3  ≈  404": the tick that begins each stretch, and a sign where it is cut.
std::string scale_line(Band const&, Look);

std::string_view cut_sign(Look);

}  // namespace leat::render
