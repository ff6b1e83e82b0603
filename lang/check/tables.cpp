#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "lang/check/resolving.hpp"
#include "lang/diagnostics/catalogue.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::TableDeclaration;
using syntax::TableRow;
using syntax::Word;

constexpr std::size_t most_rows = 1024, most_columns = 64;

// A row as two words of bits, one bit a heading: which settings matter, and which of them are on.
struct RowBits {
  std::uint64_t matters = 0, on = 0;
};

bool overlap(RowBits const& a, RowBits const& b) {
  return ((a.on ^ b.on) & a.matters & b.matters) == 0;
}

std::string name_of(TableDeclaration const& table) {
  return fmt::format("table {}{}", table.body ? table.body->text + " from " : "", table.inlet.text);
}

bool has_bearable_size(Reading const& reading, TableDeclaration const& table) {
  auto const refuse = [&](source::Span span, std::size_t most, char const* what) {
    reading.sink.report({Listed("too-many"),
                         fmt::format("The {} has more than {} {}", name_of(table), most, what),
                         {span, fmt::format("number {} of the {}", most + 1, what), {}},
                         {},
                         "Split it into several tables."});
    return false;
  };
  if (table.headings.size() > most_columns)
    return refuse(table.headings[most_columns].span, most_columns, "columns");
  if (table.rows.size() > most_rows) return refuse(table.rows[most_rows].span, most_rows, "rows");
  if (!table.rows.empty() || !reading.is_whole) return true;
  reading.sink.report({Listed("expects-nothing"),
                       fmt::format("The {} expects nothing", name_of(table)),
                       {table.span, "no row stands below its headings", {}},
                       {},
                       "Write its rows, or remove the table."});
  return false;
}

bool has_known_headings(Reading const& reading, Sights const& sights, std::size_t junction,
                        TableDeclaration const& table) {
  bool is_sound = true;
  for (std::size_t i = 0; i < table.headings.size(); ++i) {
    auto const& heading = table.headings[i];
    auto const first = std::find_if(table.headings.begin(), table.headings.end(),
                                    [&](Word const& other) { return other.text == heading.text; });
    if (first != table.headings.begin() + static_cast<std::ptrdiff_t>(i)) {
      reading.sink.report(
          {Listed("repeated-column"),
           fmt::format("The {} has two columns for '{}'", name_of(table), heading.text),
           {heading.span, fmt::format("'{}' again", heading.text), {}},
           {{first->span, fmt::format("the first column for '{}'", heading.text), {}}},
           "Remove one of the columns."});
      is_sound = false;
    } else if (!has_signal(reading, sights, junction, heading.text)) {
      reading.unknown.add(NameKind::signal, heading);
      is_sound = false;
    }
  }
  return is_sound;
}

std::string columns(std::size_t count) {
  return count == 1 ? "1 setting" : fmt::format("{} settings", count);
}

bool has_sound_settings(Reading const& reading, TableDeclaration const& table, TableRow const& row,
                        RowBits& bits) {
  if (row.settings.size() != table.headings.size()) {
    diagnostics::Diagnostic found;
    found.name = Listed("uneven-table");
    found.headline = fmt::format("A row of the {} has {}, not {}", name_of(table),
                                 columns(row.settings.size()), table.headings.size());
    found.primary = {row.span, fmt::format("{} here", columns(row.settings.size())), {}};
    if (!table.headings.empty())
      found.others.push_back({{table.headings.front().span.begin, table.headings.back().span.end},
                              fmt::format("the headings ask for {}", table.headings.size()),
                              {}});
    found.remedy = "Write 0, 1 or - below every heading.";
    reading.sink.report(std::move(found));
    return false;
  }
  for (std::size_t i = 0; i < row.settings.size(); ++i) {
    auto const& text = row.settings[i].text;
    if (text != "-") bits.matters |= std::uint64_t{1} << i;
    if (text == "1") bits.on |= std::uint64_t{1} << i;
  }
  return true;
}

// The outlets a row names by id, in the order written; empty for `nothing`; none when a name is
// wrong.
std::optional<std::vector<std::uint32_t>> find_outlets(Reading const& reading, Sights const& sights,
                                                       std::size_t junction,
                                                       TableDeclaration const& table,
                                                       TableRow const& row) {
  std::vector<std::uint32_t> found;
  if (row.outlets.size() == 1 && row.outlets.front().text == "nothing") return found;
  bool is_sound = !row.outlets.empty();
  for (auto const& word : row.outlets) {
    if (word.text == "nothing") {
      reading.sink.report(
          {Listed("nothing-is-no-outlet"),
           fmt::format("A row of the {} reaches both outlets and nothing", name_of(table)),
           {word.span, "'nothing' is no outlet", {}},
           {},
           "Write the outlets only, or only 'nothing'."});
      return std::nullopt;
    }
    auto const id = find_outlet(reading, sights, junction, word);
    is_sound = is_sound && id;
    if (!id) continue;
    if (std::find(found.begin(), found.end(), *id) != found.end()) {
      reading.sink.report(
          {Listed("repeated-outlet"),
           fmt::format("A row of the {} names '{}' twice", name_of(table), word.text),
           {word.span, fmt::format("'{}' again", word.text), {}},
           {},
           "Name each outlet once."});
      is_sound = false;
    }
    found.push_back(*id);
  }
  return is_sound ? std::optional(found) : std::nullopt;
}

