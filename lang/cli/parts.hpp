#pragma once
#include <string_view>
#include <vector>

// The small notations of the command line, taken apart. The parts are views of the text.
namespace leat::cli {

// Without the blanks at both ends.
std::string_view trimmed(std::string_view);

// What stands between commas, trimmed; as many as there are commas, and one.
std::vector<std::string_view> parts_of(std::string_view);

// What stands between blanks; none is empty.
std::vector<std::string_view> words_of(std::string_view);

}  // namespace leat::cli
