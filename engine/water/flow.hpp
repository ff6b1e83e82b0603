#pragma once
#include <algorithm>
#include <array>
#include <bit>
#include <utility>
#include <vector>

#include "engine/model/grid.hpp"
#include "engine/water/agenda.hpp"
#include "engine/water/patch.hpp"

namespace leat::water {

// The practice numbers that the water asks for.
struct WaterRules {
  int strength, makers, eager, reach;
  explicit WaterRules(model::Practice const& practice)
      : strength(practice[model::Rule::source_strength]),
        makers(practice[model::Rule::source_makers]),
        eager(practice[model::Rule::eager_makers]),
        reach(practice[model::Rule::hole_search]) {}
};

// Water on its way to rest, many places at a time: the rules of model section 2, each written once
// as operations on words, for every layout of places in patches.
//
// Idea: a list of the patches whose next state may differ from the present one, as it follows from
// the last changes. A step looks at them all in the field before it, notes what changes, and only
// then changes it: it is synchronous as the model's is, and gives the same fields.
//
// What can change a place's next state, and so puts its patch on the list:
// - it is wet, and the strength or source of a side neighbour changed, or the wetness above it, or
//   whether a source is below it;
// - it is dry, and it became wet above it, or a side neighbour newly offers it: because that one
//   newly spreads, or newly prefers this side.
// Nothing else: a dry place that is already offered, or under water, is on the list since it is so,
// and is wet after the step. Whether a place spreads is kept with it, and found anew when it
// changes, or the place below it gets wet or dry under a source, or a source forms beside it.
//
// Which sides a place prefers is found when it first matters, from the planes 'D at most d' of its
// neighbours, and these when they are first asked: D is at most d where there is a hole below, or
// where D of a side neighbour is at most d - 1. Both are forgotten around a source that forms where
// a way to a hole led through its place.
//
// Cost: a few hundred instructions for each patch that changes in a step, whatever the number of
// its places that do.
//
// The layout says how patches lie: size(), how many there are, numbered so that neighbours on a
// level are at most span() apart and those above have higher numbers; at(id) and marks(id), the
// parts of a patch, and made(id), the first with its ground read; what it stands on: enter(id),
// where water may enter inside the drawing, passage(id), outside too, hole(id), where it may enter
// below, placed(id), and bears(id), where sources may form going by the material below; near(id,
// d), a place to keep where D is at most d, and near_around(id, d); fetch(id), a hint that it will
// be looked at soon; above(id), below(id); around(id), which reads the patches beside, place by
// place; for_each_beside(id, visit), which visits these, and outward(id, words, visit), the other
// way round: the patches in which the neighbours of some places lie, the places said for each side,
// with these neighbours; for_each_near(id, reach, visit), all patches inside with a place so many
// side steps away.
template <class Layout>
class Flow {
 public:
  using Patch = typename Layout::Patch;
  using Places = typename Patch::Places;
  using Id = typename Layout::Id;

  Flow(Layout layout, model::Practice const& practice)
      : layout_(std::move(layout)),
        rules_(practice),
        agenda_(layout_.size()),
        pending_(std::bit_ceil(2 * std::size_t{layout_.span()} + 2)) {}

  Layout& layout() { return layout_; }
  Layout const& layout() const { return layout_; }

  // Looks at a patch in the next step.
  void list(Id id) { agenda_.add(id); }

  // Looks at everything that may follow from a new material or state at the places of a patch.
  void list_influence(Id id) {
    list(id);
    list(layout_.below(id));
    layout_.for_each_near(id, rules_.reach + 2, [&](Id near) { list(near); });
    layout_.for_each_near(layout_.above(id), rules_.reach + 2, [&](Id near) { list(near); });
  }

  // Looks at all places that water could be in after a step from any field whatever.
  void list_all_beside(Id wet) {
    list(wet);
    list(layout_.below(wet));
    layout_.for_each_near(wet, 1, [&](Id near) { list(near); });
  }

  // To be called for each patch whose water was set by hand, before the first step.
  void find_spreading(Id id) {
    layout_.at(id).spreading = spreading_of(id);
    if (layout_.at(id).sources) show_sources(id, layout_.at(id).sources);
    is_set_by_hand_ = true;
  }

  // What the next step would change: the places of all patches, united.
  Places look();

  // One step. The places that changed, those of all patches united; none when it changes nothing.
  Places step();

  // The patches that the last step changed.
  std::vector<Id> const& changed() const { return changed_; }

 private:
  struct Change {
    Id id;
    Places any, wetness;  // places that differ at all, and in being wet
    std::array<Places, Patch::most> strong;
  };
  // New sources come into the field when all else of a step is done.
  struct Formed {
    Id id;
    Places sources;
  };

