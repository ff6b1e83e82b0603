#include "engine/explore/state_search.hpp"

#include <algorithm>
#include <array>
#include <deque>

#include "engine/explore/awake.hpp"
#include "engine/explore/known_keys.hpp"
#include "engine/explore/neighbours.hpp"
#include "engine/large_array.hpp"

namespace leat::explore {

namespace {

using Key = StateKeys::Key;

// The numbers of known keys, laid out as the keys are. Made once all are known.
class Numbers {
 public:
  Numbers(KnownKeys const& known, std::vector<Key> const& keys)
      : known_(&known),
        dense_(known.dense_end(), States::none),
        sparse_(known.slot_count(), States::none) {
    for (std::uint32_t state = 0; state < keys.size(); ++state) {
      auto const key = keys[state];
      (key < dense_.size() ? dense_[key] : sparse_[known.slot_of(key)]) = state;
    }
  }

  // None where the key is not known.
  std::uint32_t of(Key key) const {
    return key < dense_.size() ? dense_[key] : sparse_[known_->slot_of(key)];
  }

 private:
  KnownKeys const* known_;
  std::vector<std::uint32_t> dense_, sparse_;
};

// Breadth first in blocks. What the events change is worked out for a whole block; then its states
// are taken one by one and, within a state, event by event, those that are awake.
class Search {
 public:
  Search(logic::Machine const& machine, std::size_t most_states)
      : machine_(machine),
        most_states_(most_states),
        most_rounds_(4 * machine.most_rounds()),
        start_(machine.as_built()),
        keys_(start_.code),
        neighbours_(machine, keys_),
        awake_(neighbours_.block()),
        after_(machine.input_count()),
        to_(machine.input_count() * block) {
    states_.events = machine.input_count();
  }

  States run(Successors successors) {
    if (!start_.is_known) states_.unended = Unended{{}, start_.rounds};
    if (!start_.is_quiet) {
      if (start_.is_known) states_.unquiet_as_built = start_.oscillation;
      return std::move(states_);
    }
    reserve();
    add(start_.code, keys_.key_of(start_.code), States::none, 0);
    awake_in_.push_back(awake_.all());
    states_.is_complete = true;
    for (; done_ < states_.size() && states_.is_complete; done_ += block_keys_.size()) {
      load();
      for (std::size_t event = 0; event < states_.events; ++event) flip(event);
      for (std::size_t lane = 0; lane < block_keys_.size(); ++lane) go_on(lane);
      known_.widen(keys_.dimensions());
    }
    if (successors == Successors::tabled) table();
    return std::move(states_);
  }

 private:
  static constexpr auto block = Neighbours::most_states;

  // Room for as many states as there can be, so that growing copies nothing; what is not used is
  // not touched.
  void reserve() {
    constexpr std::size_t most_reserved = std::size_t{1} << 20;
    auto const bits = std::min<std::size_t>(machine_.variables().size(), 20);
    auto const count = std::min({most_states_, std::size_t{1} << bits, most_reserved});
    reserve_large(keys_of_states_, count);
    reserve_large(states_.codes, count);
    reserve_large(states_.parent, count);
    states_.event_from_parent.reserve(count);
  }

  // Where the states of the present block lead by an event.
  struct After {
    Key by = 0;  // from the state's own key; where is_even is not set, `to_` holds the keys instead
    logic::Code code_by = 0;
    bool is_even = true;
  };

  std::span<Key> uneven(std::size_t event) {
    return std::span(to_).subspan(event * block, block_keys_.size());
  }
  Key key_after(std::size_t lane, std::size_t event) const {
    auto const& after = after_[event];
    return after.is_even ? block_keys_[lane] ^ after.by : to_[event * block + lane];
  }
  logic::Code code_after(std::size_t lane, std::size_t event) const {
    auto const& after = after_[event];
    return after.is_even ? states_.codes[done_ + lane] ^ after.code_by
                         : keys_.code_of(to_[event * block + lane]);
  }

  void load() {
    auto const count = std::min(block, states_.size() - done_);
    block_keys_.assign(keys_of_states_.begin() + static_cast<std::ptrdiff_t>(done_),
                       keys_of_states_.begin() + static_cast<std::ptrdiff_t>(done_ + count));
    neighbours_.load(std::span(states_.codes).subspan(done_, count), block_keys_);
    unsettled_.fill(0);
  }

  void flip(std::size_t event) {
    auto const flip = neighbours_.flip(event, uneven(event));
    after_[event] = {flip.key, flip.code, flip.is_even};
    for (std::size_t w = 0; w < flip.unsettled->size(); ++w) {
      for (auto lanes = (*flip.unsettled)[w]; lanes != 0; lanes &= lanes - 1)
        unsettled_[64 * w + first_of(lanes)] |= Events{1} << event;
    }
  }

