#pragma once
#include <cstddef>
#include <deque>
#include <string>
#include <string_view>
#include <vector>

// Design files as read: their names, their bytes, and where their lines begin.
namespace leat::source {

// Half-open range of byte offsets into one file of a SourceText.
struct Span {
  std::size_t begin = 0, end = 0;
  bool operator==(Span const&) const = default;
};

// 1-based line and column; columns count code points.
struct Position {
  std::size_t line = 1, column = 1;
  std::size_t file = 0;
  bool operator==(Position const&) const = default;
};

// A file and those it includes, one behind the other in one space of offsets. An offset therefore
// tells the file, and two offsets are all that a span needs. Between two files one offset is left
// free: the end of a file is not the beginning of the next one.
class SourceText {
 public:
  // A leading byte order mark is dropped; nothing else is changed.
  SourceText(std::string name, std::string text);

  // Puts a file behind the others and returns its number. Views handed out before stay good.
  std::size_t add(std::string name, std::string text);
  std::size_t file_count() const { return files_.size(); }
  // The first file's, unless another one is asked for.
  std::string const& name(std::size_t file = 0) const { return at(file).name; }
  std::string_view text() const { return files_.front().text; }
  std::string_view file_text(std::size_t file) const { return at(file).text; }
  std::size_t begin_of(std::size_t file) const { return at(file).begin; }

  std::size_t file_of(std::size_t offset) const;
  std::string_view text(Span) const;
  Position position(std::size_t offset) const;
  std::size_t line_count(std::size_t file = 0) const { return at(file).line_begins.size(); }
  // The line's bytes without its line end; `line` is 1-based.
  std::string_view line(std::size_t line, std::size_t file = 0) const;

 private:
  struct File {
    std::string name, text;
    std::size_t begin;                     // offset of its first byte
    std::vector<std::size_t> line_begins;  // from there on
    std::size_t end() const { return begin + text.size(); }
  };
  File const& at(std::size_t file) const;

  std::deque<File> files_;
};

}  // namespace leat::source
