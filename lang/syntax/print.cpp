#include "lang/syntax/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <utility>

#include "lang/source/code_point.hpp"
#include "lang/syntax/wording.hpp"

namespace leat::syntax {

namespace {

// A line to be printed, and where in the text it comes from.
struct Line {
  std::string text;
  Span origin;
  std::size_t depth;
  std::size_t comment_depth;  // of comments above it: a closing brace's are still inside
  bool begins_paragraph;
};

// Gathers the lines of a document.
class Lines {
 public:
  void paragraph() { begins_paragraph_ = true; }
  void line(std::string text, Span origin) { add(std::move(text), origin, depth_); }
  void open(std::string const& head, Span origin) {
    line(head + " {", origin);
    ++depth_;
  }
  // `end` is past the closing brace.
  void close(std::size_t end) {
    auto const inside = depth_--;
    add("}", {end - 1, end}, inside);
  }
  std::vector<Line> const& all() const { return lines_; }

 private:
  void add(std::string text, Span origin, std::size_t comment_depth) {
    lines_.push_back({std::move(text), origin, depth_, comment_depth, begins_paragraph_});
    begins_paragraph_ = false;
  }

  std::vector<Line> lines_;
  std::size_t depth_ = 0;
  bool begins_paragraph_ = false;
};

// Puts the comments back among the lines. A comment that began before a line's origin goes above
// it; one inside the origin, or after it on the same line and before the next origin, goes behind
// it, but only one. Invariant: comments come out in their order, each once. Cost: one pass over
// lines and comments.
class Weaver {
 public:
  Weaver(std::vector<Comment> const& comments, source::SourceText const& source)
      : comments_(comments), source_(source) {}

  std::string woven(std::vector<Line> const& lines) {
    for (std::size_t i = 0; i < lines.size(); ++i) {
      auto const next = i + 1 < lines.size() ? lines[i + 1].origin.begin : source_.text().size();
      put(lines[i], next);
    }
    if (next_ < comments_.size()) out_ += '\n';
    comments_above(source_.text().size(), 0);
    return std::move(out_);
  }

 private:
  void put(Line const& line, std::size_t next_begin) {
    if (line.begins_paragraph) out_ += '\n';
    comments_above(line.origin.begin, line.comment_depth);
    write(line.text, line.depth);
    if (has_comment_before(line.origin.end) ||
        (has_comment_before(next_begin) && is_on_line_of(line.origin.end))) {
      out_ += "  ";
      out_ += take_comment();
    }
    out_ += '\n';
  }
  void comments_above(std::size_t offset, std::size_t depth) {
    while (has_comment_before(offset)) {
      write(take_comment(), depth);
      out_ += '\n';
    }
  }
  bool has_comment_before(std::size_t offset) const {
    return next_ < comments_.size() && comments_[next_].span.begin < offset;
  }
  bool is_on_line_of(std::size_t end) const {
    auto const between = source_.text().substr(end, comments_[next_].span.begin - end);
    return between.find('\n') == std::string_view::npos;
  }
  std::string take_comment() {
    std::string text(source_.text(comments_[next_++].span));
    text.erase(text.find_last_not_of(" \t") + 1);
    return text;
  }
  void write(std::string const& text, std::size_t depth) {
    out_.append(2 * depth, ' ');
    out_ += text;
  }

