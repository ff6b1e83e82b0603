#pragma once
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "lang/check/drawing.hpp"
#include "lang/check/ports.hpp"
#include "lang/check/scopes.hpp"
#include "lang/source/posture.hpp"

namespace leat::check {

// A junction as it is drawn where its numbers have certain values: once for all places with these.
struct DrawnJunction {
  std::size_t junction = 0;  // its place in Names::junctions
  syntax::JunctionDeclaration unfolded;
  Drawing drawing;
  Ports ports;
  std::vector<std::uint32_t> marks;  // by cell: west to east, north to south, upward
  std::vector<std::vector<model::Place>> inlets, outlets;  // the cells of each port
  std::set<model::SignalId> plates, followed;  // its plates; the signals its marks depend on
};

// A junction that stands somewhere in a works.
struct Placed {
  std::string name;  // "north.first"
  source::Span span;
  std::size_t drawn = 0;  // in Plant::drawn
  Scopes::Id scope = Scopes::file;
  source::Standing standing;  // where, and how turned
};

// A port of something placed: "first.kiln", or the name that the works gives it.
struct PlantPort {
  std::size_t placed = 0, port = 0;  // in Plant::placed; in the ports of its junction
  syntax::Word name;
  bool is_joined = false;
};

struct Channel {
  std::size_t outlet = 0, inlet = 0;  // in Plant::outlets and Plant::inlets
  std::optional<int> ticks;
  source::Span span;
};

// A works with everything in it laid out.
struct Plant {
  syntax::WorksDeclaration const* declaration = nullptr;
  bool is_sound = false;
  int width = 0, depth = 0, height = 0;
  // What expressions point into.
  std::vector<std::shared_ptr<syntax::WorksDeclaration const>> unfolded;
  std::vector<std::shared_ptr<DrawnJunction const>> drawn;
  std::vector<Placed> placed;
  std::vector<PlantPort> inlets, outlets;
  std::vector<Channel> joins;
  using ByAnyName = std::map<std::string, std::size_t, std::less<>>;
  ByAnyName inlet_names, outlet_names;  // every name that a port can be called by
  ByAnyName end_inlets, end_outlets;    // of these, where bodies come in and arrive
};

}  // namespace leat::check
