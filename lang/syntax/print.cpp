#include "lang/syntax/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <utility>

#include "lang/source/code_point.hpp"
#include "lang/syntax/aligning.hpp"
#include "lang/syntax/line.hpp"
#include "lang/syntax/weaving.hpp"
#include "lang/syntax/wording.hpp"

namespace leat::syntax {

namespace {

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

template <class Node>
void put_line(Lines& out, Node const& node) {
  auto wording = wording_of(node);
  out.line(std::move(wording.cells), node.span, wording.shape);
}

template <class Nodes>
void put_block(Lines& out, std::string const& text, Span origin, Nodes const& nodes, Span whole) {
  out.open(text, origin);
  for (auto const& node : nodes) put_line(out, node);
  out.close(whole.end);
}

// The same where any number of entries may stand on one line.
template <class Nodes>
void put_settings(Lines& out, std::string const& text, Span origin, Nodes const& nodes,
                  Span whole) {
  out.open(text, origin);
  for (auto const& node : nodes) put_line(out, node);
  out.close(whole.end, nodes.size(), Shape::body);
}

// An entry of a block as a line of its own.
struct Entry {
  Wording wording;
  Span span;
};

void put_entry(Lines& out, Entry entry) {
  out.line(std::move(entry.wording.cells), entry.span, entry.wording.shape);
}

template <class Nodes>
void add_entries(std::vector<Entry>& entries, Nodes const& nodes) {
  for (auto const& node : nodes) entries.push_back({wording_of(node), node.span});
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
    put_entry(out, std::move(entry));
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
  put_settings(out, "practice", head(node.span, "practice"), node.settings, node.span);
}

void put(Lines& out, BodyDeclaration const& node, source::SourceText const&) {
  put_settings(out, "body " + node.name.text, head(node.span, node.name.span.end), node.properties,
               node.span);
}

void put(Lines& out, AcceptDeclaration const& node, source::SourceText const&) {
  put_line(out, node);
}

void put(Lines& out, IncludeDeclaration const& node, source::SourceText const&) {
  put_line(out, node);
}

void put(Lines& out, NumberDeclaration const& node, source::SourceText const&) {
  put_line(out, node);
}

Entry outside_of(std::optional<Word> const& outside) {
  return {{{"outside " + outside->text}}, outside->span};
}

void put(Lines& out, WorksDeclaration const& node, source::SourceText const&) {
  std::vector<Entry> entries;
  for (auto const& item : node.items)
    std::visit(
        [&](auto const& inner) {
          entries.push_back({wording_of(inner), inner.span});
        },
        item);
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

std::string drawn(Row const& row) { return fmt::format("|{}|", row.text); }
Span with_bars(Row const& row) { return {row.span.begin - 1, row.span.end + 1}; }

// Rows that begin behind the brace hang below each other from there.
void put_hanging(Lines& out, LevelDeclaration const& level, std::size_t end) {
  auto const head = head_of(level);
  auto const& rows = level.rows;
  if (rows.size() == 1)
    return out.line({head, "{ " + drawn(rows.front()) + " }"}, {level.span.begin, end},
                    Shape::level);
  auto const hang = source::code_point_count(head) + 3;
  for (auto const& row : rows) {
    bool const is_first = &row == &rows.front(), is_last = &row == &rows.back();
    auto const origin = with_bars(row);
    out.line({(is_first ? head + " { " : "") + drawn(row) + (is_last ? " }" : "")},
             {is_first ? level.span.begin : origin.begin, is_last ? end : origin.end}, Shape::row,
             is_first ? 0 : hang);
  }
}

void put(Lines& out, LevelDeclaration const& level, source::SourceText const& source) {
  auto const& rows = level.rows;
  auto const last = rows.empty() ? level.span.end : rows.back().span.end + 1;
  auto const end = next_sign('}', last, source) + 1;
  if (!rows.empty()) {
    auto const written = source.text({level.span.begin, rows.front().span.begin});
    if (written.find('\n') == std::string_view::npos) return put_hanging(out, level, end);
  }
  out.open(head_of(level), level.span);
  for (auto const& row : rows) out.line({drawn(row)}, with_bars(row), Shape::row);
  out.close(end, 0);
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
      put_entry(out, *entry);
    put(out, level, source);
  }
  for (; entry != entries.end(); ++entry) put_entry(out, *entry);
  out.close(node.span.end, 0);
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
  out.line({headings + "| route"}, {from, bar + 1});
  for (auto const& row : node.rows) out.line({table_row(row, node)}, row.span);
  out.close(node.span.end, 0);
}

// Where the word before a number on its line begins.
std::size_t word_before(std::size_t number, source::SourceText const& source) {
  auto const end = source.text().find_last_not_of(" \t", number - 1);
  return end + 1 - std::string_view("leat").size();
}

}  // namespace

// Declarations that are one line each may stand together; others have an empty line between them.
std::string print(Document const& document, source::SourceText const& source) {
  Lines lines(source);
  auto const& edition = document.edition;
  lines.line({"leat " + std::to_string(edition.value)},
             {word_before(edition.span.begin, source), edition.span.end});
  Declaration const* before = nullptr;
  bool was_one_line = false;
  for (auto const& declaration : document.declarations) {
    auto const first = lines.all().size();
    lines.paragraph();
    std::visit([&](auto const& node) { put(lines, node, source); }, declaration);
    bool const is_one_line = lines.all().size() == first + 1;
    if (was_one_line && is_one_line && before->index() == declaration.index())
      lines.join_paragraphs(first);
    before = &declaration;
    was_one_line = is_one_line;
  }
  return aligned(woven(lines.all(), document.comments, source));
}

}  // namespace leat::syntax
