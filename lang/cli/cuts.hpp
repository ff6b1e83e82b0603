#pragma once
#include <optional>
#include <string>
#include <vector>

#include "lang/cli/options.hpp"
#include "lang/cli/terminal.hpp"
#include "lang/render/picture/scene.hpp"

namespace leat::cli {

// What of a junction is to be drawn: the levels from the top down, then the sections; sections
// alone where they are named and no level is. None where the options ask for what is not there,
// which has been told.
std::optional<std::vector<render::Cut>> cuts_of(render::Subject const&, DrawOptions const&,
                                                Terminal&);

}  // namespace leat::cli
