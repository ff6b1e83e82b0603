#include "engine/logic/diagram_cover.hpp"

#include <algorithm>
#include <unordered_map>

#include "engine/contract.hpp"

namespace leat::logic {

namespace {

using Function = Diagram::Function;

constexpr std::size_t most_nodes = std::size_t{1} << 18;
// A step down takes up to 360 bytes of stack, two and a half times those of an operation.
constexpr std::uint32_t deepest = Diagram::most_depth / 3;

// Works in a diagram of its own: what is made on the way is small, and gone afterwards.
class Covering {
 public:
  Covering(Diagram const& from, std::size_t most_products, std::size_t most_literals)
      : from_(from),
        diagram_(most_nodes, deepest),
        most_products_(most_products),
        literals_left_(most_literals) {}

  Function copied(Function f) {
    auto const level = from_.level(f);
    if (level == Diagram::below_all) return f;
    auto const flip = f.edge & 1u;
    auto const known = copies_.find(f.edge ^ flip);
    if (known != copies_.end()) return {known->second.edge ^ flip};
    auto const [off, on] = from_.branches({f.edge ^ flip}, level);
    auto const own_off = copied(off), own_on = copied(on);
    auto const copy = diagram_.node(level, own_off, own_on);
    copies_.emplace(f.edge ^ flip, copy);
    return {copy.edge ^ flip};
  }
  bool is_within(Function needed, Function allowed) {
    return diagram_.both(needed, !allowed) == Diagram::never;
  }

  bool has_given_up() const { return has_given_up_ || diagram_.has_run_out(); }
  std::vector<Product> take() { return std::move(products_); }

  // Appends the products, each with the literals taken so far; the function of their own part.
  Function cover(Function needed, Function allowed) {
    if (needed == Diagram::never || has_given_up()) return Diagram::never;
    if (allowed == Diagram::always) return keep();
    if (!diagram_.can_follow(needed, allowed)) return Diagram::never;
    auto const at = std::min(diagram_.level(needed), diagram_.level(allowed));
    auto const [need_off, need_on] = diagram_.branches(needed, at);
    auto const [may_off, may_on] = diagram_.branches(allowed, at);
    auto const off = cover_under({at, false}, diagram_.both(need_off, !may_on), may_off);
    auto const on = cover_under({at, true}, diagram_.both(need_on, !may_off), may_on);
    auto const rest = diagram_.either(diagram_.both(need_off, !off), diagram_.both(need_on, !on));
    auto const both = cover(rest, diagram_.both(may_off, may_on));
    return diagram_.node(at, diagram_.either(off, both), diagram_.either(on, both));
  }

 private:
  Function cover_under(Literal literal, Function needed, Function allowed) {
    taken_.push_back(literal);
    auto const result = cover(needed, allowed);
    taken_.pop_back();
    return result;
  }

  Function keep() {
    has_given_up_ = products_.size() == most_products_ || taken_.size() > literals_left_;
    if (has_given_up_) return Diagram::never;
    literals_left_ -= taken_.size();
    products_.push_back(taken_);
    return Diagram::always;
  }

  Diagram const& from_;
  Diagram diagram_;
  std::unordered_map<std::uint32_t, Function> copies_;
  std::size_t most_products_, literals_left_;
  bool has_given_up_ = false;
  Product taken_;
  std::vector<Product> products_;
};

std::size_t literals(std::vector<Product> const& products) {
  std::size_t count = 0;
  for (auto const& product : products) count += product.size();
  return count;
}

// The literals of a function that is a single product.
std::optional<Product> as_product(Diagram const& diagram, Function f) {
  Product product;
  while (diagram.level(f) != Diagram::below_all) {
    auto const level = diagram.level(f);
    auto const [off, on] = diagram.branches(f, level);
    if (off != Diagram::never && on != Diagram::never) return std::nullopt;
    product.push_back({level, off == Diagram::never});
    f = off == Diagram::never ? on : off;
  }
  if (f == Diagram::never) return std::nullopt;
  return product;
}

// A product, or all but a product: most conditions of a plant are one or the other.
std::optional<std::vector<Product>> plain_cover(Diagram const& diagram, Function f) {
  if (auto product = as_product(diagram, f)) return std::vector<Product>{std::move(*product)};
  auto const left_out = as_product(diagram, !f);
  if (!left_out) return std::nullopt;
  std::vector<Product> products;
  for (auto const& literal : *left_out) products.push_back({{literal.level, !literal.is_on}});
  return products;
}

}  // namespace

std::optional<std::vector<Product>> irredundant_cover(Diagram const& diagram, Function needed,
                                                      Function allowed, std::size_t most_products,
                                                      std::size_t most_literals) {
  if (needed == allowed) {
    auto plain = plain_cover(diagram, needed);
    if (plain && plain->size() <= most_products && literals(*plain) <= most_literals) return plain;
  }
  Covering covering(diagram, most_products, most_literals);
  auto const own_needed = covering.copied(needed), own_allowed = covering.copied(allowed);
  bool const is_within = covering.is_within(own_needed, own_allowed);
  if (covering.has_given_up()) return std::nullopt;
  require(is_within, "irredundant_cover: what is needed must be allowed");
  covering.cover(own_needed, own_allowed);
  if (covering.has_given_up()) return std::nullopt;
  auto products = covering.take();
  std::stable_sort(products.begin(), products.end(),
                   [](Product const& a, Product const& b) { return a.size() < b.size(); });
  return products;
}

Function function_of(Diagram& diagram, std::vector<Product> const& products) {
  auto sum = Diagram::never;
  for (auto const& product : products) {
    auto conjunction = Diagram::always;
    for (auto literal = product.rbegin(); literal != product.rend(); ++literal) {
      auto const [off, on] = literal->is_on ? std::pair(Diagram::never, conjunction)
                                            : std::pair(conjunction, Diagram::never);
      conjunction = diagram.node(literal->level, off, on);
    }
    sum = diagram.either(sum, conjunction);
  }
  return sum;
}

}  // namespace leat::logic
