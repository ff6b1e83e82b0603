#include "engine/logic/recording.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "engine/logic/timed.hpp"

namespace leat::logic {

using model::SignalId;
using model::SignalKind;

namespace {

int longest_time(model::Circuit const& circuit) {
  int longest = 1;
  for (auto const& signal : circuit.signals) longest = std::max(longest, signal.ticks);
  return longest;
}

class Recorder {
 public:
  Recorder(model::Circuit const& circuit, std::vector<Deed> const& deeds)
      : circuit_(circuit), deeds_(deeds), timed_(circuit), window_(longest_time(circuit)) {
    recording_.changes.resize(circuit.signals.size());
    for (SignalId s = 0; s < circuit.signals.size(); ++s)
      recording_.starts_on.push_back(timed_.is_on(s));
    now_on_ = recording_.starts_on;
  }

  Recording run(RunLength length) {
    while (timed_.now() < length.most && !(timed_.now() >= length.least && is_idle())) step(true);
    auto const reached = timed_.now();
    auto const active_until = recording_.active_until;
    // Looked at, but not recorded: whether something was still under way.
    while (!is_idle() && recording_.active_until == active_until) step(false);
    recording_.is_over = next_ == deeds_.size() && recording_.active_until == active_until;
    recording_.active_until = active_until;
    recording_.last_tick =
        recording_.is_over ? std::min(reached, std::max(length.least, active_until + 1)) : reached;
    return std::move(recording_);
  }

 private:
  bool is_idle() const {
    return next_ == deeds_.size() && timed_.now() - recording_.active_until >= window_;
  }

  void step(bool is_recorded) {
    auto const tick = timed_.now() + 1;
    for (; next_ < deeds_.size() && deeds_[next_].tick <= tick; ++next_) {
      handle(deeds_[next_]);
      recording_.active_until = tick;
    }
    if (!timed_.tick()) {
      recording_.active_until = tick;
      if (is_recorded) recording_.unquiet.push_back(tick);
    }
    for (SignalId s = 0; s < now_on_.size(); ++s) {
      if (timed_.is_on(s) == now_on_[s]) continue;
      now_on_[s] = !now_on_[s];
      recording_.active_until = tick;
      if (is_recorded) recording_.changes[s].push_back(tick);
    }
  }

  void handle(Deed const& deed) {
    if (circuit_.signals[deed.input].kind == SignalKind::button) {
      timed_.press(deed.input);
    } else {
      timed_.put(deed.input, deed.handling == Handling::flip ? !timed_.is_on(deed.input)
                                                             : deed.handling == Handling::turn_on);
    }
  }

  model::Circuit const& circuit_;
  std::vector<Deed> const& deeds_;
  Timed timed_;
  int window_;
  std::size_t next_ = 0;
  std::vector<bool> now_on_;
  Recording recording_;
};

}  // namespace

bool Recording::is_on(SignalId signal, int tick) const {
  auto const& ticks = changes[signal];
  auto const count = std::upper_bound(ticks.begin(), ticks.end(), tick) - ticks.begin();
  return starts_on[signal] != (count % 2 != 0);
}

Recording record(model::Circuit const& circuit, std::vector<Deed> const& deeds, RunLength length) {
  require(0 <= length.least && length.least <= length.most && length.most <= most_ticks,
          "record: a run of 0 to most_ticks");
  require(std::is_sorted(deeds.begin(), deeds.end(),
                         [](Deed const& a, Deed const& b) { return a.tick < b.tick; }) &&
              (deeds.empty() || (deeds.front().tick >= 1 && deeds.back().tick <= length.most)),
          "record: deeds ascend by tick within the run");
  return Recorder(circuit, deeds).run(length);
}

int patience(model::Circuit const& circuit) {
  constexpr std::int64_t least = 200;
  std::int64_t sum = 0;
  for (auto const& signal : circuit.signals)
    sum += std::int64_t{signal.ticks} * (signal.kind == SignalKind::clock ? 2 : 1);
  return static_cast<int>(std::clamp<std::int64_t>(4 * sum, least, most_ticks));
}

}  // namespace leat::logic
