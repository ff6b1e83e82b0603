#include "lang/render/time_scale.hpp"

#include <algorithm>
#include <cmath>

#include "lang/render/columns.hpp"

namespace leat::render {

namespace {

std::size_t label_columns(Stretch const& stretch) { return std::to_string(stretch.from).size(); }

std::size_t natural(Stretch const& stretch) {
  return std::max(static_cast<std::size_t>(stretch.to - stretch.from), label_columns(stretch) + 1);
}

// Up to eight ticks stand to scale; beyond, each doubling takes two columns more.
std::size_t shortened(Stretch const& stretch) {
  constexpr int to_scale = 8;
  auto const ticks = stretch.to - stretch.from;
  if (ticks <= to_scale) return natural(stretch);
  auto const more = std::floor(2 * std::log2(static_cast<double>(ticks) / to_scale));
  return std::max(static_cast<std::size_t>(to_scale) + static_cast<std::size_t>(more),
                  label_columns(stretch) + 2);
}

}  // namespace

std::string_view cut_sign(Look look) { return look.is_ascii ? "~" : "≈"; }

std::vector<Band> time_bands(std::vector<int> const& moments, int end, std::size_t columns) {
  Band all;
  std::size_t whole = 0;
  for (std::size_t i = 0; i < moments.size(); ++i) {
    all.push_back({moments[i], i + 1 < moments.size() ? moments[i + 1] : end, 0});
    whole += natural(all.back());
  }
  std::vector<Band> bands(1);
  std::size_t used = 0;
  for (auto& stretch : all) {
    stretch.columns = whole <= columns ? natural(stretch) : shortened(stretch);
    if (used > 0 && used + stretch.columns > columns) {
      bands.emplace_back();
      used = 0;
    }
    bands.back().push_back(stretch);
    used += stretch.columns;
  }
  return bands;
}

std::string scale_line(Band const& band, Look look) {
  std::string line;
  for (auto const& stretch : band) {
    auto const label = std::to_string(stretch.from);
    if (!stretch.is_cut()) {
      line += padded(label, stretch.columns);
      continue;
    }
    auto const at = stretch.cut_at(label.size());
    line += padded(label, at);
    line += cut_sign(look);
    line.append(stretch.columns - at - 1, ' ');
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

}  // namespace leat::render
