#pragma once
#include <string>
#include <string_view>

// Text on its way into markup.
namespace leat::render {

// As the content of an element or of an attribute in double quotes: nothing in it is markup any
// more, and what cannot be shown (see showable), or stand in XML even as a reference, is a `?`. Line
// ends are replaced, by default as what cannot be shown.
std::string escaped(std::string_view, std::string_view line_end = "?");

// Cut to so many columns, the last one an ellipsis where something is cut off.
std::string shortened(std::string_view, std::size_t columns);

}  // namespace leat::render
