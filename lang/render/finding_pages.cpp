#include "lang/render/finding_pages.hpp"

#include <fmt/format.h>

#include "engine/model/finding_kind.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::string without_marks(std::string_view text) {
  std::string result;
  for (char c : text) {
    if (c != '`' && c != '*') result += c;
  }
  return result;
}

// Takes one line off the front.
std::string_view next_line(std::string_view& text) {
  auto const end = std::min(text.find('\n'), text.size());
  auto const line = text.substr(0, end);
  text.remove_prefix(std::min(end + 1, text.size()));
  return line;
}

void append_line(std::string& paragraph, std::string_view line) {
  if (!paragraph.empty()) paragraph += ' ';
  paragraph += line;
}

void flush(std::string& paragraph, std::string& page) {
  if (!paragraph.empty()) page += fmt::format("    {}\n", wrapped(without_marks(paragraph), 84, 4));
  paragraph.clear();
}

model::FindingRow const* row_named(std::string_view name) {
  for (auto const& row : model::finding_table) {
    if (row.name == name) return &row;
  }
  return nullptr;
}

}  // namespace

std::optional<std::string_view> finding_section(std::string_view manual, std::string_view name) {
  auto const heading = fmt::format("\n## {}\n", name);
  auto const at = manual.find(heading);
  if (at == std::string_view::npos) return std::nullopt;
  auto section = manual.substr(at + heading.size());
  return section.substr(0, std::min(section.find("\n## "), section.size()));
}

std::string section_summary(std::string_view section) {
  std::string paragraph;
  while (!section.empty()) {
    auto const line = next_line(section);
    if (line.empty() && !paragraph.empty()) break;
    if (!line.empty()) append_line(paragraph, line);
  }
  auto const plain = without_marks(paragraph);
  auto const end = plain.find(". ");
  return end == std::string::npos ? plain : plain.substr(0, end + 1);
}

std::vector<std::string> section_prose(std::string_view section) {
  std::vector<std::string> paragraphs;
  std::string paragraph;
  while (!section.empty()) {
    auto const line = next_line(section);
    if (line.starts_with("```")) break;
    if (!line.empty()) {
      append_line(paragraph, line);
      continue;
    }
    bool const leads_to_design = paragraph.ends_with(':');
    if (!paragraph.empty() && !leads_to_design) paragraphs.push_back(without_marks(paragraph));
    paragraph.clear();
  }
  return paragraphs;
}

std::string finding_list(std::string_view manual, Look look) {
  std::string result;
  for (int severity = 2; severity >= 0; --severity) {
    for (auto const& row : model::finding_table) {
      if (static_cast<int>(row.severity) != severity) continue;
      auto const word = word_of(row.severity);
      auto const section = finding_section(manual, row.name);
      result += painted(look, role_of(word), padded(word, 9)) +
                painted(look, Role::named, padded(row.name, 18)) +
                (section ? section_summary(*section) : "") + "\n";
    }
    if (severity > 0) result += "\n";
  }
  return result;
}

std::string finding_page(std::string_view manual, std::string_view name, Look look) {
  for (auto const& row : diagnostics::catalogue) {
    if (row.name == name) return heading_line("error", name, row.meaning, look);
  }
  auto const* row = row_named(name);
  auto section = finding_section(manual, name).value_or("");
  std::string page = painted(look, role_of(word_of(row->severity)), word_of(row->severity)) + "  " +
                     painted(look, Role::strong, name) + "\n";
  std::string paragraph;
  bool is_design = false;
  while (!section.empty()) {
    auto const line = next_line(section);
    if (line.starts_with("```")) {
      flush(paragraph, page);
      is_design = !is_design;
    } else if (is_design) {
      page.append(line.empty() ? 0 : 8, ' ').append(line).append("\n");
    } else if (line.empty()) {
      flush(paragraph, page);
      if (!page.ends_with("\n\n")) page += "\n";
    } else {
      append_line(paragraph, line);
    }
  }
  flush(paragraph, page);
  return page;
}

std::vector<std::string> explained_names() {
  std::vector<std::string> names;
  for (auto const& row : model::finding_table) names.emplace_back(row.name);
  for (auto const& row : diagnostics::catalogue) names.emplace_back(row.name);
  return names;
}

}  // namespace leat::render
