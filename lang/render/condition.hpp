#pragma once
#include <string>
#include <vector>

#include "engine/logic/statement.hpp"
#include "engine/model/circuit.hpp"
#include "lang/source/source_map.hpp"

// Conditions as expressions of the design language.
namespace leat::render {

// `divert and not flush`, `(a and b) or c`, `not (a or b)`, `(a or b) and c`; `on` where
// everything, `off` where nothing is meant. `inputs` are the names that the cubes' bits stand for.
std::string condition_expression(logic::Statement const&, std::vector<std::string> const& inputs);
// Of rows among the reachable ones, in the shortest words that tell them apart from the others.
std::string condition_expression(logic::RowSet const& rows, logic::RowSet const& reachable,
                                 std::vector<std::string> const& inputs);

// The same for a reader: "always", "never", "when divert and not flush".
std::string condition_words(logic::RowSet const& rows, logic::RowSet const& reachable,
                            std::vector<std::string> const& inputs);

// An expression of the circuit, with no more brackets than needed and those that help: operands of
// another two-sided operator.
std::string expression_text(model::Circuit const&, std::vector<source::Named> const& signals,
                            model::ExpressionId);

}  // namespace leat::render
