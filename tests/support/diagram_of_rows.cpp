#include "tests/support/diagram_of_rows.hpp"

namespace leat::drawn {

using logic::Diagram;
using logic::Row;
using logic::RowSet;

namespace {

Diagram::Function from(Diagram& diagram, RowSet const& rows, Diagram::Level level) {
  if (rows.inputs() == 0) return rows.contains(0) ? Diagram::always : Diagram::never;
  auto const off = from(diagram, rows.half(false), level + 1);
  auto const on = from(diagram, rows.half(true), level + 1);
  return diagram.node(level, off, on);
}

}  // namespace

Diagram::Function diagram_of(Diagram& diagram, RowSet const& rows) {
  return from(diagram, rows, 0);
}

RowSet rows_of(Diagram const& diagram, Diagram::Function f, int inputs) {
  RowSet rows(inputs);
  for (Row row = 0; row < rows.row_count(); ++row) {
    std::vector<bool> is_on;
    for (int i = 0; i < inputs; ++i) is_on.push_back((row >> (inputs - 1 - i) & 1u) != 0);
    if (diagram.is_true(f, is_on)) rows.insert(row);
  }
  return rows;
}

RowSet random_rows(int inputs, std::mt19937& dice, unsigned long one_in) {
  RowSet rows(inputs);
  for (Row row = 0; row < rows.row_count(); ++row) {
    if (dice() % one_in == 0) rows.insert(row);
  }
  return rows;
}

}  // namespace leat::drawn
