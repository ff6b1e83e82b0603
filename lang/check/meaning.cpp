#include "lang/check/meaning.hpp"

#include <fmt/format.h>

#include "lang/check/bodies_and_practice.hpp"
#include "lang/check/materials.hpp"
#include "lang/check/placing.hpp"
#include "lang/check/plant_ports.hpp"
#include "lang/check/plates.hpp"
#include "lang/diagnostics/catalogue.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;

// What a file includes is judged with that file, so there has to be something of its own.
void check_junctions(Reading const& reading) {
  if (!reading.names.judged().draws_nothing() || !reading.is_whole) return;
  bool const includes = reading.source.file_count() > 1;
  reading.sink.report(
      {Listed("no-junction"),
       "The file draws no junction",
       {reading.document.edition.span,
        includes ? "what this file includes is judged with the files it stands in"
                 : "there is nothing to judge in this file",
        {}},
       {},
       includes ? "Draw one, build a 'works' of what is included, or check the included files."
                : "Draw one: 'junction NAME { level 0 { |...| } }'."});
}

// Works are laid out once what they place is known. Those that are only included are laid out where
// they are placed.
void lay_out_works(Reading const& reading, syntax::Document const& folded, Unfolder& unfolder,
                   Numbers const& numbers, Meaning& meaning) {
  Workshop workshop(reading, folded, unfolder, numbers, meaning.drawings, meaning.ports,
                    meaning.practice[model::Rule::ticks_per_second]);
  for (std::size_t works = 0; works < meaning.names.works.all.size(); ++works) {
    auto& scopes = meaning.scopes.emplace_back(meaning.names);
    auto& plant = meaning.plants.emplace_back();
    if (reading.file_of(meaning.names.works.all[works]->name) != 0) continue;
    plant = lay_out(workshop, works, scopes);
    plant.is_sound = plant.is_sound && check_overlaps(reading, meaning.fills, scopes, plant) &&
                     settle_ports(reading, plant);
  }
}

}  // namespace

Meaning understand(syntax::Document folded, source::SourceText const& source,
                   diagnostics::Sink& sink) {
  Meaning meaning;
  Unfolder unfolder(sink);
  auto const numbers = unfolder.file_numbers(folded);
  meaning.document = std::make_shared<syntax::Document>(unfolder.unfold(std::move(folded)));
  bool const is_whole = sink.empty();
  auto const& document = *meaning.document;
  meaning.names = collect_names(document, source, sink);
  UnknownNames unknown(meaning.names, document);
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
  lay_out_works(reading, folded, unfolder, numbers, meaning);
  Sights sights{meaning.drawings, meaning.ports, meaning.plants, meaning.scopes, {}};
  for (auto const junction : meaning.names.judged().junctions) {
    for (auto const* inlet : meaning.ports[junction].inlets)
      sights.junctions_of_inlet[inlet->name.text].push_back(junction);
  }
  for (auto const works : meaning.names.judged().works) {
    for (auto const& [name, id] : meaning.plants[works].end_inlets)
      sights.junctions_of_inlet[name].push_back(meaning.ports.size() + works);
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
