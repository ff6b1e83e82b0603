#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "engine/body/outcome.hpp"
#include "engine/explore/switching.hpp"
#include "engine/model/design.hpp"
#include "engine/verdicts/expectations.hpp"
#include "lang/render/subject.hpp"

// The word for each thing the engine counts in numbers. Identifiers that travel in documents and
// words that people read are the same wherever they can be.
namespace leat::render {

std::string_view word_of(model::Severity);
std::string_view word_of(model::Side);
std::string_view word_of(body::Verdict);
std::string_view word_of(body::MoveRule);
std::string_view word_of(body::End);
std::string_view word_of(verdicts::Truthfulness);
std::string_view word_of(model::SignalKind);
std::string_view word_of(explore::Danger::Kind);

// "1 cell", "3 cells": the plural adds an s, or is given.
std::string counted(std::size_t, std::string_view one, std::string_view many = {});
// "a", "a and b", "a, b and c"; more than `most` names end in "and 4 more".
std::string listed(std::vector<std::string> const&, std::string_view last = "and",
                   std::size_t most = 6);

// "level 0, row 3, column 4", and "4 3 0" as a design file names the same cell.
std::string place_words(model::Place);
std::string place_code(model::Place);

// The names of things by id.
std::vector<std::string> names_of(std::vector<source::Named> const&,
                                  std::vector<std::uint32_t> const& ids);

}  // namespace leat::render
