#include "lang/lower/cells.hpp"

#include <algorithm>
#include <optional>
#include <vector>

#include "engine/contract.hpp"
#include "lang/check/glyphs.hpp"

namespace leat::lower {

namespace {

// Which port each mark draws in this junction, if any.
std::vector<std::optional<std::uint32_t>> port_of_marks(
    std::vector<check::PortName const*> const& ports, std::size_t marks) {
  std::vector<std::optional<std::uint32_t>> port_of(marks);
  for (std::uint32_t port = 0; port < ports.size(); ++port) {
    for (auto const mark : ports[port]->marks) port_of[mark] = port;
  }
  return port_of;
}

// The plate signal that each mark places, if any.
std::vector<std::optional<std::size_t>> plate_of_marks(check::Names const& names,
                                                       std::vector<model::Plate>& plates) {
  std::vector<std::optional<std::size_t>> plate_of;
  for (auto const* mark : names.marks) {
    plate_of.emplace_back();
    if (mark->role != syntax::MarkRole::plate) continue;
    auto const signal = *names.signals.find(mark->role_name.text);
    auto const known = std::find_if(plates.begin(), plates.end(), [&](model::Plate const& plate) {
      return plate.signal == signal;
    });
    plate_of.back() = static_cast<std::size_t>(known - plates.begin());
    if (known == plates.end()) plates.push_back({signal, {}});
  }
  return plate_of;
}

}  // namespace

// One pass over the drawn rows, level by level from the lowest, so that cells come in ascending
// order and every port's list is born sorted. Cost: linear in the cells.
void lower_cells(check::Meaning const& meaning, std::size_t junction, model::Design& design,
                 source::SourceMap& map) {
  auto const& shape = meaning.drawings[junction].shape;
  auto const& ports = meaning.ports[junction];
  auto const marks = meaning.names.marks.size();
  auto const inlet_of = port_of_marks(ports.inlets, marks);
  auto const outlet_of = port_of_marks(ports.outlets, marks);
  check::GlyphTable const table(meaning.names, meaning.drawings[junction].file);
  auto const plate_of = plate_of_marks(meaning.names, design.plates);

  design.grid = model::Grid(shape.width, shape.depth, shape.height());
  design.fill_of.assign(design.grid.size(), static_cast<model::FillId>(marks));
  design.inlets.resize(ports.inlets.size());
  design.outlets.resize(ports.outlets.size());
  check::for_each_row(shape, [&](int z, int y, syntax::Row const& row) {
    auto& begins = map.rows[{z, y}].glyph_begins;
    begins.reserve(static_cast<std::size_t>(shape.width) + 1);
    std::string_view const text = row.text;
    auto cell = design.grid.cell({0, y, z});
    for (std::size_t at = 0; at < text.size(); ++cell) {
      auto const length = check::glyph_length(text, at);
      auto const mark = table.mark_of(text.substr(at, length));
      require(mark != check::GlyphTable::none, "lower_cells: a glyph that no mark declares");
      begins.push_back(row.span.begin + at);
      design.fill_of[cell] = static_cast<model::FillId>(mark);
      if (inlet_of[mark]) design.inlets[*inlet_of[mark]].cells.push_back(cell);
      if (outlet_of[mark]) design.outlets[*outlet_of[mark]].cells.push_back(cell);
      if (plate_of[mark]) design.plates[*plate_of[mark]].cells.push_back(cell);
      at += length;
    }
    begins.push_back(row.span.begin + text.size());
  });
  std::erase_if(design.plates, [](model::Plate const& plate) { return plate.cells.empty(); });
}

}  // namespace leat::lower
