#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/judge.hpp"
#include "lang/cli/setting.hpp"
#include "lang/render/picture/scene.hpp"

// What a picture shows of a situation, computed and put together.
namespace leat::cli {

// The water of a situation; no ways and pins yet. The situation must outlive it.
render::PictureScene picture_of(render::Subject const&, Situation const&);

// The ways of a body from an inlet: the shortest one to each of its endings.
render::InletWays ways_of(render::Subject const&, Solved const&, model::InletId, model::ProfileId);

// The findings of a judgement that show in a situation, worst first, numbered from 1.
std::vector<render::Pin> pins_of(render::Subject const&, Judgement const&, Solved const&);

}  // namespace leat::cli
