#pragma once
#include <optional>
#include <vector>

#include "engine/body/route_graph.hpp"
#include "engine/judge.hpp"
#include "lang/diagnostics/diagnostic.hpp"
#include "lang/render/documents.hpp"
#include "lang/render/subject.hpp"
#include "lang/render/told.hpp"

// Judgements put into words and places, once for all formats for programs.
namespace leat::render {

// The way of one body, found by the caller: feet positions, and between each two the step taken.
struct BodyWay {
  std::vector<body::Position> positions;
  std::vector<body::Step> steps;
};

// A judged junction with the ways of bodies in the examples, by finding and by expectation; both
// empty where nobody asked for them.
struct JudgedSubject {
  Subject subject;
  Judgement const& judgement;
  std::vector<std::optional<BodyWay>> of_findings, of_expectations;
};

ToldJunction told(JudgedSubject const&);
// A works has the same parts; what is true of several places is said of the first of them.
ToldJunction told(JudgedWorks const&);
ToldFault told(diagnostics::Diagnostic const&, source::SourceText const&);

}  // namespace leat::render
