#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/logic/recording.hpp"
#include "lang/cli/terminal.hpp"
#include "lang/render/subject.hpp"

// What a player does in a timed run, as it is written on the command line:
//
//   divert, wait 20 ticks, ring and flush off, wait 2 s
//
// Commas stand between what comes one after the other, each one tick later unless a wait between
// them says how long; `and` between what is done in the same tick. A lever is flipped and a plate
// pressed or left by its name, or set by NAME on and NAME off; a button is pressed, and goes off by
// itself.
namespace leat::cli {

struct Script {
  std::vector<logic::Deed> deeds;  // ascending by tick
  int ticks = 0;                   // up to the last deed, with the waits after it
};

// None where it cannot be understood, which has been told.
std::optional<Script> read_script(render::Subject const&, std::string const& text, Terminal&);

// "20 ticks" or "2 s" in ticks; none where it is neither.
std::optional<int> ticks_of(std::string_view text, int ticks_per_second);

}  // namespace leat::cli
