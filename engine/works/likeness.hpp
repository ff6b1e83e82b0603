#pragma once
#include <array>
#include <functional>
#include <set>
#include <unordered_map>
#include <vector>

#include "engine/works/island_form.hpp"

// Which islands, or excerpts, are alike up to the 8 symmetries of the square.
namespace leat::works {

// What islands that are alike have in common, however they are turned.
using Extent = std::array<std::size_t, 4>;
Extent extent_of(Box const&, std::size_t cells);

// Numbers the forms of a plant as they are met: those that are alike in some posture have one.
class Likeness {
 public:
  // Symmetries are left aside where a body is two cells wide: ports name its corner.
  explicit Likeness(model::Design const& plant);
  struct Known {
    Form form;  // in the posture of the first that is like it
    std::uint32_t number = 0;
    bool is_new = false;
  };
  // `in`: gives the form in a posture. Cost: eight of these at most.
  Known known(Extent const&, std::function<Form(Posture)> const& in);

 private:
  struct KeyHash {
    std::size_t operator()(std::vector<std::uint32_t> const&) const;
  };
  std::vector<Posture> other_postures_;
  std::unordered_map<std::vector<std::uint32_t>, std::uint32_t, KeyHash> numbers_;
  std::set<Extent> extents_;
};

}  // namespace leat::works
