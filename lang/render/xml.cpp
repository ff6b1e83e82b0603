#include "lang/render/xml.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "lang/render/columns.hpp"
#include "lang/source/code_point.hpp"

namespace leat::render {

namespace {

std::string_view reference_of(char32_t c, bool is_attribute) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\n':
      return is_attribute ? "&#10;" : "\n";
    default:
      return {};
  }
}

bool is_forbidden(source::CodePoint const& point) {
  auto const c = point.value;
  return point.length == 0 || c < 0x20 || (c >= 0x7f && c < 0xa0) || c == 0xfffe || c == 0xffff ||
         is_unruly(c);
}

std::string escaped(std::string_view text, bool is_attribute) {
  std::string result;
  for (std::size_t at = 0; at < text.size();) {
    auto const point = source::code_point_at(text, at);
    auto const length = std::max<std::size_t>(point.length, 1);
    auto const reference =
        point.length == 0 ? std::string_view() : reference_of(point.value, is_attribute);
    if (!reference.empty())
      result += reference;
    else if (is_forbidden(point))
      result += '?';
    else
      result += text.substr(at, length);
    at += length;
  }
  return result;
}

}  // namespace

void XmlWriter::put_tag(std::string_view name, Attributes const& attributes) {
  text_.append(2 * open_.size(), ' ').append("<").append(name);
  for (auto const& [attribute, value] : attributes)
    text_.append(" ").append(attribute).append("=\"").append(escaped(value, true)).append("\"");
}

void XmlWriter::begin(std::string_view name, Attributes const& attributes) {
  put_tag(name, attributes);
  text_ += ">\n";
  open_.emplace_back(name);
}

void XmlWriter::end() {
  require(!open_.empty(), "XML: nothing is open");
  auto const name = open_.back();
  open_.pop_back();
  text_.append(2 * open_.size(), ' ').append("</").append(name).append(">\n");
}

void XmlWriter::element(std::string_view name, Attributes const& attributes,
                        std::string_view text) {
  put_tag(name, attributes);
  if (text.empty()) {
    text_ += "/>\n";
    return;
  }
  text_.append(">").append(escaped(text, false)).append("</").append(name).append(">\n");
}

}  // namespace leat::render
