#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace leat::diagnostics {

// The known name that was probably meant by `written`, or none: when nothing is truly close, and
// when two names are equally close. A wrong guess costs the reader more than none.
std::optional<std::string> near_name(std::string_view written,
                                     std::vector<std::string> const& known);

// Edits (insert, drop, replace, swap neighbours) from one word to the other, counted in code
// points; `limit + 1` as soon as they are more than `limit`.
std::size_t edit_distance(std::string_view from, std::string_view to, std::size_t limit);

}  // namespace leat::diagnostics
