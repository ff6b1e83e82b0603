#include "lang/syntax/weaving.hpp"

#include <string_view>
#include <utility>

namespace leat::syntax {

namespace {

class Weaver {
 public:
  Weaver(std::vector<Comment> const& comments, source::SourceText const& source)
      : comments_(comments), source_(source) {}

  std::vector<WovenLine> woven(std::vector<Line> const& lines) {
    for (std::size_t i = 0; i < lines.size(); ++i) {
      auto const next = i + 1 < lines.size() ? lines[i + 1].origin.begin : source_.text().size();
      put(lines[i], next);
    }
    while (next_ < comments_.size()) put_comment(0);
    return std::move(out_);
  }

 private:
  void put(Line const& line, std::size_t next_begin) {
    auto const first = out_.size();
    bool const closes = line.kind == LineKind::closes_block;
    while (has_comment_before(line.origin.begin)) put_comment(line.indent + (closes ? 2 : 0));
    bool const has_blank = !closes && is_after_empty_line(line.origin.begin);
    auto const inside = comments_before(line.origin.end);
    bool const has_comment_behind =
        next_ + inside < comments_.size() && comments_[next_ + inside].span.begin < next_begin &&
        is_on_line_of(line.origin.end, comments_[next_ + inside].span.begin);
    auto const behind = has_comment_behind || inside == 1;
    auto const above = inside + (has_comment_behind ? 1 : 0) - (behind ? 1 : 0);
    for (std::size_t i = 0; i < above; ++i)
      out_.push_back({nullptr, take_comment(), line.indent, i == 0 && has_blank});
    out_.push_back({&line, behind ? take_comment() : "", line.indent, above == 0 && has_blank});
    begin_paragraph(first, line);
    bool const begins_inside = first > 0 && out_[first - 1].line != nullptr &&
                               out_[first - 1].line->kind == LineKind::opens_block;
    if (first == 0 || begins_inside) out_[first].has_blank_above = false;
  }
  // With the comments above it, unless an empty line parts them from what is before already.
  void begin_paragraph(std::size_t first, Line const& line) {
    if (!line.begins_paragraph) return;
    for (auto i = first; i < out_.size(); ++i)
      if (out_[i].has_blank_above) return;
    out_[first].has_blank_above = true;
  }
  void put_comment(std::size_t indent) {
    bool const has_blank = is_after_empty_line(comments_[next_].span.begin);
    out_.push_back({nullptr, take_comment(), indent, has_blank});
  }

  bool has_comment_before(std::size_t offset) const {
    return next_ < comments_.size() && comments_[next_].span.begin < offset;
  }
  std::size_t comments_before(std::size_t offset) const {
    auto at = next_;
    while (at < comments_.size() && comments_[at].span.begin < offset) ++at;
    return at - next_;
  }
  bool is_on_line_of(std::size_t end, std::size_t at) const {
    return source_.text({end, at}).find('\n') == std::string_view::npos;
  }
  // Whether the line above the one that begins with `offset` is empty.
  bool is_after_empty_line(std::size_t offset) const {
    int line_ends = 0;
    auto const text = source_.text();
    while (offset > 0) {
      char const sign = text[--offset];
      if (sign == '\n' && ++line_ends == 2) return true;
      if (sign != '\n' && sign != '\r' && sign != ' ' && sign != '\t') return false;
    }
    return false;
  }
  std::string take_comment() {
    std::string text(source_.text(comments_[next_++].span));
    text.erase(text.find_last_not_of(" \t") + 1);
    return text;
  }

  std::vector<Comment> const& comments_;
  source::SourceText const& source_;
  std::vector<WovenLine> out_;
  std::size_t next_ = 0;
};

}  // namespace

std::vector<WovenLine> woven(std::vector<Line> const& lines, std::vector<Comment> const& comments,
                             source::SourceText const& source) {
  return Weaver(comments, source).woven(lines);
}

}  // namespace leat::syntax
