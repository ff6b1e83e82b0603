#pragma once
#include <string>
#include <string_view>

// How the text output looks: colour by the part that a piece of text plays, and a plain fallback.
// Every output says the same without colour.
namespace leat::render {

enum class Role { plain, strong, quiet, error, warning, note, good, water, named };

struct Look {
  bool is_coloured = false;
  bool is_ascii = false;  // no character outside ASCII but those of the design itself
};

std::string painted(Look, Role, std::string_view text);

}  // namespace leat::render
