#pragma once
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "engine/body/capacity.hpp"
#include "engine/body/outcome.hpp"
#include "engine/body/shape.hpp"
#include "engine/judge.hpp"
#include "engine/water/survey.hpp"
#include "engine/works/journey.hpp"
#include "engine/works/judge_works.hpp"
#include "lang/render/subject.hpp"
#include "lang/render/table_sheet.hpp"

// The JSON documents, to the letter of docs/schemas. Keys keep their order; the same results give
// the same bytes.
namespace leat::render {

// The value of each input signal, by its id.
using Assignment = std::map<model::SignalId, bool>;

// What is known of a combination that was put, not led to.
enum class Standing { plain, never_reached, several_waters, another_water };

// leat-design: `leat resolve`.
std::string design_document(std::vector<Subject> const&);

// leat-field: `leat show --as json`.
struct FieldPart {
  Subject subject;
  Assignment assignment;
  std::vector<model::SignalId>
      flips;  // what was done from as built; none: put so, with fresh water
  Standing standing = Standing::plain;
  std::vector<water::WetCell> wet;
};
std::string field_document(std::vector<FieldPart> const&);

// leat-table: `leat table --as json`.
std::string table_document(std::vector<TableSheet> const&);

// leat-trail: `leat follow --as json`.
// How long bodies take from an inlet to an outlet, and how many of them can follow each other.
struct Pace {
  model::OutletId outlet = 0;
  std::optional<int> quickest, longest;  // ticks; none without a bound
  body::Throughput throughput;
};
struct TrailPart {
  Subject subject;
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  Assignment assignment;
  std::vector<model::SignalId> flips;  // as in FieldPart
  Standing standing = Standing::plain;
  body::RouteGraph graph;
  body::Outcome outcome;
  body::Components components;
  std::vector<std::uint32_t> dominators;
  std::vector<Pace> paces;  // by outlet reached
  // Of the inlet that was asked for, where joins lead on: how bodies leave the works.
  std::vector<works::Arrival> arrivals{};
};
std::string trail_document(std::vector<TrailPart> const&);

// A works and what was judged of it.
struct JudgedWorks {
  Subject subject;
  works::WorksJudgement const& judgement;
};

}  // namespace leat::render
