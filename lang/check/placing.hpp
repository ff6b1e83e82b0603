#pragma once
#include <map>
#include <memory>
#include <set>
#include <utility>
#include <vector>

#include "lang/check/plant.hpp"
#include "lang/check/reading.hpp"
#include "lang/check/unfold.hpp"

namespace leat::check {

// Everything that works of the file need to be laid out, and the drawings they share.
class Workshop {
 public:
  // `folded`: the document as written, with its loops; `drawings` and `ports`: by junction, as they
  // stand in the file. All must outlive it.
  Workshop(Reading const&, syntax::Document const& folded, Unfolder&, Numbers const& file_numbers,
           std::vector<Drawing> const& drawings, std::vector<Ports> const& ports,
           int ticks_a_second);

  Reading const& reading() const { return reading_; }
  int ticks_a_second() const { return ticks_a_second_; }
  // A junction with the numbers of a place; where it cannot be drawn with these, that is told of
  // the place.
  std::shared_ptr<DrawnJunction const> drawn(std::size_t junction, syntax::PlaceDeclaration const&);
  // The same for a works.
  std::shared_ptr<syntax::WorksDeclaration const> unfolded(std::size_t works, Settings const&);
  // Works that place more than can be laid out: who places them is not laid out either, and nothing
  // more is said.
  std::set<std::size_t> too_many;
  // Works that contain each other and of which that is told.
  std::set<std::set<std::size_t>> nests;
  // The numbers that `where` may set.
  std::vector<syntax::Word> const& settable(std::size_t design) const { return settable_[design]; }

 private:
  void draw_for(syntax::PlaceDeclaration const&, Settings const&, DrawnJunction&);
  void read_cells(DrawnJunction&) const;
  void read_signals(DrawnJunction&) const;

  Reading const& reading_;
  Unfolder& unfolder_;
  Numbers const& numbers_;
  std::vector<Drawing> const& drawings_;
  std::vector<Ports> const& ports_;
  int ticks_a_second_;
  std::vector<syntax::JunctionDeclaration const*> junctions_;  // as written, by place in Names
  std::vector<syntax::WorksDeclaration const*> works_;
  std::vector<std::vector<syntax::Word>> settable_;  // junctions, then works
  std::map<std::pair<std::size_t, Settings>, std::shared_ptr<DrawnJunction>> drawn_;
  std::map<std::pair<std::size_t, Settings>, std::shared_ptr<syntax::WorksDeclaration const>>
      unfolded_;
};

// Reports what a place gives twice, numbers that its design does not have (`known` are those it
// has), and signals that are not there.
bool check_settings(Reading const&, syntax::PlaceDeclaration const&,
                    std::vector<syntax::Word> const& known);

// Lays a works out. Reports places of what there is not, of what contains itself, or of the same
// name; numbers and signals given that are not there or not used; joins and ports that name nothing
// or something twice; extents out of bounds.
Plant lay_out(Workshop&, std::size_t works, Scopes&);

}  // namespace leat::check