  // The standard strength is known when this is compiled, so that loops over planes unroll.
  int top() const { return Patch::most == 8 ? 8 : rules_.strength; }

  Change& pending(std::size_t number) { return pending_[number & (pending_.size() - 1)]; }
  bool look_at(Id id, Change& change);
  std::array<Places, 4> sources_around(Id id) const {
    return layout_.around(id).on_each_side(
        [](Patch const& patch, std::size_t) { return patch.sources; });
  }
  Places offered(Id id);
  Places forming(Id id);
  void find_closed_ways();
  void commit(Change const&);
  void list_consequences(Change const&);
  void form_sources();
  void show_sources(Id id, Places const& sources);
  Places spreading_of(Id id) const;
  void refresh(Id id);
  void announce(Id id, std::array<Places, 4> gained);
  void prefer(Id id);
  void know_near(Id id, int distance);
  void forget_ways();

  Layout layout_;
  WaterRules rules_;
  Agenda agenda_;
  std::vector<Id> listed_;       // in this step
  std::vector<Change> pending_;  // the last ones, round and round; a power of two
  std::vector<Id> changed_;
  std::vector<Formed> formed_;
  std::vector<Id> poured_on_;  // with sources whose pouring ended or began
  std::vector<Id> closed_;     // where a source forms in a way to a hole
  bool knows_ways_ = false, is_set_by_hand_ = false;
};

// Sides are numbered round the compass: two further on lies the opposite one.
constexpr std::size_t opposite(std::size_t side) { return (side + 2) % 4; }

// Where a source forms by what is beside and below, whatever is there now. Most water has no source
// beside it.
template <class Layout>
typename Flow<Layout>::Places Flow<Layout>::forming(Id id) {
  if (!layout_.marks(id).sees_sources) return Places{};
  auto const enough = at_least(rules_.makers, sources_around(id));
  if (!enough) return enough;
  return enough & (layout_.bears(id) | layout_.at(layout_.below(id)).sources);
}

// Where a neighbour offers. Where water spreads its preferred sides are known, but for what was set
// by hand.
template <class Layout>
typename Flow<Layout>::Places Flow<Layout>::offered(Id id) {
  if (is_set_by_hand_) {
    layout_.for_each_beside(id, [&](Id n) {
      if (layout_.at(n).spreading) prefer(n);
    });
  }
  return any(layout_.around(id).on_each_side([](Patch const& patch, std::size_t side) {
    return patch.spreading & patch.preferred[opposite(side)];
  }));
}

template <class Layout>
typename Flow<Layout>::Places Flow<Layout>::look() {
  listed_.clear();
  agenda_.move_to(listed_);
  Places changed{};
  for (auto id : listed_) {
    agenda_.add(id);
    if (look_at(id, pending_.front())) changed |= pending_.front().any;
  }
  formed_.clear();
  return changed;
}

// Idea: the patches come in the order of memory, and three things are done to each in one walk. It
// is looked at; when no later one asks for it any more, its change is made; when its neighbours'
// changes are made too, it is seen what follows. So everything happens while it is at hand, and no
// change is kept for long. Sources are asked for across levels: they wait for the end of the step.
template <class Layout>
typename Flow<Layout>::Places Flow<Layout>::step() {
  changed_.clear();
  formed_.clear();
  poured_on_.clear();
  listed_.clear();
  agenda_.move_to(listed_);
  std::size_t found = 0, made = 0, followed = 0;
  Places changed{};
  auto const advance = [&](Id id) {
    auto const span = layout_.span();
    for (; made < found && pending(made).id + span < id; ++made) commit(pending(made));
    for (; followed < made && pending(followed).id + 2 * span < id; ++followed) {
      list_consequences(pending(followed));
    }
  };
  constexpr std::size_t ahead = 6;
  for (std::size_t i = 0; i < listed_.size(); ++i) {
    if (i + ahead < listed_.size()) layout_.fetch(listed_[i + ahead]);
    auto const id = listed_[i];
    advance(id);
    auto& change = pending(found);
    if (!look_at(id, change)) continue;
    changed |= change.any;
    changed_.push_back(id);
    ++found;
  }
  for (; made < found; ++made) commit(pending(made));
  for (; followed < found; ++followed) list_consequences(pending(followed));
  find_closed_ways();
  form_sources();
  if (!closed_.empty()) forget_ways();
  return changed;
}

// Model section 2, "One water step" and "intrinsic(c)".
template <class Layout>
bool Flow<Layout>::look_at(Id id, Change& change) {
  auto const& patch = layout_.made(id);
  auto const enter = layout_.enter(id);
  if (!enter) return false;
  auto const wet = patch.wet(), wet_above = layout_.at(layout_.above(id)).wet();
  auto const silent = enter & ~(wet | wet_above);
  auto const active = wet | wet_above | (silent ? offered(id) : Places{});
  auto const placed = layout_.marks(id).has_placed ? layout_.placed(id) : Places{};
  auto const stays = enter & (placed | patch.sources);
  auto const takes = enter & active & ~stays;
  auto const forms = takes ? takes & forming(id) : Places{};
  auto const full = stays | forms | (takes & wet_above);
  auto const around = layout_.around(id);

  auto const source = (stays | forms) ^ patch.sources;
  auto differs = source;
  auto const last = static_cast<std::size_t>(top()) - 1;
  for (std::size_t k = 0; k < last; ++k) {
    change.strong[k] = full | (takes & around.on_any_side(k + 1));
    differs |= change.strong[k] ^ patch.strong[k];
  }
  change.strong[last] = full;
  differs |= full ^ patch.strong[last];
  change.id = id;
  change.any = differs;
  change.wetness = change.strong[0] ^ wet;
  if (source) formed_.push_back({id, source});
  return static_cast<bool>(differs);
}

template <class Layout>
void Flow<Layout>::commit(Change const& change) {
  auto& patch = layout_.at(change.id);
  auto const planes = static_cast<std::size_t>(top());
  for (std::size_t k = 0; k < planes; ++k) patch.strong[k] = change.strong[k];
}

// Lists what may follow from one change, it and all beside it being made.
template <class Layout>
void Flow<Layout>::list_consequences(Change const& change) {
  auto const id = change.id;
  auto const& any = change.any;
  layout_.outward(id, {any, any, any, any}, [&](Id n, Places const& places) {
    if (layout_.at(n).wet() & places) list(n);
  });
  if (change.wetness) {
    if (layout_.hole(id) & change.wetness) list(layout_.below(id));
    auto const above = layout_.above(id);
    if (layout_.at(above).sources & change.wetness) poured_on_.push_back(above);
  }
  refresh(id);
}

template <class Layout>
void Flow<Layout>::form_sources() {
  for (auto const& [id, sources] : formed_) layout_.at(id).sources ^= sources;
  for (auto const& [id, sources] : formed_) {
    show_sources(id, sources);
    layout_.outward(id, {sources, sources, sources, sources}, [&](Id n, Places const& places) {
      if (layout_.at(n).sources & places) refresh(n);
    });
    auto const above = layout_.above(id);
    if (layout_.at(above).wet() & sources) list(above);
    refresh(id);
  }
  for (auto id : poured_on_) refresh(id);
}

template <class Layout>
void Flow<Layout>::show_sources(Id id, Places const& sources) {
  layout_.outward(id, {sources, sources, sources, sources}, [&](Id n, Places const&) {
    layout_.made(n);  // marks are its own from then on
    layout_.marks(n).sees_sources = true;
  });
}

// Model section 2, "n spreads sideways when", and the strength of 2 that an offer wants.
template <class Layout>
typename Flow<Layout>::Places Flow<Layout>::spreading_of(Id id) const {
  auto const& patch = layout_.at(id);
  auto const able = patch.strong[1];
  auto const hole = layout_.hole(id);
  auto spreads = able & ~hole;
  if (auto const pouring = able & hole & patch.sources) {
    spreads |= pouring &
               (layout_.at(layout_.below(id)).wet() | at_least(rules_.eager, sources_around(id)));
  }
  return spreads;
}

template <class Layout>
void Flow<Layout>::refresh(Id id) {
  auto& patch = layout_.at(id);
  auto const spreads = spreading_of(id);
  auto const gained = spreads & ~patch.spreading;
  patch.spreading = spreads;
  if (!gained) return;
  prefer(id);
  announce(id, {gained, gained, gained, gained});
}

// Lists what a patch newly offers: the places said for each side, so far as they prefer that side.
template <class Layout>
void Flow<Layout>::announce(Id id, std::array<Places, 4> gained) {
  auto const& preferred = layout_.at(id).preferred;
  for (std::size_t side = 0; side < 4; ++side) gained[side] &= preferred[side];
  layout_.outward(id, gained, [&](Id n, Places places) {
    auto const& beside = layout_.made(n);
    if (layout_.enter(n) & ~beside.wet() & places) list(n);
  });
}

}  // namespace leat::water

#include "engine/water/flow_ways.hpp"
