#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/body/moves.hpp"
#include "engine/model/finding_kind.hpp"
#include "engine/water/survey.hpp"
#include "lang/render/subject.hpp"

// What is drawn, as values: everything has been computed before.
namespace leat::render {

// How a drawn way of a body ends.
enum class WayEnd { delivered, spilled, rests, circles };

// One way of a body: the feet cells in the order in which it is at them.
struct Way {
  struct Stop {
    model::Place at;
    bool is_sure = true;  // the move that leads here
  };
  std::vector<Stop> stops;
  WayEnd end = WayEnd::rests;
};

// The ways from one inlet, all with the same line.
struct InletWays {
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  std::vector<Way> ways;
};

// A finding: its number in the picture stands at its cells.
struct Pin {
  int number = 0;
  model::Severity severity = model::Severity::note;
  std::vector<model::Cell> cells;  // ascending; may be empty
  std::string headline;
};

struct PictureScene {
  Subject subject;
  model::Arrangement const* arrangement = nullptr;  // never none
  std::vector<water::WetCell> wet;                  // ascending
  std::string setting;                              // "divert=on"
  std::vector<InletWays> ways;
  std::vector<Pin> pins;
};

// A flat piece of a drawing: a level seen from above, or a section seen from the side.
struct Cut {
  enum class Kind { level, row, column };
  Kind kind = Kind::level;
  int at = 0;
  bool operator==(Cut const&) const = default;
};

// How a cut lies in the drawing: `across` counts to the right and `down` downwards, from 0. Of a
// row one looks from the south to the north, of a column from the west to the east.
class Plane {
 public:
  Plane(model::Grid const&, Cut);

  int width() const { return width_; }
  int height() const { return height_; }
  model::Place place(int across, int down) const;
  struct Spot {
    int across = 0, down = 0;
    bool operator==(Spot const&) const = default;
  };
  // None where the place is not in this cut.
  std::optional<Spot> spot(model::Place) const;
  // The numbers that the rulers show.
  int across_number(int across) const { return across; }
  int down_number(int down) const;
  bool is_level() const { return cut_.kind == Cut::Kind::level; }
  Cut cut() const { return cut_; }
  // What a current looks like in it: to the right, downwards, and towards the reader.
  struct Drift {
    int right = 0, down = 0, nearer = 0;
  };
  Drift drift(water::Current) const;

 private:
  Cut cut_;
  int top_ = 0, width_ = 0, height_ = 0;
};

// "level 2", "row 3, seen from the south".
std::string cut_words(Cut);

}  // namespace leat::render
