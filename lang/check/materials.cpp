#include "lang/check/materials.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include "engine/contract.hpp"
#include "lang/diagnostics/catalogue.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
struct TraitRow {
  char const* name;
  bool model::Material::*trait;
};

constexpr std::array<TraitRow, 6> traits{{
    {"passes water", &model::Material::water_enters},
    {"passes bodies", &model::Material::body_enters},
    {"carries", &model::Material::carries},
    {"bears sources", &model::Material::bears_sources},
    {"shows slope", &model::Material::shows_slope},
    {"is source", &model::Material::is_source},
}};

syntax::Word const* word_for(syntax::MaterialDeclaration const& material, std::string_view trait) {
  auto const at = std::find_if(material.traits.begin(), material.traits.end(),
                               [&](auto const& word) { return word.text == trait; });
  return at == material.traits.end() ? nullptr : &*at;
}

void report_repeated(Reading const& reading, syntax::MaterialDeclaration const& material,
                     syntax::Word const& word) {
  reading.sink.report(
      {Listed("repeated-trait"),
       fmt::format("The material '{}' has the trait '{}' twice", material.name.text, word.text),
       {word.span, fmt::format("'{}' again", word.text), {}},
       {{word_for(material, word.text)->span, "first given here", {}}},
       "Remove one of them."});
}

// A placed source is water: water must be able to be where it is.
void report_dry_source(Reading const& reading, syntax::MaterialDeclaration const& material) {
  reading.sink.report(
      {Listed("contradictory-traits"),
       fmt::format("The material '{}' is a source that water may not enter", material.name.text),
       {word_for(material, "is source")->span, "a source holds water", {}},
       {{material.name.span, "and this material does not pass water", {}}},
       "Add 'passes water', or take 'is source' away."});
}

model::Material read_material(Reading const& reading, syntax::MaterialDeclaration const& declared) {
  model::Material material;
  for (auto const& word : declared.traits) {
    auto const row = std::find_if(traits.begin(), traits.end(),
                                  [&](auto const& trait) { return word.text == trait.name; });
    require(row != traits.end(), "read_materials: a trait that the grammar does not know");
    if (material.*(row->trait)) {
      report_repeated(reading, declared, word);
    } else {
      material.*(row->trait) = true;
    }
  }
  if (material.is_source && !material.water_enters) report_dry_source(reading, declared);
  return material;
}

}  // namespace

std::vector<model::Material> read_materials(Reading const& reading) {
  std::vector<model::Material> materials(model::built_in_materials.begin(),
                                         model::built_in_materials.end());
  for (auto const* declared : reading.names.materials.all)
    materials.push_back(read_material(reading, *declared));
  return materials;
}

}  // namespace leat::check
