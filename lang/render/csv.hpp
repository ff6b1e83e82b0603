#pragma once
#include <string>
#include <vector>

namespace leat::render {

// One record of a CSV file as RFC 4180 has them, line end included.
std::string csv_record(std::vector<std::string> const& fields);

}  // namespace leat::render
