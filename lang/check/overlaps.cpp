#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "lang/check/marks.hpp"
#include "lang/check/plant_ports.hpp"
#include "lang/check/signals.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/syntax/print.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;

class Overlaps {
 public:
  Overlaps(Reading const& reading, std::vector<MarkFill> const& fills, Scopes const& scopes,
           Plant const& plant)
      : reading_(reading), fills_(fills), scopes_(scopes), plant_(plant) {}

  bool check() {
    auto const volume = static_cast<std::size_t>(plant_.width) *
                        static_cast<std::size_t>(plant_.depth) *
                        static_cast<std::size_t>(plant_.height);
    owner_.assign(volume, none);
    for (std::uint32_t at = 0; at < plant_.placed.size(); ++at) put(at);
    return is_sound_;
  }

 private:
  static constexpr std::uint32_t none = 0xffffffffu;

  void put(std::uint32_t at) {
    auto const& placed = plant_.placed[at];
    auto const& standing = placed.standing;
    auto const east = standing.eastward();
    auto const step = index(east) - index({});  // wraps where east is north or west, as intended
    bool is_told = false;
    for (int z = 0; z < standing.height; ++z) {
      for (int y = 0; y < standing.depth; ++y) {
        auto const first = standing.outside({0, y, z});
        auto here = index(first);
        for (int x = 0; x < standing.width; ++x, here += step) {
          auto const owner = std::exchange(owner_[here], at);
          if (owner == none || is_told) continue;
          model::Place const there{first.x + x * east.x, first.y + x * east.y, first.z};
          if (are_alike(owner, at, there)) continue;
          report(owner, at, there);
          is_told = true;
        }
      }
    }
  }

  std::size_t index(model::Place at) const {
    auto const width = static_cast<std::size_t>(plant_.width),
               depth = static_cast<std::size_t>(plant_.depth);
    return (static_cast<std::size_t>(at.z) * depth + static_cast<std::size_t>(at.y)) * width +
           static_cast<std::size_t>(at.x);
  }

  std::uint32_t mark_at(std::uint32_t placed, model::Place there) const {
    auto const& standing = plant_.placed[placed].standing;
    auto const own = standing.inside(there);
    auto const cell = (own.z * standing.depth + own.y) * standing.width + own.x;
    return plant_.drawn[plant_.placed[placed].drawn]->marks[static_cast<std::size_t>(cell)];
  }

  bool are_alike(std::uint32_t a, std::uint32_t b, model::Place there) const {
    auto const &one = fills_[mark_at(a, there)], &other = fills_[mark_at(b, there)];
    if (one.powered != other.powered || one.unpowered != other.unpowered) return false;
    if (one.control == nullptr || other.control == nullptr) return one.control == other.control;
    if (syntax::print(*one.control) != syntax::print(*other.control)) return false;
    bool is_same = true;
    for_each_name(*one.control, [&](syntax::Expression const& name) {
      auto const signal = reading_.names.signals.find(name.name);
      is_same = is_same && signal &&
                scopes_.home(plant_.placed[a].scope, *signal) ==
                    scopes_.home(plant_.placed[b].scope, *signal);
    });
    return is_same;
  }

  void report(std::uint32_t a, std::uint32_t b, model::Place there) {
    is_sound_ = false;
    auto const &first = plant_.placed[a], &second = plant_.placed[b];
    auto const glyph = [&](std::uint32_t placed) {
      return reading_.names.marks[mark_at(placed, there)]->glyph.text;
    };
    reading_.sink.report(
        {Listed("overlap"),
         fmt::format("The places '{}' and '{}' overlap in cells that differ", first.name,
                     second.name),
         {second.span,
          fmt::format("'{}' has '{}' at {} {} {}", second.name, glyph(b), there.x, there.y,
                      there.z),
          there},
         {{first.span, fmt::format("'{}' has '{}' there", first.name, glyph(a)), {}}},
         "Move one of them, or draw the cells that they share alike."});
  }

  Reading const& reading_;
  std::vector<MarkFill> const& fills_;
  Scopes const& scopes_;
  Plant const& plant_;
  std::vector<std::uint32_t> owner_;
  bool is_sound_ = true;
};

}  // namespace

bool check_overlaps(Reading const& reading, std::vector<MarkFill> const& fills,
                    Scopes const& scopes, Plant const& plant) {
  return Overlaps(reading, fills, scopes, plant).check();
}

}  // namespace leat::check
