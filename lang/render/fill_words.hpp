#pragma once
#include <string>
#include <vector>

#include "lang/render/subject.hpp"

namespace leat::render {

// What cells of a fill are made of: "rock", "rock when divert else open".
std::string fill_words(Subject const&, model::FillId);

// A cell of an inlet or outlet.
struct PortCell {
  model::Cell cell = model::no_cell;
  bool is_outlet = false;
  std::uint32_t id = 0;
  auto operator<=>(PortCell const&) const = default;
};
// Of all inlets and outlets, ascending.
std::vector<PortCell> port_cells(model::Design const&);

// What a mark stands for: "inlet millhouse, open". Of its inlets and outlets those with a cell
// among the ones that are meant.
std::string mark_words(Subject const&, model::FillId, std::vector<PortCell> const& meant);

}  // namespace leat::render
