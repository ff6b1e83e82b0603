#include "lang/render/picture/palette.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "tests/support/catch.hpp"

using namespace leat::render;

namespace {

using Rgb = std::array<double, 3>;  // linear light, 0 to 1
using Matrix = std::array<Rgb, 3>;

int hex(char c) { return c <= '9' ? c - '0' : c - 'a' + 10; }

// sRGB to linear light: IEC 61966-2-1.
Rgb linear(std::string_view colour) {
  Rgb result{};
  for (std::size_t i = 0; i < 3; ++i) {
    auto const v = (16 * hex(colour[1 + 2 * i]) + hex(colour[2 + 2 * i])) / 255.0;
    result[i] = v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
  }
  return result;
}

double luminance(Rgb c) { return 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2]; }

// WCAG 2.2, "contrast ratio".
double contrast(std::string_view one, std::string_view other) {
  auto const a = luminance(linear(one)), b = luminance(linear(other));
  return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

// Machado, Oliveira, Fernandes: A physiologically-based model for simulation of color vision
// deficiency, 2009, table for severity 1.0 (from memory): in linear light.
struct Sight {
  char const* name;
  Matrix matrix;
};
constexpr std::array<Sight, 4> sights{{{"all colours", {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}},
                                       {"protanopia",
                                        {{{0.152286, 1.052583, -0.204868},
                                          {0.114503, 0.786281, 0.099216},
                                          {-0.003882, -0.048116, 1.051998}}}},
                                       {"deuteranopia",
                                        {{{0.367322, 0.860646, -0.227968},
                                          {0.280085, 0.672501, 0.047413},
                                          {-0.011820, 0.042940, 0.968881}}}},
                                       {"tritanopia",
                                        {{{1.255528, -0.076749, -0.178779},
                                          {-0.078411, 0.930809, 0.147602},
                                          {0.004733, 0.691367, 0.303900}}}}}};

Rgb seen(Matrix const& matrix, Rgb c) {
  Rgb result{};
  for (std::size_t i = 0; i < 3; ++i) {
    auto const v = matrix[i][0] * c[0] + matrix[i][1] * c[1] + matrix[i][2] * c[2];
    result[i] = std::clamp(v, 0.0, 1.0);
  }
  return result;
}

// CIE L*a*b*, white of D65.
Rgb lab(Rgb c) {
  auto const f = [](double t) {
    return t > 216.0 / 24389 ? std::cbrt(t) : t * 841 / 108 + 4.0 / 29;
  };
  auto const x = f((0.4124 * c[0] + 0.3576 * c[1] + 0.1805 * c[2]) / 0.95047);
  auto const y = f(luminance(c));
  auto const z = f((0.0193 * c[0] + 0.1192 * c[1] + 0.9505 * c[2]) / 1.08883);
  return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

// CIE 1976 difference: about 2.3 is just noticeable.
double difference(Sight const& sight, std::string_view one, std::string_view other) {
  auto const a = lab(seen(sight.matrix, linear(one))), b = lab(seen(sight.matrix, linear(other)));
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

Ink const& ink(std::string_view name) {
  auto const* found = std::find_if(inks.begin(), inks.end(),
                                   [&](Ink const& candidate) { return candidate.name == name; });
  REQUIRE(found != inks.end());
  return *found;
}

// The grounds that an ink is drawn on.
std::vector<Ink> grounds(Ink const& drawn) {
  std::vector<Ink> found;
  std::string_view rest = drawn.on;
  while (!rest.empty()) {
    auto const end = std::min(rest.find(' '), rest.size());
    auto const word = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    auto const before = found.size();
    for (auto const& candidate : inks) {
      bool const is_meant = word.ends_with('*')
                                ? candidate.name.starts_with(word.substr(0, word.size() - 1))
                                : candidate.name == word;
      if (is_meant) found.push_back(candidate);
    }
    CHECK(found.size() > before);  // each word means some ground
  }
  return found;
}

constexpr std::array<Theme, 3> themes{Theme::light, Theme::dark, Theme::paper};

}  // namespace

TEST_CASE("the measures of contrast and difference are those of their sources") {
  CHECK(std::abs(contrast("#000000", "#ffffff") - 21) < 1e-9);
  CHECK(std::abs(contrast("#777777", "#ffffff") - 4.48) < 0.01);  // WCAG's well-known near miss
  CHECK(std::abs(lab(linear("#ffffff"))[0] - 100) < 0.01);
  // A red and a green of one lightness are nearly the same without green-sensitive cones.
  CHECK(difference(sights[0], "#b05a2b", "#6b7a2b") >
        3 * difference(sights[2], "#b05a2b", "#6b7a2b"));
}

TEST_CASE("texts have a contrast of 4.5 and shapes of 3 on all that they are drawn on (WCAG 2.2)") {
  std::size_t pairs = 0;
  for (auto theme : themes) {
    for (auto const& drawn : inks) {
      if (drawn.use == InkUse::ground) continue;
      for (auto const& ground : grounds(drawn)) {
        INFO(drawn.name << " on " << ground.name << " in theme " << static_cast<int>(theme));
        auto const least = drawn.use == InkUse::text ? 4.5 : 3.0;
        CHECK(contrast(colour_of(drawn, theme), colour_of(ground, theme)) >= least);
        ++pairs;
      }
    }
  }
  CHECK(pairs > 100);
}

TEST_CASE("neighbouring meanings stay different in three deficiencies of sight") {
  struct Neighbours {
    std::vector<std::string_view> names;
    double least;
  };
  std::vector<Neighbours> const groups{{{"trail1", "trail2", "trail3", "trail4", "trail5"}, 10},
                                       {{"error", "warning", "note"}, 10},
                                       {{"paper", "rock", "water8"}, 10},
                                       {{"rock", "water4"}, 10},
                                       {{"switch", "inlet"}, 10},
                                       {{"fitting", "switch"}, 10},
                                       {{"paper", "water1"}, 4}};
  for (auto theme : {Theme::light, Theme::dark}) {
    for (auto const& sight : sights) {
      for (auto const& [names, least] : groups) {
        for (std::size_t i = 0; i < names.size(); ++i) {
          for (std::size_t j = i + 1; j < names.size(); ++j) {
            INFO(names[i] << " and " << names[j] << ", " << sight.name << ", theme "
                          << static_cast<int>(theme));
            CHECK(difference(sight, colour_of(ink(names[i]), theme),
                             colour_of(ink(names[j]), theme)) >= least);
          }
        }
      }
    }
  }
}

TEST_CASE(
    "water is a scale of lightness, each class noticeably apart from the next, in every theme") {
  for (auto theme : themes) {
    double before = -1;
    for (int k = 1; k < water_classes; ++k) {
      auto const one = colour_of(ink("water" + std::to_string(k)), theme);
      auto const next = colour_of(ink("water" + std::to_string(k + 1)), theme);
      for (auto const& sight : sights) {
        INFO("water" << k << ", " << sight.name << ", theme " << static_cast<int>(theme));
        CHECK(difference(sight, one, next) >= 2);
      }
      auto const step = lab(linear(next))[0] - lab(linear(one))[0];
      CHECK(step * (theme == Theme::dark ? 1 : -1) > 0);
      before = step;
    }
    CHECK(before != -1);
  }
}

TEST_CASE("the automatic style is dark on screens only, a chosen one has no condition") {
  auto const automatic = style_sheet(Theme::automatic);
  CHECK(automatic.find("@media screen and (prefers-color-scheme:dark)") != std::string::npos);
  CHECK(style_sheet(Theme::dark).find("@media") == std::string::npos);
  CHECK(style_sheet(Theme::paper).find(".f-paper{fill:#ffffff}") != std::string::npos);
}
