#include "engine/explore/train.hpp"

#include <algorithm>
#include <memory>

#include "engine/body/moves.hpp"
#include "engine/body/route_graph.hpp"
#include "engine/body/travel.hpp"
#include "engine/contract.hpp"
#include "engine/explore/explored.hpp"
#include "engine/explore/setting.hpp"
#include "engine/water/settling.hpp"

namespace leat::explore {

using body::End;
using body::Position;
using body::Surroundings;

namespace {

// The cells as the logic of the moment arranges them, and their water on its way.
class Works {
 public:
  Works(model::Design const& design, logic::Timed const& timed, Walk const& before)
      : design_(design),
        timed_(timed),
        is_drawn_(fills_drawn(design)),
        setting_(before.setting),
        arrangement_(std::make_unique<model::Arrangement>(design, setting_)),
        field_(before.field) {}

  model::Arrangement const& arrangement() const { return *arrangement_; }
  water::Field const& field() const { return field_; }
  bool is_settling() const { return settling_.has_value(); }

  // After the logic has moved: a new arrangement where a control has changed; every few ticks a
  // water step.
  void tick() {
    auto setting = setting_now();
    if (setting != setting_) {
      auto after = std::make_unique<model::Arrangement>(design_, setting);
      settling_.emplace(*arrangement_, field_, *after, !settling_);
      arrangement_ = std::move(after);
      setting_ = std::move(setting);
      field_ = settling_->field();
    }
    if (!settling_ || timed_.now() % design_.practice[model::Rule::step_ticks] != 0) return;
    if (settling_->step()) {
      field_ = settling_->field();
    } else {
      settling_.reset();
    }
  }

 private:
  Setting setting_now() const { return setting_in(design_, is_drawn_, timed_.values()); }

  model::Design const& design_;
  logic::Timed const& timed_;
  std::vector<bool> is_drawn_;
  Setting setting_;
  std::unique_ptr<model::Arrangement> arrangement_;
  water::Field field_;
  std::optional<water::Settling> settling_;
};

struct Traveller {
  std::uint32_t number = 0;
  Position at;
  std::optional<Position> to;  // under way to
  int arrives = 0;             // tick
};

class Run {
 public:
  Run(model::Design const& design, logic::Machine const& machine, TrainOrder const& order)
      : design_(design),
        order_(order),
        before_(walk(design, machine, order.flips)),
        circuit_(standing(machine.circuit(), before_.signals)),
        timed_(circuit_),
        works_(design, timed_, before_),
        outlets_(body::outlet_cells(design)),
        longest_time_(longest_time(design)) {}

  TrainRun run() {
    result_.is_quiet = before_.is_quiet && before_.is_settled;
    if (!result_.is_quiet) return std::move(result_);
    auto const most_ticks = order_.most_ticks + std::max(order_.count - 1, 0) * order_.interval;
    while (result_.ticks < most_ticks && (entered_ < order_.count || !travellers_.empty())) {
      if (result_.ticks % order_.interval == 0 && entered_ < order_.count) enter();
      for (auto& traveller : travellers_) advance(traveller);
      std::erase_if(travellers_,
                    [&](Traveller const& t) { return result_.bodies[t.number].end != End::none; });
      press_plates();
      result_.is_quiet = timed_.tick() && result_.is_quiet;
      works_.tick();
      ++result_.ticks;
      if (is_at_rest_for_good()) break;
    }
    for (auto& body : result_.bodies) {
      if (body.end == End::none) body.ended = result_.ticks;
    }
    return std::move(result_);
  }

 private:
  // Once nothing has moved, changed or been on its way for longer than any delay, pulse or clock
  // takes, nothing ever will again.
  bool is_at_rest_for_good() {
    auto signals = timed_.values();
    bool const is_anyone_moving =
        entered_ < order_.count || std::any_of(travellers_.begin(), travellers_.end(),
                                               [](Traveller const& t) { return t.to.has_value(); });
    if (is_anyone_moving || works_.is_settling() || signals != signals_)
      last_moved_ = result_.ticks;
    signals_ = std::move(signals);
    return result_.ticks - last_moved_ > longest_time_;
  }

  static int longest_time(model::Design const& design) {
    int longest = design.practice[model::Rule::step_ticks];
    for (auto const& signal : design.circuit.signals) longest = std::max(longest, signal.ticks);
    return longest;
  }

