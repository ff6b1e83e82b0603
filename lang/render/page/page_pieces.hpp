#pragma once
#include <string>
#include <vector>

#include "engine/water/survey.hpp"
#include "lang/render/page/page.hpp"

// The pieces a page is put together from, each as markup or as part of the data.
namespace leat::render {

// The files that are built into the program (generated while building).
extern char const* const page_template;
extern char const* const page_style;
extern char const* const page_script;

// More cells than this are not drawn.
inline constexpr std::size_t most_drawn_cells = 40'000;

// Every level with its water as built, from the top down.
std::string levels_markup(PagePart const&, std::size_t number);
std::string legend_markup(PagePart const&);
std::string tables_markup(PagePart const&, std::size_t number);
std::string notes_markup(PagePart const&, std::size_t number);
std::string claims_markup(PagePart const&);
std::string differences_markup(std::vector<ComparisonSheet> const&);

// The signs of a newer revision have names of their own: its materials can be others.
std::string_view sign_prefix(PagePart const&);
// The number of the first file of a part's text.
std::size_t first_file(std::vector<PagePart> const&, PagePart const&);

// The texts of the design's files, line by line, as they are shown. The files of a page are
// numbered on over its texts, from `first_file`.
std::string sources_markup(source::SourceText const&, std::size_t first_file);
// Which glyph of the text is drawn for which cells: runs of [first cell, cells, file, line, column,
// columns on from cell to cell]; lines and columns from 0, in UTF-16 units of the shown text.
Json glyphs_data(Subject const&, std::size_t first_file);
// [file, line] of what is declared.
Json line_data(source::SourceText const&, source::Span, std::size_t first_file);

// The look of water as it is drawn and told.
water::WetCell wet_cell(playback::Look const&, model::Practice const&);

}  // namespace leat::render
