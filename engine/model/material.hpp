#pragma once
#include <array>
#include <cstdint>

// Materials are bundles of traits (model section 1); the engine asks for traits, never for names.
namespace leat::model {

struct Material {
  bool is_source = false;      // a placed water source
  bool water_enters = false;   // water may enter (a source holds water already)
  bool body_enters = false;    // a body may be in the cell
  bool carries = false;        // carries a body standing on top
  bool bears_sources = false;  // water sources may form in the cell above it
  bool shows_slope = false;    // the gradient of a current looks through it
  bool is_plate = false;       // pressed by a body; needs a carrying cell below
  bool operator==(Material const&) const = default;
};

using MaterialId = std::uint8_t;

// The built-in materials, in the order of the model's table.
namespace material {
inline constexpr MaterialId rock = 0, open = 1, water = 2, sign = 3, plate = 4;
}

inline constexpr std::array<Material, 5> built_in_materials{{
    {.carries = true, .bears_sources = true},
    {.water_enters = true, .body_enters = true, .shows_slope = true},
    {.is_source = true, .water_enters = true, .body_enters = true, .shows_slope = true},
    {.body_enters = true, .bears_sources = true},
    {.body_enters = true, .is_plate = true},
}};

}  // namespace leat::model
