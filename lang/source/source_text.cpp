#include "lang/source/source_text.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "lang/source/code_point.hpp"

namespace leat::source {

SourceText::SourceText(std::string name, std::string text)
    : name_(std::move(name)), text_(std::move(text)) {
  if (text_.starts_with("\xef\xbb\xbf")) text_.erase(0, 3);
  line_begins_.push_back(0);
  for (auto at = text_.find('\n'); at != std::string::npos; at = text_.find('\n', at + 1))
    line_begins_.push_back(at + 1);
}

std::string_view SourceText::text(Span span) const {
  require(span.begin <= span.end && span.end <= text_.size(), "span outside the text");
  return std::string_view(text_).substr(span.begin, span.end - span.begin);
}

// The line is found by bisection in the line index, the column by counting the line's code points
// up to the offset: cost grows with the length of that one line.
Position SourceText::position(std::size_t offset) const {
  require(offset <= text_.size(), "offset outside the text");
  auto const after = std::upper_bound(line_begins_.begin(), line_begins_.end(), offset);
  auto const begin = *(after - 1);
  auto const before = std::string_view(text_).substr(begin, offset - begin);
  return {static_cast<std::size_t>(after - line_begins_.begin()), code_point_count(before) + 1};
}

std::string_view SourceText::line(std::size_t line) const {
  require(line >= 1 && line <= line_begins_.size(), "no such line");
  auto const begin = line_begins_[line - 1];
  auto const end = line < line_begins_.size() ? line_begins_[line] - 1 : text_.size();
  auto bytes = std::string_view(text_).substr(begin, end - begin);
  if (bytes.ends_with('\r')) bytes.remove_suffix(1);
  return bytes;
}

}  // namespace leat::source
