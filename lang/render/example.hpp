#pragma once
#include <string>
#include <vector>

#include "engine/judge.hpp"
#include "lang/render/documents.hpp"
#include "lang/render/subject.hpp"

// One combination of the inputs told to a player.
namespace leat::render {

// The row in which every input of the judgement stands as built.
logic::Row row_as_built(Subject const&, Judgement const&);
Assignment assignment_of(Judgement const&, logic::Row);

// What a player does to get there from the design as built: "flip divert on, press flush", or
// "nothing: it is so as built".
std::string player_steps(Subject const&, Judgement const&, logic::Row);

// The inputs that the widest condition around the row leaves open: "flush does not matter"; empty
// if none.
std::string what_does_not_matter(Subject const&, Judgement const&, logic::Row,
                                 std::vector<logic::Cube> const& condition);

// "divert=on, flush=off": only inputs that do not stand as built.
std::string setting_text(Subject const&, Assignment const&);

// The command that shows one body's way in that combination.
std::string follow_command(Subject const&, Assignment const&, model::InletId, model::ProfileId);

}  // namespace leat::render
