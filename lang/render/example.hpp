#pragma once
#include <string>
#include <vector>

#include "engine/judge.hpp"
#include "lang/render/documents.hpp"
#include "lang/render/subject.hpp"

// One combination, and the way to it, told to a player.
namespace leat::render {

// Whether it is undecided since the signals never come to rest as built.
bool never_rests(Judgement const&);

// Why nothing is known then: "1048576 rounds did not tell whether the signals come to rest".
std::string unended_words(explore::Unended const&);

Assignment assignment_of(Judgement const&, logic::Row);
// The example's combination, by what a player sets: where wires stand for levers
// (works/islands.hpp), the levers as its flips leave them.
Assignment assignment_of(Subject const&, Judgement const&, explore::Example const&);

// What a player does, step by step: "flip divert on", "press flush", "let go of flush".
std::vector<std::string> step_words(Subject const&, std::vector<model::SignalId> const& flips);

// The same in one line: "flip divert on, press flush, let go of flush", or "nothing to
// do: it is so as built". Steps that come again and again are counted.
std::string player_steps(Subject const&, std::vector<model::SignalId> const& flips);

// What is flipped before an event, and what makes it happen: the event itself, or, where it is a
// wire, the last of the flips.
struct BeforeEvent {
  std::vector<model::SignalId> flips;
  model::SignalId switched = 0;
};
BeforeEvent before_event(Subject const&, std::vector<model::SignalId> const& flips,
                         model::SignalId event);

// The same and the event: "flip divert on, then flip divert off".
std::string steps_then(Subject const&, std::vector<model::SignalId> const& flips,
                       model::SignalId event);

// Where among the reachable combinations rows lie: "not divert (1 of 2 combinations)".
std::string where_words(Subject const&, Judgement const&, logic::RowSet const& rows);

// "kiln, nothing, press": where bodies ended, one after the other.
std::string dealt_words(Subject const&, std::vector<std::optional<model::OutletId>> const&);

// The signals that the widest condition around the row leaves open: "flush does not matter"; empty
// if none.
std::string what_does_not_matter(Subject const&, Judgement const&, logic::Row,
                                 std::vector<logic::Cube> const& condition);

// "divert=on, flush=off": only inputs and memory that do not stand as built.
std::string setting_text(Subject const&, Assignment const&);

// "everything as built", "divert=on", or "flip divert on, flip divert off".
std::string situation_text(Subject const&, Assignment const&,
                           std::vector<model::SignalId> const& flips);

// What a reader of such a combination must know; empty where it is plain.
std::string_view caveat_of(Standing);

// How the commands are told the example: by its setting where its water is the fresh one, else by
// what was done. Empty where nothing needs to be said, else with a blank before it.
std::string way_option(Subject const&, Judgement const&, explore::Example const&);

// A file name as a shell takes it.
std::string shell_word(std::string const&);

// The same as `--do` takes it: "divert on, flush off".
std::string script_of(Subject const&, std::vector<model::SignalId> const& flips);

// The command that shows one body's way, as `way` says (way_option); in the example.
std::string follow_command(Subject const&, model::InletId, model::ProfileId,
                           std::string const& way);
std::string follow_command(Subject const&, Judgement const&, explore::Example const&,
                           model::InletId, model::ProfileId);

// The command that shows what changes do to bodies inside.
std::string guard_command(Subject const&);

// "120 ticks (6 s)".
std::string time_words(Subject const&, int ticks);

}  // namespace leat::render
