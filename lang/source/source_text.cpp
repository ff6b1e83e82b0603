#include "lang/source/source_text.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "lang/source/code_point.hpp"

namespace leat::source {

SourceText::SourceText(std::string name, std::string text) {
  add(std::move(name), std::move(text));
}

std::size_t SourceText::add(std::string name, std::string text) {
  if (text.starts_with("\xef\xbb\xbf")) text.erase(0, 3);
  std::vector<std::size_t> line_begins{0};
  for (auto at = text.find('\n'); at != std::string::npos; at = text.find('\n', at + 1))
    line_begins.push_back(at + 1);
  auto const begin = files_.empty() ? 0 : files_.back().end() + 1;
  files_.push_back({std::move(name), std::move(text), begin, std::move(line_begins)});
  return files_.size() - 1;
}

SourceText::File const& SourceText::at(std::size_t file) const {
  require(file < files_.size(), "no such file");
  return files_[file];
}

std::size_t SourceText::file_of(std::size_t offset) const {
  require(offset <= files_.back().end(), "offset outside the text");
  auto const after = std::upper_bound(files_.begin(), files_.end(), offset,
                                      [](auto at, File const& file) { return at < file.begin; });
  return static_cast<std::size_t>(after - files_.begin()) - 1;
}

std::string_view SourceText::text(Span span) const {
  require(span.begin <= span.end, "span that ends before it begins");
  auto const& file = files_[file_of(span.begin)];
  require(span.end <= file.end(), "span outside the text");
  return std::string_view(file.text).substr(span.begin - file.begin, span.end - span.begin);
}

// File and line are found by bisection, the column by counting the line's code points up to the
// offset: cost grows with the length of that one line.
Position SourceText::position(std::size_t offset) const {
  auto const number = file_of(offset);
  auto const& file = files_[number];
  auto const within = offset - file.begin;
  auto const after = std::upper_bound(file.line_begins.begin(), file.line_begins.end(), within);
  auto const begin = *(after - 1);
  auto const before = std::string_view(file.text).substr(begin, within - begin);
  auto const line = static_cast<std::size_t>(after - file.line_begins.begin());
  return {line, code_point_count(before) + 1, number};
}

std::string_view SourceText::line(std::size_t line, std::size_t number) const {
  auto const& file = at(number);
  auto const& begins = file.line_begins;
  require(line >= 1 && line <= begins.size(), "no such line");
  auto const begin = begins[line - 1];
  auto const end = line < begins.size() ? begins[line] - 1 : file.text.size();
  auto bytes = std::string_view(file.text).substr(begin, end - begin);
  if (bytes.ends_with('\r')) bytes.remove_suffix(1);
  return bytes;
}

}  // namespace leat::source
