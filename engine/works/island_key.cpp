#include "engine/works/island_form.hpp"

#include <algorithm>
#include <optional>
#include <string_view>

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

Extent extent_of(Box const& box, std::size_t cells) {
  auto const length = [](int least, int most) { return static_cast<std::size_t>(most - least); };
  auto const width = length(box.least.x, box.most.x), depth = length(box.least.y, box.most.y);
  return {cells, length(box.least.z, box.most.z), std::min(width, depth), std::max(width, depth)};
}

std::size_t Likeness::KeyHash::operator()(std::vector<std::uint32_t> const& key) const {
  std::string_view const bytes(reinterpret_cast<char const*>(key.data()),
                               key.size() * sizeof(std::uint32_t));
  return std::hash<std::string_view>{}(bytes);
}

// Ports of wider bodies name the lowest corner, which a turn does not keep.
Likeness::Likeness(model::Design const& plant) {
  bool const is_narrow = std::none_of(plant.profiles.begin(), plant.profiles.end(),
                                      [](auto const& profile) { return profile.footprint > 1; });
  if (is_narrow)
    other_postures_ = {{false, 1}, {false, 2}, {false, 3}, {true, 0},
                       {true, 1},  {true, 2},  {true, 3}};
}

Likeness::Known Likeness::known(Extent const& extent, std::function<Form(Posture)> const& in) {
  auto form = in({});
  auto key = form.key();
  auto known = numbers_.find(key);
  bool const may_be_turned = !extents_.insert(extent).second;
  for (auto at = other_postures_.begin();
       may_be_turned && known == numbers_.end() && at != other_postures_.end(); ++at) {
    auto turned = in(*at);
    known = numbers_.find(turned.key());
    if (known != numbers_.end()) form = std::move(turned);
  }
  if (known != numbers_.end()) return {std::move(form), known->second, false};
  auto const number = static_cast<std::uint32_t>(numbers_.size());
  numbers_.emplace(std::move(key), number);
  return {std::move(form), number, true};
}

}  // namespace leat::works
