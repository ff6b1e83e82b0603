#pragma once
#include <random>

#include "engine/logic/diagram.hpp"
#include "engine/logic/row_set.hpp"

// The same function as packed rows and as a diagram: input i of the rows is the variable of level
// i.
namespace leat::drawn {

logic::Diagram::Function diagram_of(logic::Diagram&, logic::RowSet const&);
logic::RowSet rows_of(logic::Diagram const&, logic::Diagram::Function, int inputs);

// One row in so many, by the dice.
logic::RowSet random_rows(int inputs, std::mt19937& dice, unsigned long one_in);

}  // namespace leat::drawn
