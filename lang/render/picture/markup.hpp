#pragma once
#include <string>
#include <string_view>

// Text on its way into markup.
namespace leat::render {

// As the content of an element or of a quoted attribute: nothing in it is markup any more, and
// what cannot be shown (see showable) is a `?`.
std::string escaped(std::string_view);

// Cut to so many columns, the last one an ellipsis where something is cut off.
std::string shortened(std::string_view, std::size_t columns);

}  // namespace leat::render
