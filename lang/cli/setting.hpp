#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/judge.hpp"
#include "lang/cli/terminal.hpp"
#include "lang/render/documents.hpp"

// What is put, and what is done, on the command line.
namespace leat::cli {

// One combination with its settled water, as asked for on the command line: the setting that
// `when` says, with fresh water, or what `deeds` lead to from as built. Inputs and memory are in
// the assignment. None where it cannot be understood, which has been told.
struct Situation {
  Solved solved;
  render::Assignment assignment;
  std::vector<model::SignalId> flips;  // none where it was put by `when`
  render::Standing standing = render::Standing::plain;
};
std::optional<Situation> read_situation(render::Subject const&, std::string const& when,
                                        std::string const& deeds, Terminal&);

// What is done from as built, as flips of inputs one after the other: "divert, ring, flush on".
std::optional<std::vector<model::SignalId>> read_flips(render::Subject const&,
                                                       std::string const& deeds, Terminal&);

}  // namespace leat::cli
