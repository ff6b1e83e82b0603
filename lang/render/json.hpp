#pragma once
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "engine/model/grid.hpp"

// What every JSON document of ours shares; their shapes are in docs/schemas. Included by the
// documents' .cpp files only.
namespace leat::render {

using Json = nlohmann::ordered_json;

// {"format": ..., "version": 1}
Json document_head(std::string const& format);
// [x, y, z]
Json place_json(model::Place);
Json places_json(model::Grid const&, std::vector<model::Cell> const&);
// The document as text that ends in a line end: arrays of numbers or texts stand on one line.
// Bytes that are no UTF-8 become U+FFFD.
std::string printed(Json const&);

}  // namespace leat::render
