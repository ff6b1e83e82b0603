#include "engine/water/settling.hpp"

#include <algorithm>
#include <cstring>
#include <variant>

#include "engine/contract.hpp"
#include "engine/water/flow.hpp"
#include "engine/water/row_layout.hpp"
#include "engine/water/unpacking.hpp"
#include "engine/water/widely.hpp"

namespace leat::water {

std::vector<Cell> changed_cells(model::Arrangement const& before, model::Arrangement const& after) {
  require(&before.design() == &after.design(), "changed_cells: two arrangements of one design");
  std::vector<bool> is_changed(after.design().fills.size());
  for (std::size_t f = 0; f < is_changed.size(); ++f) {
    auto const fill = static_cast<model::FillId>(f);
    is_changed[f] = before.made_of(fill) != after.made_of(fill);
  }
  return cells_filled(after.design(), is_changed);
}

namespace {

Field with_fresh(Field field, std::vector<Cell> const& changed, model::Arrangement const& after) {
  for (auto c : changed) field[c] = after[c].is_source ? source : dry;
  return field;
}

}  // namespace

Field switched(model::Arrangement const& before, Field const& field,
               model::Arrangement const& after) {
  return with_fresh(field, changed_cells(before, after), after);
}

// The patches of one arrangement, for water of at most so much strength.
template <int Most>
class Settling::RowsOf {
 public:
  explicit RowsOf(model::Arrangement const& arrangement)
      : top_(arrangement.practice()[model::Rule::source_strength]),
        flow_(RowLayout<Most>(arrangement), arrangement.practice()),
        stale_(layout().size()) {}

  // A first step from dry can only fill placed sources.
  void list_placed() {
    for (auto id : layout().with_placed()) flow_.list(id);
  }
  void pour(Field const&);
  void list_changed(std::vector<Cell> const& cells) {
    PatchId last = 0;  // in the rim
    for (auto c : cells) {
      auto const id = layout().spot(c).id;
      if (id != std::exchange(last, id)) flow_.list_influence(id);
    }
  }
  void list_all_wet() {
    for (auto id : poured_) flow_.list_all_beside(id);
  }

  bool would_change() { return static_cast<bool>(flow_.look()); }
  bool step() {
    if (!widely([&] { return static_cast<bool>(flow_.step()); })) return false;
    for (auto id : flow_.changed()) stale_.add(id);
    return true;
  }
  void bring_up_to_date(Field& field) {
    std::vector<PatchId> behind;
    stale_.move_to(behind);
    widely([&] {
      for (auto id : behind) write(id, field);
    });
  }

 private:
  RowLayout<Most>& layout() { return flow_.layout(); }
  int top() const { return Most == 8 ? 8 : top_; }
  void write(PatchId id, Field& field);

  int top_;  // the standard one is known when this is compiled
  Flow<RowLayout<Most>> flow_;
  std::vector<PatchId> poured_;
  Agenda stale_;  // where the field of bytes is behind
};

template <int Most>
void Settling::RowsOf<Most>::pour(Field const& field) {
  Agenda wet(layout().size());
  for (std::size_t c = 0; c < field.size();) {
    std::uint64_t eight = 0;
    std::memcpy(&eight, &field[c], std::min(sizeof eight, field.size() - c));
    auto const end = std::min(c + sizeof eight, field.size());
    for (; eight != 0 && c < end; ++c) {
      if (!is_wet(field[c])) continue;
      auto const spot = layout().spot(static_cast<Cell>(c));
      Block place{};
      place.rows[spot.row] = Word{1} << spot.bit;
      put(layout().at(spot.id), place, field[c], top());
      wet.add(spot.id);
    }
    c = end;
  }
  wet.move_to(poured_);
  for (auto id : poured_) flow_.find_spreading(id);
}

template <int Most>
void Settling::RowsOf<Most>::write(PatchId id, Field& field) {
  layout().for_each_row(id, [&](std::size_t row, Cell first, int count) {
    States const states(layout().at(id), row, top());
    auto* const cells = &field[first];
    if (states.are_dry()) {
      std::fill_n(cells, count, dry);
      return;
    }
    auto const all = states.all();
    if (count == word_bits)  // most rows, and then no call
      std::memcpy(cells, &all, sizeof all);
    else
      std::memcpy(cells, &all, static_cast<std::size_t>(count));
  });
}

// As many planes as the practice wants, and no more than two sizes beside the standard one.
class Settling::Rows {
 public:
  explicit Rows(model::Arrangement const& arrangement) : rows_(chosen(arrangement)) {}
  template <class Work>
  auto with(Work work) {
    return std::visit(work, rows_);
  }

 private:
  using Choice = std::variant<RowsOf<8>, RowsOf<16>, RowsOf<most_strength>>;
  static Choice chosen(model::Arrangement const& arrangement) {
    auto const strength = arrangement.practice()[model::Rule::source_strength];
    if (strength == 8) return RowsOf<8>(arrangement);
    if (strength <= 16) return RowsOf<16>(arrangement);
    return RowsOf<most_strength>(arrangement);
  }
  Choice rows_;
};

Settling::Settling(model::Arrangement const& arrangement)
    : rows_(std::make_unique<Rows>(arrangement)), field_(arrangement.grid().size()) {
  rows_->with([](auto& rows) { rows.list_placed(); });
}

Settling::Settling(model::Arrangement const& before, Field const& field,
                   model::Arrangement const& after, bool was_settled)
    : rows_(std::make_unique<Rows>(after)) {
  auto const changed = changed_cells(before, after);
  field_ = with_fresh(field, changed, after);
  rows_->with([&](auto& rows) {
    rows.pour(field_);
    rows.list_changed(changed);
    if (was_settled) return;
    rows.list_all_wet();
    rows.list_placed();
  });
}

Settling::~Settling() = default;
Settling::Settling(Settling&&) noexcept = default;
Settling& Settling::operator=(Settling&&) noexcept = default;

bool Settling::step() {
  bool const is_moving = rows_->with([](auto& rows) { return rows.step(); });
  steps_ += is_moving ? 1 : 0;
  return is_moving;
}

bool Settling::run(int most_steps) {
  return rows_->with([&](auto& rows) {
    for (; steps_ < most_steps; ++steps_) {
      if (!rows.step()) return true;
    }
    return !rows.would_change();
  });
}

Field const& Settling::field() {
  rows_->with([&](auto& rows) { rows.bring_up_to_date(field_); });
  return field_;
}

Field Settling::take_field() {
  field();
  return std::move(field_);
}

}  // namespace leat::water