  // Of the events awake in the state, those that lead to what is not known: looked up once for all,
  // and again one by one, since two of them can lead to the same. Those that did not get quiet
  // within the common rounds are tried one by one, awake or not.
  void go_on(std::size_t lane) {
    auto const unsettled = unsettled_[lane];
    Events fresh = 0;
    for (auto rest = awake_in_.front() & ~unsettled; rest != 0; rest &= rest - 1) {
      auto const event = first_of(rest);
      if (!known_.is_known(key_after(lane, event))) fresh |= Events{1} << event;
    }
    awake_in_.pop_front();
    for (auto rest = fresh | unsettled; rest != 0; rest &= rest - 1) {
      auto const event = first_of(rest);
      if (arrive(lane, event)) awake_in_.push_back(awake_.after(event, fresh));
    }
  }

  // Whether the event leads to a state that was not known.
  bool arrive(std::size_t lane, std::size_t event) {
    if (states_.unended) return false;
    auto const from = static_cast<std::uint32_t>(done_ + lane);
    auto key = key_after(lane, event);
    bool const is_unsettled = (unsettled_[lane] >> event & 1u) != 0;
    logic::Machine::Settled settled;
    if (is_unsettled) {
      settled = settled_after(from, event);
      if (!settled.is_known) return false;
      if (!settled.is_quiet) {
        states_.unquiet.push_back({from, event, std::move(settled.oscillation)});
        return false;
      }
      key = keys_.key_of(settled.code);
    }
    if (known_.is_known(key)) return false;
    if (states_.size() == most_states_) {
      states_.is_complete = false;
      return false;
    }
    auto const code = is_unsettled ? settled.code : code_after(lane, event);
    if (!keys_.includes(key)) key = include(key);
    add(code, key, from, event);
    return true;
  }

  // All that is settled one by one shares its rounds, so that slow states do not add up.
  logic::Machine::Settled settled_after(std::uint32_t from, std::size_t event) {
    auto settled = machine_.after(states_.codes[from], event, most_rounds_ - rounds_);
    rounds_ += settled.rounds;
    if (!settled.is_known) {
      states_.is_complete = false;
      states_.unended =
          Unended{machine_.variables()[event], rounds_ == most_rounds_ ? rounds_ : settled.rounds};
    }
    return settled;
  }

  // Widens the span of the keys. Those of known states stay; what was worked out for this block
  // follows, since a step is linear.
  Key include(Key key) {
    auto const step = keys_.include(key);
    for (auto& other : to_) other = step(other);
    for (auto& after : after_) after.by = step(after.by);
    return step(key);
  }

  void add(logic::Code code, Key key, std::uint32_t parent, std::size_t event) {
    known_.insert(key);
    keys_of_states_.push_back(key);
    states_.codes.push_back(code);
    states_.parent.push_back(parent);
    states_.event_from_parent.push_back(static_cast<std::uint8_t>(event));
  }

  // A pass of its own, when the numbers of all states are known.
  void table() {
    if (states_.unended) return states_.next.assign(states_.size() * states_.events, States::none);
    Numbers const numbers(known_, keys_of_states_);
    auto const events = states_.events;
    reserve_large(states_.next, states_.size() * events);
    for (done_ = 0; done_ < states_.size(); done_ += block_keys_.size()) {
      load();
      states_.next.resize(states_.next.size() + block_keys_.size() * events);
      for (std::size_t event = 0; event < events; ++event) {
        flip(event);
        number_successors(numbers, event);
      }
      for (std::size_t lane = 0; lane < block_keys_.size(); ++lane) {
        for (auto rest = unsettled_[lane]; rest != 0; rest &= rest - 1)
          settle_alone(numbers, lane, first_of(rest));
      }
    }
  }

  void number_successors(Numbers const& numbers, std::size_t event) {
    auto const& after = after_[event];
    std::span<Key const> const keys = after.is_even ? std::span(block_keys_) : uneven(event);
    auto const by = after.is_even ? after.by : 0;
    auto* const next = &states_.next[done_ * states_.events + event];
    for (std::size_t lane = 0; lane < keys.size(); ++lane)
      next[lane * states_.events] = numbers.of(keys[lane] ^ by);
  }

  void settle_alone(Numbers const& numbers, std::size_t lane, std::size_t event) {
    auto const settled = machine_.after(states_.codes[done_ + lane], event);
    states_.next[(done_ + lane) * states_.events + event] =
        settled.is_quiet ? numbers.of(keys_.key_of(settled.code)) : States::none;
  }

  logic::Machine const& machine_;
  std::size_t most_states_, most_rounds_;
  std::size_t rounds_ = 0;  // of what was settled one by one
  logic::Machine::Settled start_;
  StateKeys keys_;
  KnownKeys known_;
  Neighbours neighbours_;
  Awake awake_;
  States states_;
  std::vector<Key> keys_of_states_;
  std::size_t done_ = 0;                 // the first state of the present block
  std::vector<Key> block_keys_;          // of the present block's states
  std::vector<After> after_;             // by event
  std::vector<Key> to_;                  // event * block + lane
  std::array<Events, block> unsettled_;  // by lane
  std::deque<Events> awake_in_;          // the states not taken yet
};

}  // namespace

States search(logic::Machine const& machine, std::size_t most_states, Successors successors) {
  return Search(machine, most_states).run(successors);
}

}  // namespace leat::explore
