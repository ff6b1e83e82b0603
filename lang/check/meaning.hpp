#pragma once
#include <memory>
#include <vector>

#include "engine/model/material.hpp"
#include "engine/model/practice.hpp"
#include "engine/model/profile.hpp"
#include "lang/check/drawing.hpp"
#include "lang/check/expectations.hpp"
#include "lang/check/marks.hpp"
#include "lang/check/names.hpp"
#include "lang/check/plant.hpp"
#include "lang/check/ports.hpp"
#include "lang/check/signals.hpp"

namespace leat::check {

// What a file means, every name resolved.
struct Meaning {
  std::shared_ptr<syntax::Document const> document;  // unfolded: what all the rest points into
  Names names;
  Signals signals;
  std::vector<model::Material> materials;  // by MaterialId
  std::vector<MarkFill> fills;             // by mark
  std::vector<model::Profile> profiles;    // by ProfileId
  model::Practice practice;
  std::vector<Drawing> drawings;  // by junction
  std::vector<Ports> ports;       // by junction
  std::vector<Plant> plants;      // by works
  std::vector<Scopes> scopes;     // by works: what its places have to themselves
  std::vector<Wanted> wanted;     // expectations, then tables
  std::vector<Accepted> accepted;
};

// Asks every question of the room, each once. The meaning is complete only if nothing was reported,
// by this or by the grammar before it.
Meaning understand(syntax::Document, source::SourceText const&, diagnostics::Sink&);

}  // namespace leat::check
