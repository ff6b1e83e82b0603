#include "lang/check/meaning.hpp"

#include <fmt/format.h>

#include "lang/check/bodies_and_practice.hpp"
#include "lang/check/materials.hpp"
#include "lang/check/plates.hpp"
#include "lang/diagnostics/catalogue.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;

void check_junctions(Reading const& reading) {
  if (!reading.names.junctions.all.empty() || !reading.is_whole) return;
  reading.sink.report(
      {Listed("no-junction"),
       "The file draws no junction",
       {reading.document.edition.span, "there is nothing to judge in this file", {}},
       {},
       "Draw one: 'junction NAME { level 0 { |...| } }'."});
}

}  // namespace

Meaning understand(syntax::Document const& document, source::SourceText const& source,
                   diagnostics::Sink& sink) {
  bool const is_whole = sink.empty();
  Meaning meaning;
  meaning.names = collect_names(document, sink);
  UnknownNames unknown(meaning.names);
  Reading const reading{document, source, meaning.names, unknown, sink, is_whole};

  check_junctions(reading);
  meaning.practice = read_practice(reading);
  meaning.signals = read_signals(reading, meaning.practice);
  meaning.materials = read_materials(reading);
  meaning.fills = read_fills(reading, meaning.signals);
  meaning.profiles = read_profiles(reading, meaning.practice);
  for (auto const* junction : meaning.names.junctions.all) {
    meaning.drawings.push_back(read_drawing(reading, *junction));
    meaning.ports.push_back(read_ports(reading, meaning.drawings.back()));
  }
  check_marks(reading, meaning.drawings);
  check_port_materials(reading, meaning.fills, meaning.materials);
  check_plates(reading, meaning.drawings, meaning.fills, meaning.materials);
  Sights sights{meaning.drawings, meaning.ports, {}};
  for (std::size_t junction = 0; junction < meaning.ports.size(); ++junction) {
    for (auto const* inlet : meaning.ports[junction].inlets)
      sights.junctions_of_inlet[inlet->name.text].push_back(junction);
  }
  meaning.wanted = read_expectations(reading, sights, meaning.practice);
  auto tables = read_tables(reading, sights);
  meaning.wanted.insert(meaning.wanted.end(), std::make_move_iterator(tables.begin()),
                        std::make_move_iterator(tables.end()));
  meaning.accepted = read_acceptances(reading, sights);
  unknown.report(sink, is_whole);
  return meaning;
}

}  // namespace leat::check