  std::vector<Comment> const& comments_;
  source::SourceText const& source_;
  std::string out_;
  std::size_t next_ = 0;
};

// Where the next such sign stands from `at` on, comments passed over: for signs that no node's span
// tells. The text was read without a fault, so it is there.
std::size_t next_sign(char sign, std::size_t at, source::SourceText const& source) {
  auto const text = source.text();
  for (; text[at] != sign; ++at)
    if (text[at] == '#') at = text.find('\n', at);
  return at;
}

// The origin of a block's head: from the block's first byte to the end of what stands before the
// brace.
Span head(Span block, std::size_t end) { return {block.begin, end}; }
Span head(Span block, std::string_view word) { return {block.begin, block.begin + word.size()}; }

template <class Nodes>
void put_block(Lines& out, std::string const& text, Span origin, Nodes const& nodes, Span whole) {
  out.open(text, origin);
  for (auto const& node : nodes) out.line(line_of(node), node.span);
  out.close(whole.end);
}

// An entry of a block as a line of its own.
struct Entry {
  std::string text;
  Span span;
};

template <class Nodes>
void add_entries(std::vector<Entry>& entries, Nodes const& nodes) {
  for (auto const& node : nodes) entries.push_back({line_of(node), node.span});
}

// Entries in the order of the text with the loops around them: a loop opens before what begins
// after it, and closes before what begins after its end. Loops come with the outer ones first.
void put_looped(Lines& out, std::vector<Entry> entries, std::vector<Loop> const& loops) {
  std::stable_sort(entries.begin(), entries.end(), [](Entry const& one, Entry const& other) {
    return one.span.begin < other.span.begin;
  });
  std::vector<std::size_t> open_ends;
  auto const close_before = [&](std::size_t at) {
    for (; !open_ends.empty() && open_ends.back() <= at; open_ends.pop_back())
      out.close(open_ends.back());
  };
  auto loop = loops.begin();
  auto const open_before = [&](std::size_t at) {
    for (; loop != loops.end() && loop->span.begin < at; ++loop) {
      close_before(loop->span.begin);
      out.open(head_of(*loop), loop->span);
      open_ends.push_back(loop->whole.end);
    }
  };
  for (auto& entry : entries) {
    open_before(entry.span.begin);
    close_before(entry.span.begin);
    out.line(std::move(entry.text), entry.span);
  }
  constexpr auto behind_all = static_cast<std::size_t>(-1);
  open_before(behind_all);
  close_before(behind_all);
}

void put(Lines& out, SignalsDeclaration const& node, source::SourceText const&) {
  std::vector<Entry> entries;
  add_entries(entries, node.signals);
  add_entries(entries, node.nevers);
  out.open("signals", head(node.span, "signals"));
  put_looped(out, std::move(entries), node.loops);
  out.close(node.span.end);
}

void put(Lines& out, MaterialsDeclaration const& node, source::SourceText const&) {
  put_block(out, "materials", head(node.span, "materials"), node.materials, node.span);
}

void put(Lines& out, MarksDeclaration const& node, source::SourceText const&) {
  put_block(out, "marks", head(node.span, "marks"), node.marks, node.span);
}

void put(Lines& out, PracticeDeclaration const& node, source::SourceText const&) {
  put_block(out, "practice", head(node.span, "practice"), node.settings, node.span);
}

void put(Lines& out, BodyDeclaration const& node, source::SourceText const&) {
  put_block(out, "body " + node.name.text, head(node.span, node.name.span.end), node.properties,
            node.span);
}

void put(Lines& out, AcceptDeclaration const& node, source::SourceText const&) {
  out.line(line_of(node), node.span);
}

void put(Lines& out, IncludeDeclaration const& node, source::SourceText const&) {
  out.line(line_of(node), node.span);
}

void put(Lines& out, NumberDeclaration const& node, source::SourceText const&) {
  out.line(line_of(node), node.span);
}

Entry outside_of(std::optional<Word> const& outside) {
  return {"outside " + outside->text, outside->span};
}

void put(Lines& out, WorksDeclaration const& node, source::SourceText const&) {
  std::vector<Entry> entries;
  for (auto const& item : node.items)
    std::visit([&](auto const& inner) { entries.push_back({line_of(inner), inner.span}); }, item);
  if (node.outside) entries.push_back(outside_of(node.outside));
  auto const end = node.title ? node.title->span.end : node.name.span.end;
  out.open(head_of(node), head(node.span, end));
  put_looped(out, std::move(entries), node.loops);
  out.close(node.span.end);
}

void put(Lines& out, ExpectDeclaration const& node, source::SourceText const&) {
  auto const end = node.junction ? node.junction->span.end
                   : node.title  ? node.title->span.end
                                 : node.span.begin + std::string_view("expect").size();
  std::vector<Entry> entries;
  add_entries(entries, node.clauses);
  out.open(head_of(node), head(node.span, end));
  put_looped(out, std::move(entries), node.loops);
  out.close(node.span.end);
}

void put(Lines& out, LevelDeclaration const& level, source::SourceText const& source) {
  out.open(head_of(level), level.span);
  for (auto const& row : level.rows)
    out.line(fmt::format("|{}|", row.text), {row.span.begin - 1, row.span.end + 1});
  auto const at = level.rows.empty() ? level.span.end : level.rows.back().span.end;
  out.close(next_sign('}', at, source) + 1);
}

// Numbers and what is outside stand where they stood among the levels.
void put(Lines& out, JunctionDeclaration const& node, source::SourceText const& source) {
  std::vector<Entry> entries;
  add_entries(entries, node.numbers);
  if (node.outside) entries.push_back(outside_of(node.outside));
  std::sort(entries.begin(), entries.end(),
            [](Entry const& one, Entry const& other) { return one.span.begin < other.span.begin; });
  auto const end = node.title ? node.title->span.end : node.name.span.end;
  out.open(head_of(node), head(node.span, end));
  auto entry = entries.begin();
  for (auto const& level : node.levels) {
    for (; entry != entries.end() && entry->span.begin < level.span.begin; ++entry)
      out.line(entry->text, entry->span);
    put(out, level, source);
  }
  for (; entry != entries.end(); ++entry) out.line(entry->text, entry->span);
  out.close(node.span.end);
}

std::string padded(std::string const& word, std::size_t width) {
  return word + std::string(width - std::min(width, source::code_point_count(word)), ' ');
}

std::string table_row(TableRow const& row, TableDeclaration const& table) {
  std::string line;
  for (std::size_t i = 0; i < row.settings.size(); ++i) {
    auto const width =
        i < table.headings.size() ? source::code_point_count(print(table.headings[i])) : 1;
    line += padded(row.settings[i].text, width) + " ";
  }
  line += "| ";
  for (auto const& outlet : row.outlets) {
    line += &outlet == &row.outlets.front() ? "" : ", ";
    line += print(outlet);
  }
  return line;
}

void put(Lines& out, TableDeclaration const& node, source::SourceText const& source) {
  auto const end = node.junction ? node.junction->span.end : node.inlet.span.end;
  out.open(head_of(node), head(node.span, end));
  std::string headings;
  for (auto const& heading : node.headings) headings += print(heading) + " ";
  auto const bar =
      next_sign('|', node.headings.empty() ? end : node.headings.back().span.end, source);
  auto const from = node.headings.empty() ? bar : node.headings.front().span.begin;
  out.line(headings + "| route", {from, bar + 1});
  for (auto const& row : node.rows) out.line(table_row(row, node), row.span);
  out.close(node.span.end);
}

}  // namespace

std::string print(Document const& document, source::SourceText const& source) {
  constexpr auto no_line = static_cast<std::size_t>(-1);
  Lines lines;
  lines.line("leat " + std::to_string(document.edition.value), document.edition.span);
  std::size_t line_before = no_line;
  for (auto const& declaration : document.declarations) {
    // Numbers and includes are lines, not blocks: those of a kind stand together.
    bool const is_line = std::holds_alternative<NumberDeclaration>(declaration) ||
                         std::holds_alternative<IncludeDeclaration>(declaration);
    auto const line = is_line ? declaration.index() : no_line;
    if (!is_line || line != line_before) lines.paragraph();
    line_before = line;
    std::visit([&](auto const& node) { put(lines, node, source); }, declaration);
  }
  return Weaver(document.comments, source).woven(lines.all());
}

}  // namespace leat::syntax
