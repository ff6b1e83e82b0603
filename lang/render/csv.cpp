#include "lang/render/csv.hpp"

namespace leat::render {

namespace {

std::string quoted(std::string const& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string result = "\"";
  for (char c : text) {
    if (c == '"') result += '"';
    result += c;
  }
  return result + '"';
}

}  // namespace

std::string csv_record(std::vector<std::string> const& fields) {
  std::string line;
  for (std::size_t i = 0; i < fields.size(); ++i)
    line.append(i > 0 ? "," : "").append(quoted(fields[i]));
  return line + "\r\n";
}

}  // namespace leat::render
