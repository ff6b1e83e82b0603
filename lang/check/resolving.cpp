#include "lang/check/resolving.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "lang/diagnostics/catalogue.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::Word;

// The junction's ports point into its file's, in the same order, so they are sorted by where they
// point.
std::optional<std::uint32_t> find_port(Reading const& reading, NameKind kind, PortName const* port,
                                       std::vector<PortName const*> const& ports,
                                       Drawing const& drawing, Word const& word) {
  auto const at = std::lower_bound(ports.begin(), ports.end(), port);
  if (port && at != ports.end() && *at == port)
    return static_cast<std::uint32_t>(at - ports.begin());
  // A port that only its drawing lacks has been reported as an unused mark.
  if (!port || reading.names.files[drawing.file].junctions.size() > 1)
    reading.unknown.add_port(kind, word, drawing.junction->name.text, ports);
  return std::nullopt;
}

void report_which(Reading const& reading, source::Span whose,
                  std::vector<std::size_t> const& able) {
  diagnostics::Diagnostic found;
  found.name = Listed("which-junction");
  found.headline = "It is unclear which junction is meant here";
  found.primary = {whose, "the file has several junctions that this may speak of", {}};
  for (std::size_t i = 0; i < std::min<std::size_t>(able.size(), 3); ++i)
    found.others.push_back(
        {name_of(reading.names, able[i]).span,
         fmt::format("'{}' is one of them", name_of(reading.names, able[i]).text),
         {}});
  found.remedy =
      fmt::format("Name the junction, such as '{}'.", name_of(reading.names, able.front()).text);
  reading.sink.report(std::move(found));
}

void report_elsewhere(Reading const& reading, Word const& named, std::size_t found) {
  auto const& declared = name_of(reading.names, found);
  bool const is_works = found >= reading.names.junctions.all.size();
  reading.sink.report({Listed("drawn-elsewhere"),
                       fmt::format("{} '{}' stands in another file, and is judged with that",
                                   is_works ? "Works" : "Junction", named.text),
                       {named.span, fmt::format("'{}' is only included here", named.text), {}},
                       {{declared.span, "it stands here", {}}},
                       fmt::format("Move this to {}, which is checked by itself.",
                                   reading.source.name(reading.file_of(declared)))});
}

// An acceptance of something in a junction, in a file that draws none. Of the file that is judged
// it has been said already, and so has it that a name is taken.
void report_none_drawn(Reading const& reading, source::Span whose) {
  auto const file = reading.source.file_of(whose.begin);
  if (file == 0 || !reading.names.files[file].draws_nothing()) return;
  reading.sink.report({Listed("which-junction"),
                       "It is unclear which junction is meant here",
                       {whose, "the file that this stands in draws none", {}},
                       {},
                       "Move this to the file that draws the junction."});
}

bool is_within(syntax::Number const& number, int extent) {
  return !number.is_too_large && number.value >= 0 && number.value < extent;
}

// The extents of what is drawn; none where it has a fault of its own.
std::optional<model::Place> extent_of(Sights const& sights, std::size_t junction) {
  if (junction < sights.drawings.size()) {
    auto const& shape = sights.drawings[junction].shape;
    if (!shape.is_sound) return std::nullopt;
    return model::Place{shape.width, shape.depth, shape.height()};
  }
  auto const& plant = sights.plants[junction - sights.drawings.size()];
  if (!plant.is_sound) return std::nullopt;
  return model::Place{plant.width, plant.depth, plant.height};
}

// The junctions of a file, then its works.
std::vector<std::size_t> drawn_in(Names const& names, std::size_t file) {
  auto const& own = names.files[file];
  std::vector<std::size_t> found(own.junctions.begin(), own.junctions.end());
  for (auto const works : own.works) found.push_back(names.junctions.all.size() + works);
  return found;
}

std::optional<std::size_t> find_named(Names const& names, std::string const& name) {
  if (auto const id = names.junctions.find(name)) return *id;
  if (auto const id = names.works.find(name)) return names.junctions.all.size() + *id;
  return std::nullopt;
}

using Ends = std::map<std::string, std::size_t, std::less<>>;

// Where a port of that name is joined.
std::optional<source::Span> join_of(Plant const& plant, NameKind kind, std::string const& name) {
  bool const is_outlet = kind == NameKind::outlet;
  auto const& names = is_outlet ? plant.outlet_names : plant.inlet_names;
  auto const port = names.find(name);
  if (port == names.end()) return std::nullopt;
  for (auto const& join : plant.joins) {
    if ((is_outlet ? join.outlet : join.inlet) == port->second) return join.span;
  }
  return std::nullopt;
}

// Of a plant with a fault nothing is said.
std::optional<std::uint32_t> find_end(Reading const& reading, NameKind kind, Plant const& plant,
                                      Ends const& ends, Word const& word) {
  if (!plant.is_sound) return std::nullopt;
  if (auto const found = ends.find(word.text); found != ends.end())
    return static_cast<std::uint32_t>(found->second);
  reading.unknown.add_end(kind, word, plant.declaration->name.text, ends,
                          join_of(plant, kind, word.text));
  return std::nullopt;
}

// Where inlets stand, and where outlets do.
struct Shelf {
  NameKind kind;
  std::vector<PortName const*> Ports::*drawn;
  PortNames FileNames::*declared;
  Ends Plant::*ends;
};

