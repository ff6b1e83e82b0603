#pragma once
#include <string>
#include <vector>

#include "engine/building/needs.hpp"
#include "engine/building/pools.hpp"
#include "lang/render/look.hpp"
#include "lang/render/subject.hpp"

// What has to be brought to build a junction, as one value in words from which every format is
// written.
namespace leat::render {

enum class BillKind { block, source, switched, kept_open, part };

// One thing that is needed, with its number by level; parts of redstone stand on none.
struct BillLine {
  BillKind kind = BillKind::block;
  std::string what;                  // "rock", "rock when divert else open", "lever"
  std::vector<std::size_t> levels;   // needed, by level from the lowest
  std::size_t count = 0;             // needed, in total
  std::size_t spare = 0;             // drawn besides, and never touched by water or bodies
  std::vector<std::string> names{};  // parts: of their signals
};

struct BillSheet {
  Subject subject;
  building::Needs needs;
  building::Pools pools;        // with everything as built
  std::vector<BillLine> lines;  // by kind, then by material or kind of signal
  // Placed in a works: which drawings, and how often.
  std::vector<std::pair<std::string, std::size_t>> placed;

  std::size_t around() const;  // cells around the drawing that hold what is inside
};

BillSheet bill_sheet(Subject const&, model::Arrangement const& as_built);

std::string_view word_of(BillKind);

// Steps of building, from the bottom up.
struct BuildingStep {
  enum class Kind { floor, level, water, roof };
  Kind kind = Kind::level;
  int level = 0;         // of a level
  std::size_t pool = 0;  // of water: into Pools
};
std::vector<BuildingStep> building_steps(BillSheet const&);

std::string bill_text(BillSheet const&, Look);
std::string steps_text(BillSheet const&, Look);
std::string bill_csv(BillSheet const&, bool with_heading);
// leat-bill, to the letter of docs/schemas.
std::string bill_document(std::vector<BillSheet> const&);

}  // namespace leat::render
