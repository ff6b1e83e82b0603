#include <fmt/format.h>

#include "lang/render/page/page_pieces.hpp"
#include "lang/render/markup.hpp"
#include "lang/render/table_lines.hpp"
#include "lang/render/words.hpp"

// What a page says in words: its tables, what was found, what was expected.
namespace leat::render {

namespace {

std::string setting_word(std::string const& cell) {
  if (cell == "1") return "on";
  return cell == "0" ? "off" : "any";
}

std::string table_row(std::vector<std::string> const& line, std::size_t signals) {
  std::string text, setting;
  for (std::size_t i = 0; i < signals; ++i) {
    text += fmt::format("<td class=\"{0}\">{0}</td>", setting_word(line[i]));
    setting += line[i];
  }
  for (std::size_t i = signals; i < line.size(); ++i)
    text += fmt::format("<td>{}</td>", escaped(line[i]));
  return fmt::format("<tr data-row=\"{}\">{}</tr>\n", setting, text);
}

std::string rows_table(TableSheet const& sheet, LaneGroup const& group,
                       std::string const& caption) {
  auto const lines = table_lines(sheet, *group.lane);
  std::string text = fmt::format(
      "<div class=\"scroll\" tabindex=\"0\" role=\"group\" "
      "aria-label=\"{0}\"><table><caption>{0}</caption><thead><tr>",
      caption);
  for (auto const& name : lines.front())
    text += fmt::format("<th scope=\"col\">{}</th>", escaped(name));
  text += "</tr></thead>\n<tbody>\n";
  for (std::size_t i = 1; i < lines.size(); ++i) text += table_row(lines[i], sheet.signals.size());
  return text + "</tbody></table></div>\n";
}

std::string conditions_list(TableSheet const& sheet, Lane const& lane) {
  std::string text = "<ul class=\"conditions\">\n";
  for (auto const& d : lane.destinations)
    text += fmt::format(
        "<li><b>{}</b> <span class=\"verdict {}\">{}</span> {} <span "
        "class=\"quiet\">{}</span></li>\n",
        escaped(destination_words(d.outlets)), word_of(d.verdict), word_of(d.verdict),
        escaped(d.words), share_words(d.combinations, sheet.row_count));
  return text + "</ul>\n";
}

std::string term(std::string_view word, std::string const& text) {
  return text.empty() ? "" : fmt::format("<dt>{}</dt><dd>{}</dd>", word, escaped(text));
}

std::string note_item(PageNote const& note, std::size_t part, std::size_t number) {
  auto const severity = note.accepted.empty() ? note.severity : "accepted";
  return fmt::format(
      "<li class=\"note {0}\" id=\"note-{1}-{2}\"><h4><span class=\"severity\">{0}</span> {3} "
      "<code>{4}</code></h4><dl>{5}{6}{7}{8}{9}{10}{11}</dl></li>\n",
      severity, part, number, escaped(note.headline), escaped(note.name), term("where", note.place),
      term("also in", note.also), term("when", note.when), term("try", note.steps),
      term("why", note.reason), term("do", note.remedy), term("because", note.accepted));
}

}  // namespace

std::string tables_markup(PagePart const& part, std::size_t number) {
  auto const& sheet = part.sheet;
  std::string text = fmt::format(
      "<section class=\"tables\" aria-labelledby=\"tables-{0} name-{0}\">"
      "<h3 id=\"tables-{0}\">Who goes where</h3>\n",
      number);
  if (!sheet.is_decided)
    return text +
           "<p>Undecided: there is too much to run, or the signals never come to rest."
           "</p></section>\n";
  if (!part.has_table)
    return text +
           "<p>The table would be too long to be read; <code>leat check</code> proves what "
           "is wanted of it.</p></section>\n";
  for (auto const& group : grouped(sheet)) {
    auto const caption =
        fmt::format("from {}, {}", escaped(group.inlet), escaped(listed(group.bodies)));
    if (sheet.is_wide) text += fmt::format("<h4>{}</h4>\n", caption);
    if (!sheet.is_wide) text += rows_table(sheet, group, caption);
    text += conditions_list(sheet, *group.lane);
  }
  return text + "</section>\n";
}

std::string notes_markup(PagePart const& part, std::size_t number) {
  std::string text = fmt::format(
      "<section class=\"findings\" aria-labelledby=\"findings-{0} name-{0}\">"
      "<h3 id=\"findings-{0}\">What was found</h3>\n",
      number);
  if (part.notes.empty()) return text + "<p>Nothing.</p></section>\n";
  text += "<ol class=\"notes\">\n";
  for (std::size_t i = 0; i < part.notes.size(); ++i) text += note_item(part.notes[i], number, i);
  return text + "</ol></section>\n";
}

std::string claims_markup(PagePart const& part) {
  if (part.claims.empty()) return {};
  std::string text = "<section class=\"claims\"><h3>What was expected</h3>\n<ul>\n";
  for (auto const& claim : part.claims)
    text += fmt::format(
        "<li class=\"claim {0}\"><span class=\"severity\">{1}</span> <code>{2}"
        "</code> <span class=\"quiet\">{3}{4}{5}</span></li>\n",
        claim.verdict.substr(0, claim.verdict.find(' ')), escaped(claim.verdict),
        escaped(claim.clause), escaped(claim.title),
        claim.title.empty() || claim.when.empty() ? "" : ": ", escaped(claim.when));
  return text + "</ul></section>\n";
}

}  // namespace leat::render
