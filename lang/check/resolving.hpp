#pragma once
#include <cstdint>
#include <optional>
#include <string>

#include "lang/check/expectations.hpp"

// How the names in expectations, tables and acceptances are found. Each reports what it does not
// find.
namespace leat::check {

// The name of a junction or works, by its place.
syntax::Word const& name_of(Names const&, std::size_t junction);

// The junction or works that is meant: the one that is named; else the only one; else the only one
// that draws the inlet. `whose` is the span of what needs to know: it speaks of junctions and works
// of its own file only.
std::optional<std::size_t> find_junction(Reading const&, Sights const&,
                                         std::optional<syntax::Word> const& named,
                                         syntax::Word const* inlet, source::Span whose);
std::optional<std::uint32_t> find_inlet(Reading const&, Sights const&, std::size_t junction,
                                        syntax::Word const&);
std::optional<std::uint32_t> find_outlet(Reading const&, Sights const&, std::size_t junction,
                                         syntax::Word const&);
// Whether there is a signal of that name: one of the file, or, such as `second.late`, one of a
// place of the works that is meant.
bool has_signal(Reading const&, Sights const&, std::size_t junction, std::string const& name);
std::optional<std::uint32_t> find_profile(Reading const&, syntax::Word const&);
std::optional<model::FindingKind> find_finding(Reading const&, syntax::Word const&);
std::optional<model::Place> find_place(Reading const&, Sights const&, std::size_t junction,
                                       syntax::PlaceReference const&);

// A span of the text in one line: blanks folded, comments left out.
std::string one_line(std::string_view text);

}  // namespace leat::check
