#pragma once
#include <array>
#include <string_view>

// The formats in which results are written, in one table: the help of every command that offers one
// says what it is from here, and so does docs/formats.md.
namespace leat::cli {

struct FormatRow {
  std::string_view name, media_type, purpose;
};

inline constexpr std::array<FormatRow, 10> format_table{{
    {"text", "text/plain", "for people"},
    {"lines", "text/plain", "one line a finding, for editors and filters"},
    {"markdown", "text/markdown", "for pages and reviews"},
    {"csv", "text/csv", "for spreadsheets (RFC 4180)"},
    {"json", "application/json", "for programs, to the schemas in docs/schemas"},
    {"sarif", "application/sarif+json", "for code review (SARIF 2.1.0, OASIS)"},
    {"junit", "application/xml", "for build servers: test cases"},
    {"expect", "text/plain", "to paste into a design"},
    {"vcd", "text/plain", "for wave viewers (IEEE 1364)"},
    {"dot", "text/vnd.graphviz", "for drawing graphs (the DOT language)"},
}};

}  // namespace leat::cli
