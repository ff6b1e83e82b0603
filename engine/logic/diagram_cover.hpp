#pragma once
#include <optional>
#include <vector>

#include "engine/logic/diagram.hpp"

namespace leat::logic {

// A variable as it stands in a product.
struct Literal {
  Diagram::Level level = 0;
  bool is_on = false;
  bool operator==(Literal const&) const = default;
};

// A conjunction over any number of variables: its literals by ascending level; none: always true.
using Product = std::vector<Literal>;

// An irredundant sum of prime products that is true wherever `needed` is, false wherever `allowed`
// is not, and free between; none where it would have more than `most_products` or `most_literals`,
// or where finding it takes more than 2^18 nodes or follows more than 8192 variables down. Products
// with fewer literals come first, as in irredundant_cover for rows.
//
// Idea: Minato's recursion where it was first stated, on diagrams (Shin-ichi Minato, "Fast
// generation of irredundant sum-of-products forms from binary decision diagrams", 1992): split on
// the first variable; what only one half can cover takes that literal; the rest is covered without
// it. Every call that has something to cover ends in a product, so the calls are at most products
// times levels, each with a few operations on diagrams. Limit: irredundant, not always the fewest.
// Contract: needed implies allowed.
std::optional<std::vector<Product>> irredundant_cover(Diagram const&, Diagram::Function needed,
                                                      Diagram::Function allowed,
                                                      std::size_t most_products,
                                                      std::size_t most_literals = ~std::size_t{0});

// The function of a sum of products.
Diagram::Function function_of(Diagram&, std::vector<Product> const&);

}  // namespace leat::logic
