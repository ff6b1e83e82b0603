#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/works/judge_works.hpp"
#include "lang/render/check_report.hpp"
#include "lang/render/documents.hpp"

// What `leat check` says of a works: what is wrong in each of its parts, once for all places where
// the part stands; what is wrong with the whole; expectations that do not hold.
namespace leat::render {

std::string works_report(JudgedWorks const&, Look);
// One line each, as for a junction.
std::string works_lines(JudgedWorks const&);
void add(Summary&, JudgedWorks const&);

// Where the copies of a part stand: "first", or "first+second" where it reaches over both.
std::vector<std::string> places_of(JudgedWorks const&, std::uint32_t part);

// The findings of the whole as a judgement without combinations, for those who tell findings.
Judgement whole_of(works::WorksJudgement const&);

// What is flipped from as built; none where memory would have to be led there first.
std::optional<std::vector<model::SignalId>> flips_to(JudgedWorks const&, works::Instance const&);

// When an expectation fails, what happens then or else why it has its verdict, and the command that
// shows it.
struct ClaimWords {
  std::string when, outcome, remedy, command;
};
ClaimWords claim_words(JudgedWorks const&, std::size_t expectation);

// "divert=on, turn[3]=on": what differs from the plant as built.
std::string instance_words(JudgedWorks const&, works::Instance const&);

}  // namespace leat::render
