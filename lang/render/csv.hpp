#pragma once
#include <string>
#include <vector>

namespace leat::render {

// One record of RFC 4180, with its line end. A field with commas or quotes stands in quotes, with
// the quotes in it doubled. One that a spreadsheet would take for a formula, since it begins with
// `=`, `+`, `@` or with `-` and more, gets an apostrophe before it (common practice, no source).
// Control characters become `?`: no field is longer than a line.
std::string csv_record(std::vector<std::string> const& fields);

}  // namespace leat::render
