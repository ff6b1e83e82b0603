#pragma once
#include <array>
#include <string>
#include <string_view>

// The colours of pictures, in one table: what a colour means, and how it looks on light ground, on
// dark ground and on paper. Every meaning has a shape or a pattern too, so that nothing is lost
// where colours are not seen; tests compute the contrast of each pair that meets in a picture (WCAG
// 2.2) and the difference that is left of neighbouring meanings in three deficiencies of sight.
namespace leat::render {

enum class Theme { automatic, light, dark, paper };

// What a colour is there for: the ground that others stand on, a shape, or a text.
enum class InkUse { ground, shape, text };

struct Ink {
  std::string_view name;
  InkUse use;
  std::string_view light, dark, paper;
  std::string_view on;  // the grounds it is drawn on: names, or beginnings of names that end in *
};

// Water from the weakest to the strongest class, then the rest.
inline constexpr int water_classes = 8;

inline constexpr std::array<Ink, 29> inks{{
    {"paper", InkUse::ground, "#fbf8f1", "#14181d", "#ffffff", ""},
    {"grid", InkUse::ground, "#e0dacd", "#2c333b", "#cccccc", ""},
    {"water1", InkUse::ground, "#e2f0f5", "#17303d", "#f7f7f7", ""},
    {"water2", InkUse::ground, "#d0e7f0", "#193848", "#f1f1f1", ""},
    {"water3", InkUse::ground, "#beddeb", "#1b4053", "#eaeaea", ""},
    {"water4", InkUse::ground, "#acd3e5", "#1d485f", "#e3e3e3", ""},
    {"water5", InkUse::ground, "#99c9df", "#1f506b", "#dcdcdc", ""},
    {"water6", InkUse::ground, "#86bed8", "#215877", "#d4d4d4", ""},
    {"water7", InkUse::ground, "#72b3d1", "#236083", "#cccccc", ""},
    {"water8", InkUse::ground, "#5ca6c9", "#256890", "#c2c2c2", ""},
    {"rock", InkUse::ground, "#8f8678", "#3d3a36", "#dcdcdc", ""},
    {"hatch", InkUse::ground, "#776e62", "#5a564f", "#7a7a7a", ""},
    {"wall", InkUse::shape, "#22262b", "#c4beb2", "#000000", "paper rock water*"},
    {"ink", InkUse::text, "#22262b", "#ece8df", "#000000", "paper"},
    {"quiet", InkUse::text, "#5d6066", "#a9adb3", "#333333", "paper"},
    {"current", InkUse::text, "#06304a", "#dcf1fb", "#000000", "water*"},
    {"fitting", InkUse::shape, "#5f4118", "#d6b37c", "#222222", "paper water*"},
    {"switch", InkUse::shape, "#7a1f6e", "#f0a6e4", "#000000", "paper water*"},
    {"inlet", InkUse::shape, "#14502f", "#8fdcae", "#000000", "paper water*"},
    {"outlet", InkUse::shape, "#14502f", "#8fdcae", "#000000", "paper water*"},
    {"error", InkUse::shape, "#8f1010", "#ff9c90", "#000000", "paper"},
    {"warning", InkUse::shape, "#8a6000", "#f2c14e", "#000000", "paper"},
    {"note", InkUse::shape, "#34506e", "#a9c7e6", "#000000", "paper"},
    {"number", InkUse::text, "#ffffff", "#14181d", "#ffffff", "error warning note"},
    {"trail1", InkUse::shape, "#a0180c", "#ff9a86", "#000000", "paper"},
    {"trail2", InkUse::shape, "#3f2a8c", "#c9bcff", "#000000", "paper"},
    {"trail3", InkUse::shape, "#937600", "#e8cf5a", "#000000", "paper"},
    {"trail4", InkUse::shape, "#0f5c55", "#3cc2b2", "#000000", "paper"},
    {"trail5", InkUse::shape, "#22262b", "#ece8df", "#000000", "paper"},
}};

inline constexpr std::size_t trail_inks = 5;

// The colour of an ink; contract: a theme that is not automatic.
std::string_view colour_of(Ink const&, Theme);

// The style of a picture: for each ink NAME the classes f-NAME, which fills, and s-NAME, which
// draws lines. Automatic is light, and dark on screens whose reader prefers that; print stays
// light.
std::string style_sheet(Theme);

}  // namespace leat::render
