#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

// A design file as read: its name, its bytes, and where its lines begin.
namespace leat::source {

// Half-open range of byte offsets into one SourceText.
struct Span {
  std::size_t begin = 0, end = 0;
  bool operator==(Span const&) const = default;
};

// 1-based line and column; columns count code points.
struct Position {
  std::size_t line = 1, column = 1;
  bool operator==(Position const&) const = default;
};

class SourceText {
 public:
  // A leading byte order mark is dropped; nothing else is changed.
  SourceText(std::string name, std::string text);

  std::string const& name() const { return name_; }
  std::string_view text() const { return text_; }
  std::string_view text(Span) const;
  Position position(std::size_t offset) const;
  std::size_t line_count() const { return line_begins_.size(); }
  // The line's bytes without its line end; `line` is 1-based.
  std::string_view line(std::size_t line) const;

 private:
  std::string name_, text_;
  std::vector<std::size_t> line_begins_;
};

}  // namespace leat::source
