#include "lang/render/count.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>

namespace leat::render {

namespace {

constexpr Count largest_exact = 18446744073709551616.0L;  // 2^64

}  // namespace

std::string count_text(Count count) {
  if (count < largest_exact) return std::to_string(static_cast<std::uint64_t>(count));
  int exponent = 0;
  auto odd = std::frexp(count, &exponent);
  while (odd != std::floor(odd) && odd < 1000) {
    odd *= 2;
    --exponent;
  }
  if (odd == 1) return fmt::format("2^{}", exponent);
  if (odd < 1000) return fmt::format("{} x 2^{}", static_cast<int>(odd), exponent);
  return fmt::format("about {:.3g}", count);
}

Json count_json(Count count) {
  if (count < largest_exact) return static_cast<std::uint64_t>(count);
  return static_cast<double>(count);
}

}  // namespace leat::render
