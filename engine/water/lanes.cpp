#include "engine/water/lanes.hpp"

#include <algorithm>
#include <bit>
#include <cstring>
#include <variant>

#include "engine/contract.hpp"
#include "engine/water/flow.hpp"
#include "engine/water/lane_layout.hpp"
#include "engine/water/unpacking.hpp"

namespace leat::water {

// The patches of the lanes, for water of at most so much strength.
template <int Most>
class Lanes::WaterOf {
 public:
  explicit WaterOf(std::vector<model::Arrangement const*> const& arrangements)
      : top_(arrangements.front()->practice()[model::Rule::source_strength]),
        flow_(LaneLayout<Most>(arrangements), arrangements.front()->practice()) {}

  void list_placed(model::Design const&);
  void pour(std::span<Switching const>);

  Word step() { return flow_.step(); }
  Word look() { return flow_.look(); }
  Word is_strong(Cell c, int least) const {
    return least <= top_ ? layout().at(c).strong[static_cast<std::size_t>(least) - 1] : 0;
  }
  Word is_source(Cell c) const { return layout().at(c).sources; }
  std::vector<Cell> const& touched() const { return layout().all_made(); }
  void write(std::vector<Settled>&) const;

 private:
  LaneLayout<Most>& layout() { return flow_.layout(); }
  LaneLayout<Most> const& layout() const { return flow_.layout(); }
  void pour_field(Field const&, Word lanes);
  void change(std::span<Switching const>);

  int top_;
  Flow<LaneLayout<Most>> flow_;
};

template <int Most>
void Lanes::WaterOf<Most>::list_placed(model::Design const& design) {
  std::vector<bool> is_placed(design.fills.size());
  for (std::size_t f = 0; f < is_placed.size(); ++f) {
    is_placed[f] = layout().words()[f].placed != 0;
  }
  for (auto c : cells_filled(design, is_placed)) flow_.list(c);
}

template <int Most>
void Lanes::WaterOf<Most>::pour_field(Field const& field, Word lanes) {
  for (std::size_t c = 0; c < field.size();) {
    std::uint64_t eight = 0;
    auto const count = std::min(sizeof eight, field.size() - c);
    std::memcpy(&eight, &field[c], count);
    for (auto const end = c + count; c < end; ++c) {
      if (eight == 0) {
        c = end;
        break;
      }
      if (!water::is_wet(field[c])) continue;
      auto const cell = static_cast<Cell>(c);
      auto& patch = layout().made(cell);
      if (auto const enter = layout().enter(cell) & lanes) put(patch, enter, field[c], top_);
    }
  }
}

// A cell that changes material in a lane starts dry there, or as a source.
template <int Most>
void Lanes::WaterOf<Most>::change(std::span<Switching const> switchings) {
  auto const& design = switchings.front().after->design();
  std::vector<Word> changed(design.fills.size());
  std::vector<bool> is_changed(changed.size());
  for (std::size_t f = 0; f < changed.size(); ++f) {
    if (!design.fills[f].is_switched()) continue;
    auto const fill = static_cast<model::FillId>(f);
    for (std::size_t lane = 0; lane < switchings.size(); ++lane) {
      auto const& [before, field, after, was_settled] = switchings[lane];
      if (before->made_of(fill) != after->made_of(fill)) changed[f] |= Word{1} << lane;
    }
    is_changed[f] = changed[f] != 0;
  }
  auto const cells = cells_filled(design, is_changed);
  for (auto c : cells) {
    auto& patch = layout().made(c);
    auto const lanes = changed[design.fill_of[c]];
    for (auto& plane : patch.strong) plane &= ~lanes;
    patch.sources &= ~lanes;
    if (auto const placed = lanes & layout().words_of(c).placed) put(patch, placed, source, top_);
  }
  auto const poured = layout().all_made();
  for (auto c : poured) flow_.find_spreading(c);
  for (auto c : cells) flow_.list_influence(c);
}

template <int Most>
void Lanes::WaterOf<Most>::pour(std::span<Switching const> switchings) {
  // Lanes side by side often come from one field, which is read once.
  for (std::size_t first = 0, end = 0; first < switchings.size(); first = end) {
    auto const* const field = switchings[first].field;
    Word lanes = 0;
    for (; end < switchings.size() && switchings[end].field == field; ++end)
      lanes |= Word{1} << end;
    pour_field(*field, lanes);
  }
  bool const all_settled = std::all_of(switchings.begin(), switchings.end(),
                                       [](Switching const& one) { return one.was_settled; });
  change(switchings);
  if (all_settled) return;
  auto const made = layout().all_made();
  for (auto c : made) {
    if (layout().at(c).wet()) flow_.list_all_beside(c);
  }
  list_placed(switchings.front().after->design());
}

template <int Most>
void Lanes::WaterOf<Most>::write(std::vector<Settled>& settled) const {
  for (auto c : layout().all_made()) {
    auto const& patch = layout().at(c);
    if (!patch.wet()) continue;
    auto const states = States(patch, 0, top_).all();
    for (std::size_t lane = 0; lane < settled.size(); ++lane) {
      settled[lane].field[c] = states[lane / 16][lane % 16];
    }
  }
}

// As many planes as the practice wants, and no more than two sizes beside the standard one.
class Lanes::Water {
 public:
  explicit Water(std::vector<model::Arrangement const*> const& arrangements)
      : water_(chosen(arrangements)) {}
  template <class Work>
  auto with(Work work) {
    return std::visit(work, water_);
  }
  template <class Work>
  auto with(Work work) const {
    return std::visit(work, water_);
  }

