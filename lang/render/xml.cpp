#include "lang/render/xml.hpp"

#include "engine/contract.hpp"
#include "lang/render/markup.hpp"

namespace leat::render {

namespace {

constexpr std::string_view line_end_in_attribute = "&#10;";

}  // namespace

void XmlWriter::put_tag(std::string_view name, Attributes const& attributes) {
  text_.append(2 * open_.size(), ' ').append("<").append(name);
  for (auto const& [attribute, value] : attributes)
    text_.append(" ")
        .append(attribute)
        .append("=\"")
        .append(escaped(value, line_end_in_attribute))
        .append("\"");
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
  text_.append(">").append(escaped(text, "\n")).append("</").append(name).append(">\n");
}

}  // namespace leat::render
