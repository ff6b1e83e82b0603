#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "engine/logic/recording.hpp"
#include "lang/render/look.hpp"
#include "lang/render/subject.hpp"

// A timed run of the signals of a design, told in three ways.
namespace leat::render {

struct WavesSheet {
  Subject subject;  // any junction: the signals are those of the whole design
  std::vector<model::SignalId> shown;
  std::vector<logic::Deed> deeds;
  logic::Recording recording;
};

// A line for each signal in a picture at most `columns` wide, with what was done above it, and
// below it how the run ends. Longer runs go on in further bands; past `most_bands` the rest is
// counted.
std::string waves_text(WavesSheet const&, std::size_t columns, Look);

// A value change dump (IEEE 1364-2001, section 18). The same run gives the same bytes: no date.
// Ticks are exact wherever a second holds a number of them that the standard's time units can
// tell; else each time is rounded to a nanosecond.
std::string waves_vcd(WavesSheet const&);

// leat-waves: `leat waves --as json`.
std::string waves_document(WavesSheet const&);

// "divert on", "ring pressed", "passed left": what a deed does to its input.
std::string deed_words(model::SignalKind, std::string const& name, bool is_on);

// "1 tick", "46 ticks (2.3 s)"
std::string time_words(int ticks, int ticks_per_second);

}  // namespace leat::render
