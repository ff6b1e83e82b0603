#pragma once
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace leat::render {

// Writes XML 1.0: every text is escaped, and what XML cannot hold, even as a reference, is a `?`.
class XmlWriter {
 public:
  using Attributes = std::vector<std::pair<std::string_view, std::string>>;

  XmlWriter() : text_("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n") {}
  void begin(std::string_view name, Attributes const& = {});
  // Contract: the element begun last that has not ended.
  void end();
  // An element with nothing but a text in it; without one it is closed at once.
  void element(std::string_view name, Attributes const&, std::string_view text = {});
  std::string const& text() const { return text_; }

 private:
  void put_tag(std::string_view name, Attributes const&);

  std::string text_;
  std::vector<std::string> open_;
};

}  // namespace leat::render
