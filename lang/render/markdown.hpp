#pragma once
#include <string>
#include <vector>

// Pieces of Markdown (CommonMark, with the tables of its GitHub dialect), in which a text of a
// design is only text.
namespace leat::render {

// Words of ours with names in them: what would be markup is escaped.
std::string markdown_text(std::string const&);
// A text of the design as code, in which nothing is markup; an empty one stays empty.
std::string markdown_code(std::string const&);

// A table; its first line is the heading. The cells are Markdown already, and `|` is escaped here.
std::string markdown_table(std::vector<std::vector<std::string>> const& lines);

}  // namespace leat::render
