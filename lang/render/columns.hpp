#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

// Text measured and set in terminal columns.
namespace leat::render {

// Columns of one code point: 0 for combining marks, 2 for wide ones, else 1 (ambiguous counts 1).
int columns_of(char32_t);
// Columns of a text; a byte that is no UTF-8 counts 1, as it is shown by one sign.
std::size_t columns_of(std::string_view);

// Filled up with blanks; longer texts stay as they are.
std::string padded(std::string_view, std::size_t columns);
std::string padded_left(std::string_view, std::size_t columns);

// The text as it can be shown: control characters, marks that turn the direction of writing and
// bytes that are no UTF-8 become `?`.
std::string showable(std::string_view);

// Words set into lines of at most `columns`; later lines begin with `indent` blanks. A longer word
// has a line for itself.
std::string wrapped(std::string_view words, std::size_t columns, std::size_t indent);

// Rows of cells as aligned columns with two blanks between, each row with `indent` blanks before
// and none after it.
std::string aligned(std::vector<std::vector<std::string>> const& rows, std::size_t indent);

}  // namespace leat::render