std::optional<std::uint32_t> find_end(Reading const& reading, Sights const& sights,
                                      std::size_t junction, Word const& word, Shelf const& shelf) {
  if (auto const junctions = sights.drawings.size(); junction >= junctions) {
    auto const& plant = sights.plants[junction - junctions];
    return find_end(reading, shelf.kind, plant, plant.*shelf.ends, word);
  }
  auto const& drawing = sights.drawings[junction];
  auto const& declared = reading.names.files[drawing.file].*shelf.declared;
  return find_port(reading, shelf.kind, declared.find(word.text),
                   sights.ports[junction].*shelf.drawn, drawing, word);
}

}  // namespace

Word const& name_of(Names const& names, std::size_t junction) {
  auto const junctions = names.junctions.all.size();
  return junction < junctions ? names.junctions.all[junction]->name
                              : names.works.all[junction - junctions]->name;
}

std::optional<std::size_t> find_junction(Reading const& reading, Sights const& sights,
                                         std::optional<Word> const& named, Word const* inlet,
                                         source::Span whose) {
  auto const file = reading.source.file_of(whose.begin);
  auto const own = drawn_in(reading.names, file);
  if (own.empty()) {
    report_none_drawn(reading, whose);
    return std::nullopt;
  }
  if (named) {
    auto const found = find_named(reading.names, named->text);
    if (reading.names.files[file].taken.count(named->text) != 0) return std::nullopt;
    if (!found)
      reading.unknown.add(NameKind::junction, *named);
    else if (reading.file_of(name_of(reading.names, *found)) == file)
      return *found;
    else
      report_elsewhere(reading, *named, *found);
    return std::nullopt;
  }
  if (own.size() == 1) return own.front();
  if (!inlet) {
    report_which(reading, whose, {own[0], own[1]});
    return std::nullopt;
  }
  auto const at = sights.junctions_of_inlet.find(inlet->text);
  if (at == sights.junctions_of_inlet.end()) {
    auto const& names = reading.names.files[file];
    bool const are_laid_out =
        std::all_of(names.works.begin(), names.works.end(),
                    [&](std::size_t works) { return sights.plants[works].is_sound; });
    if (are_laid_out && !names.inlets.find(inlet->text))
      reading.unknown.add(NameKind::inlet, *inlet);
    return std::nullopt;
  }
  auto const& able = at->second;
  if (able.size() == 1) return able.front();
  report_which(reading, whose, able);
  return std::nullopt;
}

std::optional<std::uint32_t> find_inlet(Reading const& reading, Sights const& sights,
                                        std::size_t junction, Word const& word) {
  return find_end(reading, sights, junction, word,
                  {NameKind::inlet, &Ports::inlets, &FileNames::inlets, &Plant::end_inlets});
}

std::optional<std::uint32_t> find_outlet(Reading const& reading, Sights const& sights,
                                         std::size_t junction, Word const& word) {
  return find_end(reading, sights, junction, word,
                  {NameKind::outlet, &Ports::outlets, &FileNames::outlets, &Plant::end_outlets});
}

bool has_signal(Reading const& reading, Sights const& sights, std::size_t junction,
                std::string const& name) {
  if (reading.names.signals.find(name)) return true;
  auto const junctions = sights.drawings.size();
  return junction >= junctions && sights.scopes[junction - junctions].named(reading.names, name);
}

std::optional<std::uint32_t> find_profile(Reading const& reading, Word const& word) {
  if (auto const id = reading.names.profile(word.text)) return id;
  reading.unknown.add(NameKind::body, word);
  return std::nullopt;
}

std::optional<model::FindingKind> find_finding(Reading const& reading, Word const& word) {
  for (auto const& row : model::finding_table) {
    if (row.name == word.text) return row.kind;
  }
  reading.unknown.add(NameKind::finding, word);
  return std::nullopt;
}

std::optional<model::Place> find_place(Reading const& reading, Sights const& sights,
                                       std::size_t junction, syntax::PlaceReference const& at) {
  auto const extent = extent_of(sights, junction);
  if (!extent) return std::nullopt;
  if (is_within(at.x, extent->x) && is_within(at.y, extent->y) && is_within(at.z, extent->z))
    return model::Place{static_cast<int>(at.x.value), static_cast<int>(at.y.value),
                        static_cast<int>(at.z.value)};
  auto const& name = name_of(reading.names, junction);
  reading.sink.report(
      {Listed("place-outside"),
       fmt::format("The place lies outside {} '{}'",
                   junction < sights.drawings.size() ? "junction" : "works", name.text),
       {at.span, "column, row and level of a cell, each counted from 0", {}},
       {{name.span,
         fmt::format("'{}' has columns 0..{}, rows 0..{} and levels 0..{}", name.text,
                     extent->x - 1, extent->y - 1, extent->z - 1),
         {}}},
       "Name a cell of the drawing."});
  return std::nullopt;
}

std::string one_line(std::string_view text) {
  std::string line;
  bool is_comment = false, is_blank = false;
  for (char const letter : text) {
    if (letter == '#') is_comment = true;
    if (letter == '\n') is_comment = false;
    if (is_comment || letter == ' ' || letter == '\t' || letter == '\n' || letter == '\r') {
      is_blank = true;
      continue;
    }
    if (is_blank && !line.empty()) line += ' ';
    is_blank = false;
    line += letter;
  }
  return line;
}

}  // namespace leat::check
