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

// Tells the faults of a text on the narration stream.
void tell(diagnostics::Sink const&, source::SourceText const&, Terminal&);

// The junctions asked for: all, or the one of that name. None where there is no such junction,
// which has been told.
std::optional<std::vector<std::size_t>> chosen_junctions(Loaded const&, std::string const& name,
                                                         Terminal&);

// Of the chosen junctions those that have the inlet; all of them where none has.
std::vector<std::size_t> with_inlet(Loaded const&, std::vector<std::size_t> const& chosen,
                                    std::string const& inlet);

// Says that something of a junction is not known since some events never come to rest.
void warn_of_restless(render::Subject const&, Terminal&);

// Says why a junction is undecided, and what to do.
void refuse_undecided(render::Subject const&, std::string const& too_much, bool never_rests,
                      Terminal&);

// The id of a name; told where it is unknown. An empty name is "not asked for" and must be dealt
// with before.
std::optional<std::uint32_t> find_name(std::vector<source::Named> const&, std::string const& name,
                                       std::string_view kind, Terminal&);
// The same of ports, by every name that they have.
std::optional<model::InletId> find_inlet(source::SourceMap const&, std::string const& name,
                                         Terminal&);
std::optional<model::OutletId> find_outlet(source::SourceMap const&, std::string const& name,
                                           Terminal&);

}  // namespace leat::cli
