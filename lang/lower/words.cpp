#include "lang/lower/words.hpp"

namespace leat::lower {

namespace {

source::Named named(syntax::Word const& word) { return {word.text, word.span}; }

std::vector<source::Named> named(std::vector<check::PortName const*> const& ports) {
  std::vector<source::Named> found;
  for (auto const* port : ports) found.push_back(named(port->name));
  return found;
}

void lower_shared(check::Names const& names, source::SourceMap& map) {
  for (auto const* signal : names.signals.all) map.signals.push_back(named(signal->name));
  for (auto const& name : check::built_in_material_names()) map.materials.push_back({name, {}});
  for (auto const* material : names.materials.all) map.materials.push_back(named(material->name));
  for (auto const& profile : names.profiles)
    map.profiles.push_back(
        {profile.name, profile.declaration ? profile.declaration->name.span : source::Span{}});
}

}  // namespace

void lower_words(check::Meaning const& meaning, std::size_t junction, source::SourceMap& map) {
  auto const& names = meaning.names;
  auto const& declaration = *names.junctions.all[junction];
  map.junction = named(declaration.name);
  if (declaration.title) map.title = declaration.title->text;
  lower_shared(names, map);
  map.inlets = named(meaning.ports[junction].inlets);
  map.outlets = named(meaning.ports[junction].outlets);
  for (auto const* mark : names.marks) map.fills.push_back(named(mark->glyph));
  map.fills.push_back({});
}

void lower_works_words(check::Meaning const& meaning, std::size_t works,
                       CircuitLowering const& circuit, source::SourceMap& map) {
  auto const& declaration = *meaning.plants[works].declaration;
  map.junction = named(declaration.name);
  if (declaration.title) map.title = declaration.title->text;
  lower_shared(meaning.names, map);
  for (auto const& own : circuit.own_signals()) {
    auto const& name = meaning.names.signals.all[own.signal]->name;
    map.signals.push_back({meaning.scopes[works].name(own.scope) + "." + name.text, name.span});
  }
}

}  // namespace leat::lower
