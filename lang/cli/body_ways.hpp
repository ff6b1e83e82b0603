#pragma once
#include "lang/render/telling.hpp"

namespace leat::cli {

// A judged junction with the ways of bodies in its examples: for a finding that bodies meet the
// shortest way to one of its cells, for an expectation about a route to where the body ends. Cost:
// one route graph for each way; where the examples are very many, later ones get no way.
render::JudgedSubject with_body_ways(render::Subject const&, Judgement const&);

}  // namespace leat::cli
