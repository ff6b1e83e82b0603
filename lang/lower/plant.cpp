#include "lang/lower/plant.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "lang/check/glyphs.hpp"

namespace leat::lower {

namespace {

using Rows = std::map<std::pair<int, int>, source::RowText>;

std::shared_ptr<Rows const> rows_of(check::Drawing const& drawing) {
  auto rows = std::make_shared<Rows>();
  check::for_each_row(drawing.shape, [&](int z, int y, syntax::Row const& row) {
    auto& begins = (*rows)[{z, y}].glyph_begins;
    for (std::size_t at = 0; at < row.text.size(); at += check::glyph_length(row.text, at))
      begins.push_back(row.span.begin + at);
    begins.push_back(row.span.begin + row.text.size());
  });
  return rows;
}

class PlantLowering {
 public:
  PlantLowering(check::Meaning const& meaning, check::Plant const& plant, CircuitLowering& circuit,
                model::Design& design, source::SourceMap& map)
      : meaning_(meaning), plant_(plant), circuit_(circuit), design_(design), map_(map) {
    for (auto const* mark : meaning_.names.marks)
      is_plate_.push_back(mark->role == syntax::MarkRole::plate);
    fill_of_mark_.resize(is_plate_.size());
  }

  void run() {
    auto const outside = design_.outside_is_open ? model::material::open : model::material::rock;
    design_.grid = model::Grid(plant_.width, plant_.depth, plant_.height);
    design_.fills.push_back({outside, outside, std::nullopt});
    map_.fills.push_back({" ", {}});
    design_.fill_of.assign(design_.grid.size(), 0);
    std::vector<std::shared_ptr<Rows const>> rows;
    for (auto const& drawn : plant_.drawn) {
      rows.push_back(rows_of(drawn->drawing));
      marks_met_.push_back(marks_met(*drawn));
    }
    std::vector<source::PlacedText> texts;
    for (auto const& placed : plant_.placed) {
      put(placed);
      auto const& drawn = *plant_.drawn[placed.drawn];
      auto const& design = meaning_.names.junctions.all[drawn.junction]->name;
      texts.push_back({{placed.name, placed.span},
                       {design.text, design.span},
                       placed.standing,
                       rows[placed.drawn]});
    }
    map_.placed = source::PlacedTexts(std::move(texts));
    put_ports();
    for (auto& [signal, cells] : plates_) {
      std::sort(cells.begin(), cells.end());
      design_.plates.push_back({signal, cells});
    }
  }

 private:
  // Each mark once, in the order of the cells.
  std::vector<std::uint32_t> marks_met(check::DrawnJunction const& drawn) const {
    std::vector<std::uint32_t> met;
    std::vector<bool> is_met(is_plate_.size(), false);
    for (auto mark : drawn.marks) {
      if (!is_met[mark]) met.push_back(mark);
      is_met[mark] = true;
    }
    return met;
  }

  void put(check::Placed const& placed) {
    std::vector<std::pair<std::uint32_t, model::SignalId>> plates;
    for (auto mark : marks_met_[placed.drawn]) {
      fill_of_mark_[mark] = fill_of(mark, placed.scope);
      if (is_plate_[mark]) plates.emplace_back(mark, plate_of(mark, placed.scope));
    }
    auto const* fills = fill_of_mark_.data();
    auto* drawn = design_.fill_of.data();
    for_each_cell(placed, [=](std::uint32_t mark, model::Cell cell) { drawn[cell] = fills[mark]; });
    for (auto const& plate : plates) {
      for_each_cell(placed, [&](std::uint32_t mark, model::Cell cell) {
        if (mark == plate.first) plates_[plate.second].push_back(cell);
      });
    }
  }

  template <class Visit>
  void for_each_cell(check::Placed const& placed, Visit visit) const {
    auto const& standing = placed.standing;
    auto const step = design_.grid.cell(standing.eastward()) - design_.grid.cell({0, 0, 0});
    auto mark = plant_.drawn[placed.drawn]->marks.begin();
    for (int z = 0; z < standing.height; ++z) {
      for (int y = 0; y < standing.depth; ++y) {
        auto cell = design_.grid.cell(standing.outside({0, y, z}));
        for (int x = 0; x < standing.width; ++x, ++mark, cell += step) visit(*mark, cell);
      }
    }
  }

  model::FillId fill_of(std::uint32_t mark, check::Scopes::Id scope) {
    auto const& fill = meaning_.fills[mark];
    model::Fill lowered{fill.powered, fill.unpowered, std::nullopt};
    if (fill.control) lowered.control = circuit_.lower(*fill.control, scope);
    auto const next = static_cast<model::FillId>(design_.fills.size());
    auto const [entry, is_new] = fills_.try_emplace({mark, lowered.control}, next);
    if (is_new) {
      auto const& glyph = meaning_.names.marks[mark]->glyph;
      design_.fills.push_back(lowered);
      map_.fills.push_back({glyph.text, glyph.span});
    }
    return entry->second;
  }

  model::SignalId plate_of(std::uint32_t mark, check::Scopes::Id scope) {
    auto const& plate = meaning_.names.marks[mark]->role_name;
    return circuit_.signal_in(scope, *meaning_.names.signals.find(plate.text));
  }

  void put_ports() {
    for (auto const& port : plant_.inlets) put_port(port, false, design_.inlets, map_.inlets);
    for (auto const& port : plant_.outlets) put_port(port, true, design_.outlets, map_.outlets);
    for (auto const& [name, id] : plant_.inlet_names)
      map_.inlet_names.emplace(name, static_cast<model::InletId>(id));
    for (auto const& [name, id] : plant_.outlet_names)
      map_.outlet_names.emplace(name, static_cast<model::OutletId>(id));
    for (auto const& channel : plant_.joins)
      design_.joins.push_back({static_cast<model::OutletId>(channel.outlet),
                               static_cast<model::InletId>(channel.inlet), channel.ticks});
  }

  void put_port(check::PlantPort const& port, bool is_outlet, std::vector<model::Port>& ports,
                std::vector<source::Named>& names) {
    auto const& placed = plant_.placed[port.placed];
    auto const& drawn = *plant_.drawn[placed.drawn];
    auto& cells = ports.emplace_back().cells;
    for (auto const& own : (is_outlet ? drawn.outlets : drawn.inlets)[port.port])
      cells.push_back(design_.grid.cell(placed.standing.outside(own)));
    std::sort(cells.begin(), cells.end());
    names.push_back({port.name.text, port.name.span});
  }

  check::Meaning const& meaning_;
  check::Plant const& plant_;
  CircuitLowering& circuit_;
  model::Design& design_;
  source::SourceMap& map_;
  std::vector<bool> is_plate_;                         // by mark
  std::vector<std::vector<std::uint32_t>> marks_met_;  // by Plant::drawn
  std::vector<model::FillId> fill_of_mark_;            // where the place at hand has them
  std::map<std::pair<std::uint32_t, std::optional<model::ExpressionId>>, model::FillId> fills_;
  std::map<model::SignalId, std::vector<model::Cell>> plates_;
};

}  // namespace

void lower_plant(check::Meaning const& meaning, std::size_t works, CircuitLowering& circuit,
                 model::Design& design, source::SourceMap& map) {
  PlantLowering(meaning, meaning.plants[works], circuit, design, map).run();
}

}  // namespace leat::lower