// A row that was understood.
struct KnownRow {
  TableRow const* row;
  RowBits bits;
  std::vector<std::uint32_t> outlets;
};

// Reports the first pair of rows that can hold at once and say different things.
bool contradicts_itself(Reading const& reading, TableDeclaration const& table,
                        std::vector<KnownRow> const& rows) {
  for (std::size_t late = 1; late < rows.size(); ++late) {
    for (std::size_t early = 0; early < late; ++early) {
      if (!overlap(rows[early].bits, rows[late].bits)) continue;
      std::set<std::uint32_t> const a(rows[early].outlets.begin(), rows[early].outlets.end());
      std::set<std::uint32_t> const b(rows[late].outlets.begin(), rows[late].outlets.end());
      if (a == b) continue;
      reading.sink.report(
          {Listed("contradictory-rows"),
           fmt::format("Two rows of the {} apply at once and differ", name_of(table)),
           {rows[late].row->span, "this row names another route", {}},
           {{rows[early].row->span, "this row applies to the same settings", {}}},
           "Change a setting so that only one of them applies, or make the routes "
           "equal."});
      return true;
    }
  }
  return false;
}

std::string clause_of(TableDeclaration const& table, TableRow const& row) {
  std::string text = name_of(table) + ":";
  for (std::size_t i = 0; i < row.settings.size(); ++i)
    text +=
        fmt::format("{} {} {}", i == 0 ? "" : ",", table.headings[i].text, row.settings[i].text);
  text += " |";
  for (std::size_t i = 0; i < row.outlets.size(); ++i)
    text += fmt::format("{} {}", i == 0 ? "" : ",", row.outlets[i].text);
  return text;
}

void want_row(TableDeclaration const& table, KnownRow const& known, Wanted wanted,
              std::vector<Wanted>& found) {
  for (std::size_t i = 0; i < table.headings.size(); ++i) {
    if (known.bits.matters >> i & 1)
      wanted.condition.settings.emplace_back(&table.headings[i], known.bits.on >> i & 1);
  }
  wanted.title = name_of(table);
  wanted.clause = clause_of(table, *known.row);
  wanted.span = known.row->span;
  if (known.outlets.empty()) {
    wanted.claim = model::Claim::reaches_nothing;
    found.push_back(wanted);
  }
  wanted.claim = known.outlets.size() > 1 ? model::Claim::may_reach : model::Claim::reaches;
  for (auto const outlet : known.outlets) {
    wanted.outlet = outlet;
    found.push_back(wanted);
  }
}

void read_table(Reading const& reading, Sights const& sights, TableDeclaration const& table,
                std::uint32_t number, std::vector<Wanted>& found) {
  if (!has_bearable_size(reading, table)) return;
  Wanted wanted;
  auto const junction =
      find_junction(reading, sights, table.junction, &table.inlet, table.inlet.span);
  if (table.body) wanted.profile = find_profile(reading, *table.body);
  if (!junction) return;
  bool is_sound =
      has_known_headings(reading, sights, *junction, table) && (!table.body || wanted.profile);
  wanted.junction = *junction;
  wanted.inlet = find_inlet(reading, sights, *junction, table.inlet);
  std::vector<KnownRow> rows;
  for (auto const& row : table.rows) {
    RowBits bits;
    if (!has_sound_settings(reading, table, row, bits)) continue;
    if (auto outlets = find_outlets(reading, sights, *junction, table, row))
      rows.push_back({&row, bits, std::move(*outlets)});
  }
  is_sound = is_sound && wanted.inlet && !contradicts_itself(reading, table, rows);
  if (!is_sound) return;
  wanted.table = number;
  for (auto const& row : rows) {
    want_row(table, row, wanted, found);
    ++wanted.table_row;
  }
}

}  // namespace

std::vector<Wanted> read_tables(Reading const& reading, Sights const& sights) {
  std::vector<Wanted> found;
  if (reading.names.judged().draws_nothing()) return found;
  std::uint32_t number = 0;
  for (auto const* table : all_of<TableDeclaration>(reading.document))
    read_table(reading, sights, *table, number++, found);
  return found;
}

}  // namespace leat::check