  static model::Circuit standing(model::Circuit circuit, std::vector<bool> const& values) {
    for (std::size_t s = 0; s < values.size(); ++s) circuit.signals[s].starts_on = values[s];
    return circuit;
  }

  Surroundings here() const {
    return {works_.arrangement(), works_.field(), design_.profiles[order_.profile]};
  }

  void enter() {
    auto const starts = body::entries(here(), design_.inlets[order_.inlet].cells);
    auto const number = static_cast<std::uint32_t>(result_.bodies.size());
    result_.bodies.push_back({result_.ticks, result_.ticks, End::none, {}, model::no_cell});
    ++entered_;
    if (starts.empty()) {
      result_.bodies.back().end = End::pinned;
      return;
    }
    result_.had_choice = result_.had_choice || starts.size() > 1;
    travellers_.push_back({number, starts.front(), {}, 0});
    result_.bodies.back().cell = starts.front().feet;
  }

  void advance(Traveller& traveller) {
    auto const surroundings = here();
    if (traveller.to && result_.ticks >= traveller.arrives) {
      if (surroundings.fits(traveller.to->feet))
        traveller.at = body::forgetful(surroundings, *traveller.to);
      traveller.to.reset();
      result_.bodies[traveller.number].cell = traveller.at.feet;
    }
    if (!traveller.to) choose(surroundings, traveller);
  }

  // Where the body is delivered, has left, or goes on; a body at rest waits for the water or the
  // cells to change.
  void choose(Surroundings const& surroundings, Traveller& traveller) {
    auto& record = result_.bodies[traveller.number];
    record.ended = result_.ticks;
    if (auto const outlet = outlets_.find(traveller.at.feet); outlet != outlets_.end()) {
      record.end = End::outlet;
      record.outlet = outlet->second;
      result_.delivered.push_back(traveller.number);
      return;
    }
    if (!surroundings.grid().is_inside(traveller.at.feet)) {
      record.end = End::spill;
      return;
    }
    auto const moves = body::moves_from(surroundings, traveller.at);
    if (moves.empty()) return;
    auto const sure =
        std::find_if(moves.begin(), moves.end(), [](body::Move const& m) { return m.is_sure; });
    auto const& move = sure == moves.end() ? moves.front() : *sure;
    result_.had_choice = result_.had_choice || moves.size() > 1 || !move.is_sure;
    auto const ticks = body::ticks_of(surroundings, traveller.at, move.to, move.rule);
    if (!ticks) return;
    traveller.to = move.to;
    traveller.arrives = result_.ticks + *ticks;
  }

  void press_plates() {
    for (auto const& plate : design_.plates) {
      if (circuit_.signals[plate.signal].kind != model::SignalKind::plate) continue;
      bool const is_pressed =
          std::any_of(travellers_.begin(), travellers_.end(),
                      [&](Traveller const& t) { return stands_on(t.at.feet, plate.cells); });
      timed_.put(plate.signal, is_pressed);
    }
  }

  bool stands_on(model::Cell feet, std::vector<model::Cell> const& cells) const {
    auto const footprint = design_.profiles[order_.profile].footprint;
    for (int y = 0; y < footprint; ++y) {
      for (int x = 0; x < footprint; ++x) {
        auto const c = feet + static_cast<model::Cell>(x) +
                       (y == 0 ? 0 : design_.grid.beside(0, model::Side::south));
        if (std::binary_search(cells.begin(), cells.end(), c)) return true;
      }
    }
    return false;
  }

  model::Design const& design_;
  TrainOrder const& order_;
  Walk before_;
  model::Circuit circuit_;
  logic::Timed timed_;
  Works works_;
  body::OutletCells outlets_;
  std::vector<Traveller> travellers_;
  TrainRun result_;
  int entered_ = 0;
  std::vector<bool> signals_;  // a tick ago
  int last_moved_ = 0;         // tick
  int longest_time_;           // of delays, pulses, clocks and the water's step
};

}  // namespace

TrainRun run_train(model::Design const& design, logic::Machine const& machine,
                   TrainOrder const& order) {
  require(is_runnable(order), "run_train: a train that enters in time");
  require(order.interval >= 1 && order.count >= 0, "run_train: an interval of at least one tick");
  return Run(design, machine, order).run();
}

}  // namespace leat::explore
