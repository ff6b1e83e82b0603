#include "lang/render/page/page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "engine/contract.hpp"
#include "lang/render/page/packed.hpp"
#include "lang/render/page/page_pieces.hpp"
#include "lang/render/markup.hpp"
#include "lang/render/picture/palette.hpp"
#include "lang/render/picture/symbols.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

// A variable for each ink, light or dark as the page's reader prefers; and the classes of pictures
// by these variables. The rules before them serve readers that do not know such colours.
std::string ink_style() {
  std::string variables, classes;
  for (auto const& ink : inks) {
    variables += fmt::format("--{}:light-dark({},{});", ink.name, colour_of(ink, Theme::light),
                             colour_of(ink, Theme::dark));
    classes += fmt::format(".f-{0}{{fill:var(--{0})}}.s-{0}{{stroke:var(--{0})}}\n", ink.name);
  }
  return style_sheet(Theme::light) + fmt::format(":root{{{}}}\n", variables) + classes;
}

std::string counts_words(PagePart const& part) {
  std::map<std::string, std::size_t> severities, verdicts;
  for (auto const& note : part.notes)
    ++severities[note.accepted.empty() ? note.severity : "accepted"];
  for (auto const& claim : part.claims) ++verdicts[claim.verdict];
  std::vector<std::string> words;
  for (auto const* severity : {"error", "warning", "note"}) {
    if (auto const count = severities[severity]; count > 0)
      words.push_back(counted(count, severity));
  }
  if (auto const count = severities["accepted"]; count > 0)
    words.push_back(fmt::format("{} accepted", count));
  auto text = words.empty() ? std::string("nothing found") : listed(words);
  for (auto const& [verdict, count] : verdicts) {
    auto const is_plain = verdict.starts_with("holds");
    text += fmt::format("; {} {}", counted(count, "expectation"),
                        is_plain && count != 1 ? "hold" + verdict.substr(5) : verdict);
  }
  return text;
}

std::string_view revision_words(PagePart const& part) {
  if (part.revision == PagePart::Revision::only) return "";
  return part.revision == PagePart::Revision::before ? "before: " : "now: ";
}

std::string differing_words(PagePart const& part) {
  if (part.revision == PagePart::Revision::only) return {};
  return fmt::format("<p class=\"counts\">{} drawn in another way than {}</p>",
                     counted(part.differing.size(), "cell"),
                     part.revision == PagePart::Revision::before ? "now" : "before");
}

std::string part_markup(PagePart const& part, std::size_t number) {
  auto const& map = part.subject.map;
  auto const& grid = part.subject.design.grid;
  std::string left_out;
  for (auto const& sentence : part.left_out)
    left_out += fmt::format("<p class=\"left-out\">{}</p>\n", escaped(sentence));
  return fmt::format(
      "<section class=\"part\" id=\"part-{0}\" aria-labelledby=\"name-{0}\">\n"
      "<header><p class=\"kind\">{1}, {2} x {3} x {4} cells</p><h2 id=\"name-{0}\">{14}{5}</h2>"
      "<p class=\"title\">{6}</p><p class=\"counts\">{7}</p>{15}{8}</header>\n"
      "<div class=\"desk\"><div class=\"bench\"></div><div class=\"view\">{9}"
      "<details class=\"legend\" open><summary>What the marks of the text stand for</summary>{10}"
      "</details></div></div>\n{11}{12}{13}</section>\n",
      number, map.is_works() ? "works" : "junction", grid.width(), grid.depth(), grid.height(),
      escaped(map.junction.name), escaped(map.title), counts_words(part), left_out,
      levels_markup(part, number), legend_markup(part), tables_markup(part, number),
      notes_markup(part, number), claims_markup(part), revision_words(part), differing_words(part));
}

std::string with_prefix(std::string text, std::string_view before, std::string_view prefix) {
  for (auto at = text.find(before); at != std::string::npos;
       at = text.find(before, at + before.size() + prefix.size()))
    text.insert(at + before.size(), prefix);
  return text;
}

// The signs of a part, under names of its own.
std::string signs_of(PagePart const& part) {
  auto text = symbol_definitions(part.subject);
  auto const prefix = sign_prefix(part);
  if (prefix.empty()) return text;
  for (std::string_view before : {"id=\"", "href=\"#", "url(#"})
    text = with_prefix(std::move(text), before, prefix);
  return text;
}

// The template with its `{{name}}` filled in; what is filled in is not looked at again.
std::string filled(std::string_view form, std::map<std::string_view, std::string> const& pieces) {
  std::string text;
  while (true) {
    auto const begin = form.find("{{");
    text += form.substr(0, begin);
    if (begin == std::string_view::npos) return text;
    auto const end = form.find("}}", begin);
    auto const piece = pieces.find(form.substr(begin + 2, end - begin - 2));
    require(piece != pieces.end(), "the template of the page names what there is");
    text += piece->second;
    form.remove_prefix(end + 2);
  }
}

}  // namespace

std::string_view sign_prefix(PagePart const& part) {
  return part.revision == PagePart::Revision::now ? "n-" : "";
}

std::size_t first_file(std::vector<PagePart> const& parts, PagePart const& part) {
  auto const& first = parts.front().subject.text;
  return &part.subject.text == &first ? 0 : first.file_count();
}

std::string page(std::vector<PagePart> const& parts, std::vector<ComparisonSheet> const& sheets) {
  require(!parts.empty(), "a page shows something");
  auto const& first = parts.front();
  auto const other = std::find_if(parts.begin(), parts.end(), [&](PagePart const& part) {
    return &part.subject.text != &first.subject.text;
  });
  bool const is_pair = std::any_of(parts.begin(), parts.end(), [](PagePart const& part) {
    return part.revision != PagePart::Revision::only;
  });
  auto title = escaped(first.subject.text.name());
  auto signs = signs_of(first);
  auto sources = sources_markup(first.subject.text, 0);
  if (other != parts.end()) {
    title += " and " + escaped(other->subject.text.name());
    signs += signs_of(*other);
    sources += sources_markup(other->subject.text, first_file(parts, *other));
  }
  std::string sections = is_pair ? differences_markup(sheets) + "<div class=\"pairs\">\n" : "";
  for (std::size_t i = 0; i < parts.size(); ++i) sections += part_markup(parts[i], i);
  if (is_pair) sections += "</div>\n";
  auto const style = ink_style() + page_style;
  auto const data = page_data(parts).dump(-1, ' ', false, Json::error_handler_t::replace);
  return filled(page_template, {{"title", title},
                                {"style", style},
                                {"style digest", digest(style)},
                                {"script", page_script},
                                {"script digest", digest(page_script)},
                                {"signs", signs},
                                {"spread", is_pair ? "spread of-two" : "spread"},
                                {"parts", sections},
                                {"sources", sources},
                                {"data", packed(data)}});
}

}  // namespace leat::render
