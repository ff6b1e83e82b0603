#include "lang/render/page/page.hpp"

#include <fmt/format.h>

#include <map>

#include "engine/contract.hpp"
#include "lang/render/page/packed.hpp"
#include "lang/render/page/page_pieces.hpp"
#include "lang/render/picture/markup.hpp"
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

std::string part_markup(PagePart const& part, std::size_t number) {
  auto const& map = part.subject.map;
  auto const& grid = part.subject.design.grid;
  std::string left_out;
  for (auto const& sentence : part.left_out)
    left_out += fmt::format("<p class=\"left-out\">{}</p>\n", escaped(sentence));
  return fmt::format(
      "<section class=\"part\" id=\"part-{0}\" aria-labelledby=\"name-{0}\">\n"
      "<header><p class=\"kind\">{1}, {2} x {3} x {4} cells</p><h2 id=\"name-{0}\">{5}</h2>"
      "<p class=\"title\">{6}</p><p class=\"counts\">{7}</p>{8}</header>\n"
      "<div class=\"desk\"><div class=\"bench\"></div><div class=\"view\">{9}"
      "<details class=\"legend\" open><summary>What the marks of the text stand for</summary>{10}"
      "</details></div></div>\n{11}{12}{13}</section>\n",
      number, map.is_works() ? "works" : "junction", grid.width(), grid.depth(), grid.height(),
      escaped(map.junction.name), escaped(map.title), counts_words(part), left_out,
      levels_markup(part, number), legend_markup(part), tables_markup(part, number),
      notes_markup(part, number), claims_markup(part));
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

std::string page(std::vector<PagePart> const& parts) {
  require(!parts.empty(), "a page shows something");
  auto const& first = parts.front().subject;
  std::string sections;
  for (std::size_t i = 0; i < parts.size(); ++i) sections += part_markup(parts[i], i);
  auto const style = ink_style() + page_style;
  auto const data = page_data(parts).dump(-1, ' ', false, Json::error_handler_t::replace);
  return filled(page_template, {{"title", escaped(first.text.name())},
                                {"style", style},
                                {"style digest", digest(style)},
                                {"script", page_script},
                                {"script digest", digest(page_script)},
                                {"signs", symbol_definitions(first)},
                                {"parts", sections},
                                {"sources", sources_markup(first.text)},
                                {"data", packed(data)}});
}

}  // namespace leat::render
