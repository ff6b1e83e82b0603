#include "lang/render/csv.hpp"

#include "lang/render/columns.hpp"

namespace leat::render {

namespace {

bool is_like_formula(std::string const& text) {
  if (text.empty()) return false;
  return std::string_view("=+@").find(text.front()) != std::string_view::npos ||
         (text.front() == '-' && text.size() > 1);
}

std::string quoted(std::string const& text) {
  if (text.find_first_of(",\"") == std::string::npos) return text;
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
  for (std::size_t i = 0; i < fields.size(); ++i) {
    if (i > 0) line += ',';
    line += quoted((is_like_formula(fields[i]) ? "'" : "") + showable(fields[i]));
  }
  return line + "\r\n";
}

}  // namespace leat::render
