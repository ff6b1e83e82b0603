#pragma once
#include <string>
#include <vector>

#include "engine/works/conditions.hpp"
#include "lang/render/count.hpp"

// Conditions of a plant, which may have hundreds of signals, as expressions of the design language.
namespace leat::render {

// `inputs`: the names of the conditions' variables. Among what can come about; where the shortest
// sum that is found has more than `most` products it is not written, and the text says so.
std::string condition_expression(works::Conditions&, works::Function,
                                 std::vector<std::string> const& inputs, std::size_t most = 64);
// The same of any diagram, `reachable` being what can come about.
std::string condition_expression(logic::Diagram&, works::Function, works::Function reachable,
                                 std::vector<std::string> const& inputs, std::size_t most = 64);
// Of an expression: "always", "never", "when divert and not flush".
std::string condition_words(std::string const& expression);

// How many combinations of those that can come about.
Count combinations_of(works::Conditions const&, works::Function);
// "6 of 8 combinations".
std::string where_words(works::Conditions&, works::Function,
                        std::vector<std::string> const& inputs);

}  // namespace leat::render
