#pragma once
#include <array>
#include <memory>
#include <span>
#include <vector>

#include "engine/water/current.hpp"
#include "engine/water/settle.hpp"
#include "engine/water/word.hpp"

// The water of many arrangements of one design at once: one bit a lane, up to 64 lanes.
namespace leat::water {

// One change of the arrangement, and the water it finds.
struct Switching {
  model::Arrangement const* before = nullptr;
  Field const* field = nullptr;
  model::Arrangement const* after = nullptr;
  bool was_settled = true;  // whether the field rested under `before`
};

// Up to 64 waters of one design side by side, step by step to rest (see Flow): a cell is looked at
// when any lane has changed near it, so the cost follows the changes of all lanes united, and
// hardly their number. The arrangements must outlive it.
class Lanes {
 public:
  static constexpr std::size_t most = word_bits;

  // From dry. Contract: 1 to 64 arrangements, all of one design.
  explicit Lanes(std::span<model::Arrangement const> arrangements);
  explicit Lanes(std::span<Switching const>);
  ~Lanes();
  Lanes(Lanes&&) noexcept;
  Lanes& operator=(Lanes&&) noexcept;

  // Until every lane rests, or was stepped as often as a fresh one could need.
  void settle();

  std::size_t size() const { return arrangements_.size(); }
  model::Arrangement const& arrangement(std::size_t lane) const { return *arrangements_[lane]; }
  int steps(std::size_t lane) const { return steps_[lane]; }
  bool is_settled(std::size_t lane) const { return (restless_ >> lane & 1) == 0; }

  // The water of a cell, one bit a lane. Whether its strength is at least `least`, from 1 on.
  Word is_wet(Cell c) const { return is_strong(c, 1); }
  Word is_strong(Cell, int least) const;
  Word is_source(Cell) const;
  State state(Cell, std::size_t lane) const;
  Current current(Cell, std::size_t lane) const;
  // The cells that have been wet in any lane, in no order.
  std::vector<Cell> touched() const;

  // Every lane as the single ways give it. Cost: one look at every wet cell, 64 fields.
  std::vector<Settled> unpacked() const;

 private:
  class Water;
  template <int Most>
  class WaterOf;

  std::vector<model::Arrangement const*> arrangements_;
  std::array<int, most> steps_{};
  Word restless_ = 0;
  std::unique_ptr<Water> water_;
};

// The same as settle_fresh and settle_switched give for each, 64 at a time.
std::vector<Settled> settle_fresh_lanes(std::span<model::Arrangement const>);
std::vector<Settled> settle_switched_lanes(std::span<Switching const>);

// Whether lanes are quicker than one by one for so many arrangements, `typical` being the settled
// field of one of them.
bool prefers_lanes(std::size_t arrangements, Field const& typical);

// The same by lanes or one by one, whichever is quicker.
std::vector<Settled> settle_all(std::span<model::Arrangement const>);
std::vector<Settled> settle_all(std::span<Switching const>);

}  // namespace leat::water
