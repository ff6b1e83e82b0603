#include "engine/works/island_form.hpp"

#include <optional>

namespace leat::works {

using model::Cell;

namespace {

class Words {
 public:
  explicit Words(std::vector<std::uint32_t>& words) : words_(words) {}

  void add(std::uint32_t word) { words_.push_back(word); }
  void add(std::optional<std::uint32_t> const& word) { add(word ? *word + 1 : 0); }
  void add(std::vector<Cell> const& cells) {
    add(static_cast<std::uint32_t>(cells.size()));
    words_.insert(words_.end(), cells.begin(), cells.end());
  }
  void add(Run const& run) {
    add(run.end);
    add(run.fill);
  }
  void add(model::Fill const& fill) {
    add(std::uint32_t{fill.powered} << 8 | fill.unpowered);
    add(fill.control);
  }
  void add(model::ExpressionNode const& node) {
    add(static_cast<std::uint32_t>(node.op));
    add(node.left);
    add(node.right);
  }
  void add(model::Signal const& signal) {
    add(static_cast<std::uint32_t>(signal.kind) << 1 | (signal.starts_on ? 1u : 0u));
    add(signal.definition);
    add(signal.reset);
    add(static_cast<std::uint32_t>(signal.ticks));
  }
  void add(model::Port const& port) { add(port.cells); }
  void add(model::Plate const& plate) {
    add(plate.signal);
    add(plate.cells);
  }
  void add(model::Acceptance const& acceptance) {
    add(static_cast<std::uint32_t>(acceptance.kind));
    add(acceptance.cell);
    add(acceptance.condition);
  }
  template <class Each>
  void all(std::vector<Each> const& each) {
    add(static_cast<std::uint32_t>(each.size()));
    for (auto const& one : each) add(one);
  }

 private:
  std::vector<std::uint32_t>& words_;
};

}  // namespace

std::vector<std::uint32_t> Form::key() const {
  constexpr std::size_t room_for_the_rest = 128;
  std::vector<std::uint32_t> key;
  key.reserve(2 * runs.size() + room_for_the_rest);
  auto const& grid = design.grid;
  for (auto extent : {grid.width(), grid.depth(), grid.height()})
    key.push_back(static_cast<std::uint32_t>(extent));
  key.push_back(design.outside_is_open ? 1u : 0u);
  Words words(key);
  words.all(runs);
  words.all(design.fills);
  words.all(design.circuit.signals);
  words.all(design.circuit.expressions);
  words.all(design.circuit.nevers);
  words.all(design.inlets);
  words.all(design.outlets);
  words.all(design.plates);
  words.all(design.acceptances);
  return key;
}

}  // namespace leat::works
