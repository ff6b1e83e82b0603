#pragma once
#include <cstdint>
#include <vector>

#include "engine/logic/small_rows.hpp"

namespace leat::logic {

// What can be taken to hold rows, and its price.
struct Offer {
  SmallRows rows;
  std::uint32_t price = 0;
};

struct Choice {
  std::vector<std::uint32_t> taken;  // indices of offers, ascending; none can be left out
  bool is_least = false;
};

// Offers that hold every needed row together: as few as possible, among these the cheapest.
//
// Idea: the covering problem of two-level logic (E. J. McCluskey, "Minimization of Boolean
// functions", 1956). Again and again: an offer that alone holds a row is taken; a row that is held
// whenever another one is can be forgotten; an offer whose open rows another one holds that is not
// dearer is struck out. What remains is a cyclic core: branch over the offers that hold its most
// exclusive row, each struck out once its branch is done. A branch is cut where what it has taken
// and a lower bound on the rest are no better than the best found. The bound is a solution of the
// dual linear programme, for the number and the price separately. Among equals the first found
// stays; the search depends on nothing but the order of the offers. Cost: exponential at worst,
// so `most_work` bounds the looks at offers; past it the best choice so far is told as not least.
// Contract: the offers together hold what is needed.
Choice least_choice(std::vector<Offer> const&, SmallRows const& needed, std::size_t most_work);

}  // namespace leat::logic
