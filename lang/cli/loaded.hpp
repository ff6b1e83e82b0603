#pragma once
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "lang/cli/terminal.hpp"
#include "lang/lower/lower.hpp"
#include "lang/render/documents.hpp"

// A design file read and understood, for the commands that need one.
namespace leat::cli {

struct Loaded {
  source::SourceText text;
  std::vector<lower::Junction> junctions;
  render::Subject subject(std::size_t i) const {
    return {junctions[i].design, junctions[i].map, text, junctions.size() == 1};
  }
};

// None where the file cannot be read or has faults: they have been told on the narration stream.
std::unique_ptr<Loaded> load(std::string const& path, Terminal&);

// The junctions asked for: all, or the one of that name. None where there is no such junction,
// which has been told.
std::optional<std::vector<std::size_t>> chosen_junctions(Loaded const&, std::string const& name,
                                                         Terminal&);

// The id of a name; told where it is unknown. An empty name is "not asked for" and must be dealt
// with before.
std::optional<std::uint32_t> find_name(std::vector<source::Named> const&, std::string const& name,
                                       std::string_view kind, Terminal&);

// Every input with its value: as built, but for what `when` says. None where `when` cannot be
// understood, which has been told.
std::optional<render::Assignment> read_setting(render::Subject const&, std::string const& when,
                                               Terminal&);

// One value a signal, as `solve` takes them.
std::vector<bool> input_values(model::Design const&, render::Assignment const&);

}  // namespace leat::cli
