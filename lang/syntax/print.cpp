#include "lang/syntax/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "lang/source/code_point.hpp"
#include "lang/syntax/wording.hpp"

namespace leat::syntax {

namespace {

// Writes lines and puts the comments back among them. A comment is told by its offset: one that
// began before a line's origin goes above it, one inside the origin or on the same line after it
// goes behind it. Invariant: comments come out in their order, each once. Cost: one pass over lines
// and comments.
class Printer {
 public:
  Printer(std::vector<Comment> const& comments, source::SourceText const& source)
      : comments_(comments), source_(source) {}

  std::string take() && { return std::move(out_); }
  void blank_line() {
    if (!out_.empty()) out_ += '\n';
  }
  void line(std::string const& text, Span origin) {
    comments_before(origin.begin);
    write(text);
    comment_behind(origin.end);
    out_ += '\n';
  }
  void open(std::string const& head, Span origin) {
    line(head + " {", origin);
    ++depth_;
  }
  // `end` is past the block's last token.
  void close(std::size_t end) {
    comments_before(end);
    --depth_;
    write("}");
    comment_behind(end);
    out_ += '\n';
  }
  void comments_before(std::size_t offset) {
    for (; has_comment_before(offset); ++next_) {
      write(comment());
      out_ += '\n';
    }
  }
  bool has_comment_before(std::size_t offset) const {
    return next_ < comments_.size() && comments_[next_].span.begin < offset;
  }

 private:
  std::string comment() const {
    std::string text(source_.text(comments_[next_].span));
    text.erase(text.find_last_not_of(" \t") + 1);
    return text;
  }
  void write(std::string const& text) { out_ += std::string(2 * depth_, ' ') + text; }

  // One at most: a second one goes above whatever comes next.
  void comment_behind(std::size_t end) {
    if (has_comment_before(end) || is_on_line_of(end)) {
      out_ += "  " + comment();
      ++next_;
    }
  }
  bool is_on_line_of(std::size_t end) const {
    if (next_ >= comments_.size()) return false;
    auto const between = source_.text().substr(end, comments_[next_].span.begin - end);
    return between.find('\n') == std::string_view::npos;
  }

  std::vector<Comment> const& comments_;
  source::SourceText const& source_;
  std::string out_;
  std::size_t next_ = 0, depth_ = 0;
};

// The origin of a block's head: from the block's first byte to the end of what stands before the
// brace.
Span head(Span block, std::size_t end) { return {block.begin, end}; }
Span head(Span block, std::string_view word) { return {block.begin, block.begin + word.size()}; }

template <class Lines>
void put_block(Printer& out, std::string const& text, Span origin, Lines const& lines, Span whole) {
  out.open(text, origin);
  for (auto const& line : lines) out.line(line_of(line), line.span);
  out.close(whole.end);
}

void put(Printer& out, SignalsDeclaration const& node) {
  put_block(out, "signals", head(node.span, "signals"), node.signals, node.span);
}

void put(Printer& out, MaterialsDeclaration const& node) {
  put_block(out, "materials", head(node.span, "materials"), node.materials, node.span);
}

void put(Printer& out, MarksDeclaration const& node) {
  put_block(out, "marks", head(node.span, "marks"), node.marks, node.span);
}

void put(Printer& out, PracticeDeclaration const& node) {
  put_block(out, "practice", head(node.span, "practice"), node.settings, node.span);
}

void put(Printer& out, BodyDeclaration const& node) {
  put_block(out, "body " + node.name.text, head(node.span, node.name.span.end), node.properties,
            node.span);
}

void put(Printer& out, AcceptDeclaration const& node) { out.line(line_of(node), node.span); }

void put(Printer& out, ExpectDeclaration const& node) {
  auto const end = node.junction ? node.junction->span.end
                   : node.title  ? node.title->span.end
                                 : node.span.begin + std::string_view("expect").size();
  put_block(out, head_of(node), head(node.span, end), node.clauses, node.span);
}

// A level's span ends at its number, so its brace closes at the end of its last row.
void put(Printer& out, LevelDeclaration const& level) {
  out.open(head_of(level), level.span);
  for (auto const& row : level.rows)
    out.line(fmt::format("|{}|", row.text), {row.span.begin - 1, row.span.end + 1});
  out.close(level.rows.empty() ? level.span.end : level.rows.back().span.end + 1);
}

void put(Printer& out, JunctionDeclaration const& node) {
  auto const end = node.title ? node.title->span.end : node.name.span.end;
  out.open(head_of(node), head(node.span, end));
  auto const put_outside = [&] { out.line("outside " + node.outside->text, node.outside->span); };
  bool is_outside_due = node.outside.has_value();
  for (auto const& level : node.levels) {
    if (is_outside_due && node.outside->span.begin < level.span.begin) {
      put_outside();
      is_outside_due = false;
    }
    put(out, level);
  }
  if (is_outside_due) put_outside();
  out.close(node.span.end);
}

std::string padded(std::string const& word, std::size_t width) {
  return word + std::string(width - std::min(width, source::code_point_count(word)), ' ');
}

std::string table_row(TableRow const& row, TableDeclaration const& table) {
  std::string line;
  for (std::size_t i = 0; i < row.settings.size(); ++i) {
    auto const width =
        i < table.headings.size() ? source::code_point_count(table.headings[i].text) : 1;
    line += padded(row.settings[i].text, width) + " ";
  }
  line += "| ";
  for (auto const& outlet : row.outlets)
    line += (&outlet == &row.outlets.front() ? "" : ", ") + outlet.text;
  return line;
}

void put(Printer& out, TableDeclaration const& node) {
  auto const end = node.junction ? node.junction->span.end : node.inlet.span.end;
  out.open(head_of(node), head(node.span, end));
  std::string headings;
  for (auto const& heading : node.headings) headings += heading.text + " ";
  auto const from = node.headings.empty() ? end : node.headings.front().span.begin;
  auto const to = node.headings.empty() ? end : node.headings.back().span.end;
  out.line(headings + "| route", {from, to});
  for (auto const& row : node.rows) out.line(table_row(row, node), row.span);
  out.close(node.span.end);
}

}  // namespace

std::string print(Document const& document, source::SourceText const& source) {
  Printer out(document.comments, source);
  auto const edition = document.edition.span;
  out.line("leat " + std::to_string(document.edition.value), edition);
  for (auto const& declaration : document.declarations)
    std::visit(
        [&](auto const& node) {
          out.blank_line();
          put(out, node);
        },
        declaration);
  if (out.has_comment_before(source.text().size())) {
    out.blank_line();
    out.comments_before(source.text().size());
  }
  return std::move(out).take();
}

}  // namespace leat::syntax