 private:
  using Choice = std::variant<WaterOf<8>, WaterOf<16>, WaterOf<most_strength>>;
  static Choice chosen(std::vector<model::Arrangement const*> const& arrangements) {
    auto const strength = arrangements.front()->practice()[model::Rule::source_strength];
    if (strength == 8) return WaterOf<8>(arrangements);
    if (strength <= 16) return WaterOf<16>(arrangements);
    return WaterOf<most_strength>(arrangements);
  }
  Choice water_;
};

namespace {

std::vector<model::Arrangement const*> of_one_design(
    std::vector<model::Arrangement const*> arrangements) {
  require(!arrangements.empty() && arrangements.size() <= Lanes::most, "Lanes: 1 to 64 lanes");
  auto const* design = &arrangements.front()->design();
  require(std::all_of(arrangements.begin(), arrangements.end(),
                      [&](auto const* arrangement) { return &arrangement->design() == design; }),
          "Lanes: all arrangements are of one design");
  return arrangements;
}

std::vector<model::Arrangement const*> pointers(std::span<model::Arrangement const> arrangements) {
  std::vector<model::Arrangement const*> all;
  for (auto const& arrangement : arrangements) all.push_back(&arrangement);
  return all;
}

std::vector<model::Arrangement const*> afterwards(std::span<Switching const> switchings) {
  std::vector<model::Arrangement const*> all;
  for (auto const& switching : switchings) {
    require(&switching.before->design() == &switching.after->design() &&
                switching.field->size() == switching.after->grid().size(),
            "Lanes: a field and two arrangements of one design");
    all.push_back(switching.after);
  }
  return all;
}

}  // namespace

Lanes::Lanes(std::span<model::Arrangement const> arrangements)
    : arrangements_(of_one_design(pointers(arrangements))),
      water_(std::make_unique<Water>(arrangements_)) {
  water_->with([&](auto& water) { water.list_placed(arrangements_.front()->design()); });
}

Lanes::Lanes(std::span<Switching const> switchings)
    : arrangements_(of_one_design(afterwards(switchings))),
      water_(std::make_unique<Water>(arrangements_)) {
  water_->with([&](auto& water) { water.pour(switchings); });
}

Lanes::~Lanes() = default;
Lanes::Lanes(Lanes&&) noexcept = default;
Lanes& Lanes::operator=(Lanes&&) noexcept = default;

void Lanes::settle() {
  auto const most_steps = water::most_steps(*arrangements_.front());
  water_->with([&](auto& water) {
    for (int step = 1; step <= most_steps; ++step) {
      auto changed = water.step();
      if (!changed) return;
      for (; changed; changed &= changed - 1) {
        steps_[static_cast<std::size_t>(std::countr_zero(changed))] = step;
      }
    }
    restless_ = water.look();
  });
}

Word Lanes::is_strong(Cell c, int least) const {
  return water_->with([&](auto const& water) { return water.is_strong(c, least); });
}

Word Lanes::is_source(Cell c) const {
  return water_->with([&](auto const& water) { return water.is_source(c); });
}

State Lanes::state(Cell c, std::size_t lane) const {
  if (is_source(c) >> lane & 1) return source;
  auto const top = arrangements_.front()->practice()[model::Rule::source_strength];
  if (is_strong(c, top) >> lane & 1) return falling;
  int strength = 0;
  while (is_strong(c, strength + 1) >> lane & 1) ++strength;
  return static_cast<State>(strength);
}

namespace {

// One lane as the rule of the current sees it.
struct LaneMoment {
  Lanes const& lanes;
  std::size_t lane;
  model::Arrangement const& arrangement;
  model::Grid const& grid() const { return arrangement.grid(); }
  bool is_wet(Cell c) const { return (lanes.is_wet(c) >> lane & 1) != 0; }
  int strength(Cell c) const {
    return water::strength(lanes.state(c, lane), arrangement.practice());
  }
};

}  // namespace

Current Lanes::current(Cell c, std::size_t lane) const {
  return current_in(LaneMoment{*this, lane, arrangement(lane)}, c);
}

std::vector<Cell> Lanes::touched() const {
  return water_->with([](auto const& water) { return water.touched(); });
}

std::vector<Settled> Lanes::unpacked() const {
  std::vector<Settled> settled;
  for (std::size_t lane = 0; lane < size(); ++lane) {
    settled.push_back({Field(arrangement(lane).grid().size()), steps(lane), is_settled(lane)});
  }
  water_->with([&](auto const& water) { water.write(settled); });
  return settled;
}

namespace {

template <class Question>
std::vector<Settled> in_lanes(std::span<Question const> questions) {
  std::vector<Settled> all;
  for (std::size_t first = 0; first < questions.size(); first += Lanes::most) {
    Lanes lanes(questions.subspan(first, std::min(Lanes::most, questions.size() - first)));
    lanes.settle();
    for (auto& settled : lanes.unpacked()) all.push_back(std::move(settled));
  }
  return all;
}

}  // namespace

std::vector<Settled> settle_fresh_lanes(std::span<model::Arrangement const> arrangements) {
  return in_lanes(arrangements);
}

std::vector<Settled> settle_switched_lanes(std::span<Switching const> switchings) {
  return in_lanes(switchings);
}

}  // namespace leat::water
