#include "lang/render/json.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

#include "lang/render/columns.hpp"
#include "lang/source/code_point.hpp"

namespace leat::render {

namespace {

// Only texts hold what is not ASCII, so that a code point may be written by its number: the value
// is the same, and one who looks at the document sees it as it is.
std::string flat(Json const& value) {
  auto const text = value.dump(-1, ' ', false, Json::error_handler_t::replace);
  if (std::all_of(text.begin(), text.end(), [](char c) { return c >= 0; })) return text;
  std::string result;
  for (std::size_t at = 0; at < text.size();) {
    auto const point = source::code_point_at(text, at);
    bool const is_told_by_number =
        is_unruly(point.value) || (point.value >= 0x7f && point.value < 0xa0);
    if (is_told_by_number)
      result += fmt::format("\\u{:04x}", static_cast<std::uint32_t>(point.value));
    else
      result.append(text, at, point.length);
    at += point.length;
  }
  return result;
}

// Short things stay together: values, empty containers, and lists that hold only plain values or
// lists of numbers.
bool is_flat(Json const& value) {
  if (!value.is_structured() || value.empty()) return true;
  if (value.is_object()) return false;
  return std::all_of(value.begin(), value.end(), [](Json const& item) {
    return item.is_primitive() ||
           (item.is_array() &&
            std::all_of(item.begin(), item.end(), [](Json const& x) { return x.is_primitive(); }));
  });
}

void print(Json const& value, std::size_t indent, std::string& text) {
  if (is_flat(value)) {
    text += flat(value);
    return;
  }
  text += value.is_object() ? '{' : '[';
  bool is_first = true;
  for (auto item = value.begin(); item != value.end(); ++item) {
    text.append(is_first ? "\n" : ",\n").append(indent + 2, ' ');
    if (value.is_object()) text += flat(item.key()) + ": ";
    print(item.value(), indent + 2, text);
    is_first = false;
  }
  text.append("\n").append(indent, ' ');
  text += value.is_object() ? '}' : ']';
}

}  // namespace

Json document_head(std::string const& format) { return {{"format", format}, {"version", 1}}; }

Json place_json(model::Place at) { return Json::array({at.x, at.y, at.z}); }

Json places_json(model::Grid const& grid, std::vector<model::Cell> const& cells) {
  auto list = Json::array();
  for (auto c : cells) list.push_back(place_json(grid.place(c)));
  return list;
}

std::string printed(Json const& document) {
  std::string text;
  print(document, 0, text);
  return text + "\n";
}

}  // namespace leat::render
