#include "lang/render/json.hpp"

#include <algorithm>

namespace leat::render {

namespace {

std::string flat(Json const& value) {
  return value.dump(-1, ' ', false, Json::error_handler_t::replace);
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
