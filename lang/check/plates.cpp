#include "lang/check/plates.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>

#include "lang/check/glyphs.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/syntax/wording.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::MarkDeclaration;
using syntax::MarkRole;
using syntax::SignalKind;

bool is_a_plate(MarkFill const& fill, std::vector<model::Material> const& materials) {
  return materials[fill.powered].is_plate || materials[fill.unpowered].is_plate;
}

void report_meaningless(Reading const& reading, MarkDeclaration const& mark) {
  reading.sink.report(
      {Listed("plate-without-meaning"),
       fmt::format("The plate drawn as '{}' presses no signal", mark.glyph.text),
       {mark.span, "a plate that no signal listens to", {}},
       {},
       fmt::format("Declare 'plate NAME' in the 'signals' block and write '{} plate NAME'.",
                   mark.glyph.text)});
}

void report_no_plate(Reading const& reading, MarkDeclaration const& mark) {
  reading.sink.report({Listed("plate-without-meaning"),
                       fmt::format("The plate '{}' is drawn as '{}' in a material that is no plate",
                                   mark.role_name.text, mark.glyph.text),
                       {mark.choice->span, "nothing here can be pressed", {}},
                       {},
                       fmt::format("Leave the material away: '{} plate {}'.", mark.glyph.text,
                                   mark.role_name.text)});
}

void check_signal_of(Reading const& reading, MarkDeclaration const& mark) {
  auto const* signal = reading.names.signals.declared(mark.role_name.text);
  if (signal == nullptr) {
    reading.unknown.add(NameKind::signal, mark.role_name);
  } else if (signal->kind != SignalKind::plate) {
    reading.sink.report(
        {Listed("not-a-plate"),
         fmt::format("The mark '{}' is a plate for '{}', which is a {}", mark.glyph.text,
                     signal->name.text, syntax::keyword_of(signal->kind)),
         {mark.role_name.span,
          fmt::format("'{}' is not pressed by a plate", signal->name.text),
          {}},
         {{signal->name.span,
           fmt::format("declared here as a {}", syntax::keyword_of(signal->kind)),
           {}}},
         fmt::format("Declare 'plate {}' instead, or name a plate.", signal->name.text)});
  }
}

void check_marks_of_plates(Reading const& reading, std::vector<MarkFill> const& fills,
                           std::vector<model::Material> const& materials) {
  for (std::size_t at = 0; at < fills.size(); ++at) {
    auto const& mark = *reading.names.marks[at];
    if (!fills[at].is_sound) continue;
    if (mark.role != MarkRole::plate) {
      if (is_a_plate(fills[at], materials)) report_meaningless(reading, mark);
    } else {
      check_signal_of(reading, mark);
      if (!is_a_plate(fills[at], materials)) report_no_plate(reading, mark);
    }
  }
}

void check_plates_are_placed(Reading const& reading) {
  if (!reading.is_whole) return;
  std::set<std::string> placed;
  for (auto const* mark : reading.names.marks) {
    if (mark->role != MarkRole::plate) continue;
    // A plate for an unknown signal has been reported, and may be the one that is missed here.
    if (!reading.names.signals.find(mark->role_name.text)) return;
    placed.insert(mark->role_name.text);
  }
  for (auto const* signal : reading.names.signals.all) {
    if (signal->kind != SignalKind::plate || placed.count(signal->name.text) != 0) continue;
    // What is declared for several files may lie in one that this run does not include.
    if (reading.source.file_of(signal->name.span.begin) != 0) continue;
    reading.sink.report(
        {Listed("plate-nowhere"),
         fmt::format("The plate '{}' lies nowhere", signal->name.text),
         {signal->span, "no mark places this plate in a junction", {}},
         {},
         fmt::format("Give a mark the role 'plate {}' and draw it.", signal->name.text)});
  }
}

