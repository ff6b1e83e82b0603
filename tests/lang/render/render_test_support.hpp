#pragma once
#include <memory>
#include <string>

#include "engine/judge.hpp"
#include "lang/render/subject.hpp"
#include "tests/support/draw.hpp"

// A drawn junction with words for all its ids, so that renderers are tested without the parser.
namespace leat::rendered {

struct Worded {
  model::Design design;
  source::SourceMap map;
  source::SourceText text;
  render::Subject subject() const { return {design, map, text}; }
};

// Signals divert and flush, inlets millhouse and mill_b, outlets kiln, press, dairy. Each mark is
// the fill's number as a letter.
inline std::unique_ptr<Worded> worded(model::Design design) {
  source::SourceMap map;
  map.junction.name = "yard";
  for (auto const* name : {"divert", "flush"}) map.signals.push_back({name, {}});
  for (auto const* name : {"millhouse", "mill_b"}) map.inlets.push_back({name, {}});
  for (auto const* name : {"kiln", "press", "dairy"}) map.outlets.push_back({name, {}});
  for (auto const* name : {"rock", "open", "water", "sign", "plate", "grate"}) {
    map.materials.push_back({name, {}});
  }
  map.profiles.push_back({"walker", {}});
  for (std::size_t f = 0; f < design.fills.size(); ++f) {
    map.fills.push_back({std::string(1, static_cast<char>('a' + f)), {}});
  }
  return std::make_unique<Worded>(
      Worded{std::move(design), std::move(map), source::SourceText("yard.leat", "leat 1\n")});
}

}  // namespace leat::rendered
