#pragma once
#include "lang/render/documents.hpp"
#include "lang/render/json.hpp"

namespace leat::render {

// {"divert": true, "flush": false}
Json assignment_json(Subject const&, Assignment const&);

}  // namespace leat::render