void report_mid_air(Reading const& reading, Drawing const& drawing, MarkDeclaration const& mark,
                    MarkUse const& use) {
  reading.sink.report({Listed("plate-in-mid-air"),
                       fmt::format("Junction '{}' has a plate '{}' with nothing below it{}",
                                   drawing.junction->name.text, mark.glyph.text,
                                   use.count > 1 ? fmt::format(" ({} cells)", use.count) : ""),
                       {use.span, "the cell below never carries this plate", use.first},
                       {},
                       "Draw something that carries, such as rock, on the level below."});
}

// What the marks are, as the walk below asks for it.
struct MarkTraits {
  std::vector<char> is_plate, carries;  // by mark; in some setting

  MarkTraits(std::vector<MarkFill> const& fills, std::vector<model::Material> const& materials) {
    for (auto const& fill : fills) {
      is_plate.push_back(fill.is_sound && is_a_plate(fill, materials));
      carries.push_back(!fill.is_sound || materials[fill.powered].carries ||
                        materials[fill.unpowered].carries);
    }
  }
};

// The same, as a junction's own file draws it.
struct DrawnTraits {
  MarkTraits const& traits;
  GlyphTable table;

  bool is_plate(std::uint32_t mark) const {
    return mark != GlyphTable::none && traits.is_plate[mark];
  }
  bool may_carry(std::string_view glyph) const {
    auto const mark = table.mark_of(glyph);
    return mark == GlyphTable::none || traits.carries[mark];
  }
};

// Walks a row and the row below it side by side and notes the plates that nothing carries, by mark.
void note_mid_air(DrawnTraits const& traits, syntax::Row const& row, std::string_view below,
                  bool carries_outside, model::Place at, std::vector<MarkUse>& found) {
  std::string_view const text = row.text;
  std::size_t under = 0;
  for (std::size_t i = 0; i < text.size(); ++at.x) {
    auto const glyph = text.substr(i, glyph_length(text, i));
    auto const floor = below.substr(under, below.empty() ? 0 : glyph_length(below, under));
    auto const mark = traits.table.mark_of(glyph);
    if (traits.is_plate(mark) && !(below.empty() ? carries_outside : traits.may_carry(floor))) {
      auto& use = found[mark];
      if (use.count++ == 0) {
        use.first = at;
        use.span = {row.span.begin + i, row.span.begin + i + glyph.size()};
      }
    }
    i += glyph.size();
    under += floor.size();
  }
}

void check_floors(Reading const& reading, Drawing const& drawing, MarkTraits const& traits) {
  bool const is_outside_open =
      drawing.junction->outside && drawing.junction->outside->text == "open";
  DrawnTraits const drawn{traits, GlyphTable(reading.names, drawing.file)};
  std::vector<MarkUse> found(reading.names.marks.size());
  for_each_row(drawing.shape, [&](int z, int y, syntax::Row const& row) {
    std::string_view below;
    if (z > 0)
      below = drawing.shape.levels[static_cast<std::size_t>(z - 1)]
                  ->rows[static_cast<std::size_t>(y)]
                  .text;
    note_mid_air(drawn, row, below, !is_outside_open, {0, y, z}, found);
  });
  for (std::size_t at = 0; at < found.size(); ++at) {
    if (found[at].count > 0) report_mid_air(reading, drawing, *reading.names.marks[at], found[at]);
  }
}

bool draws_plates(Drawing const& drawing, MarkTraits const& traits) {
  for (std::size_t at = 0; at < drawing.marks.size(); ++at) {
    if (drawing.marks[at].count > 0 && traits.is_plate[at]) return true;
  }
  return false;
}

}  // namespace

void check_plates(Reading const& reading, std::vector<Drawing> const& drawings,
                  std::vector<MarkFill> const& fills,
                  std::vector<model::Material> const& materials) {
  check_marks_of_plates(reading, fills, materials);
  check_plates_are_placed(reading);
  MarkTraits const traits(fills, materials);
  for (auto const& drawing : drawings) {
    if (drawing.shape.is_sound && draws_plates(drawing, traits))
      check_floors(reading, drawing, traits);
  }
}

}  // namespace leat::check
