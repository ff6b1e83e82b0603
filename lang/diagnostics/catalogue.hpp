#pragma once
#include <array>
#include <string>
#include <string_view>

// Every diagnostic a design file can earn: its stable short name and what it says in general. One
// table; a name that is not in it does not compile.
namespace leat::diagnostics {

struct CatalogueRow {
  std::string_view name;
  std::string_view meaning;
};

inline constexpr std::array catalogue{
    // the bytes of the file
    CatalogueRow{"text-too-large", "The file is larger than what is read."},
    CatalogueRow{"not-utf8", "The file holds bytes that are no UTF-8 text."},
    CatalogueRow{"nul-byte", "The file holds zero bytes."},
    CatalogueRow{"control-character", "The file holds a control character."},
    // the edition line
    CatalogueRow{"edition-missing", "The file does not begin with its edition of the language."},
    CatalogueRow{"edition-unknown", "The file is written in an edition that is not understood."},
    CatalogueRow{"edition-misplaced", "The edition stands somewhere else than at the beginning."},
    // what a file includes
    CatalogueRow{"include-unread", "An included file cannot be read."},
    CatalogueRow{"include-loop", "A file includes itself, or files include each other in a loop."},
    // the order of words
    CatalogueRow{"unknown-declaration", "A declaration begins with a word that begins none."},
    CatalogueRow{"unknown-entry", "An entry of a block begins with something that begins none."},
    CatalogueRow{"cut-short", "A line or block ends before it is complete."},
    CatalogueRow{"out-of-place", "Something else was expected where this stands."},
    CatalogueRow{"misspelt-word", "A word of the language is misspelt and was taken for a name."},
    CatalogueRow{"crowded-line", "Something follows on a line that is already complete."},
    CatalogueRow{"unclosed-block", "A block has no closing brace."},
    CatalogueRow{"stray-brace", "A closing brace closes nothing."},
    CatalogueRow{
        "nested-too-deep",
        "An expression or a repetition is nested too deep, or a number has too many steps."},
    CatalogueRow{"repetition-misplaced", "A repetition stands around whole declarations."},
    CatalogueRow{"said-twice", "A place says the same of itself twice."},
    // names and texts
    CatalogueRow{"reserved-name", "A word of the language is used as a name."},
    CatalogueRow{"malformed-name", "A name is not written as a name."},
    CatalogueRow{"unclosed-text", "A quoted text does not end on its line."},
    CatalogueRow{"unknown-escape", "A backslash in a text is followed by something unknown."},
    // marks and rows
    CatalogueRow{"long-mark", "A mark is more than one character."},
    CatalogueRow{"unfit-mark", "A character cannot be a mark."},
    CatalogueRow{"outside-twice", "A junction or works says twice what is outside it."},
    CatalogueRow{"open-row", "A row has no closing bar."},
    CatalogueRow{"tab-in-row", "A row holds a tab."},
    CatalogueRow{"text-after-row", "Something follows on the line of a row."},
    // what names mean
    CatalogueRow{"declared-twice", "Two declarations of one kind have the same name."},
    CatalogueRow{"name-taken", "A name already means something else."},
    CatalogueRow{"too-many", "There are more of something than can be read."},
    CatalogueRow{"unknown-signal", "A signal that is not declared is used."},
    CatalogueRow{"unknown-material", "A material that is not declared is used."},
    CatalogueRow{"unknown-inlet", "An inlet that the junction does not draw is named."},
    CatalogueRow{"unknown-outlet", "An outlet that the junction does not draw is named."},
    CatalogueRow{"unknown-body", "A body that is not declared is named."},
    CatalogueRow{"unknown-junction", "A junction that the file does not draw is named."},
    CatalogueRow{"unknown-finding", "A finding that there is not is named."},
    CatalogueRow{"unknown-practice", "A rule of practice that there is not is set."},
    CatalogueRow{"unknown-property", "A body has a property that there is not."},
    // numbers and repetitions
    CatalogueRow{"unknown-number", "A number that is not declared is used, or given to a place."},
    CatalogueRow{"impossible-number", "A number divides by 0 or has an exponent below 0."},
    CatalogueRow{"number-out-of-range",
                 "A number is beyond what is reckoned with, or a level below 0."},
    CatalogueRow{"too-many-repetitions", "Repetitions make more entries than can be read."},
    // what signals and materials mean
    CatalogueRow{"duration-out-of-range", "A time is too short or too long."},
    CatalogueRow{"loop-of-wires", "Wires drive themselves in a loop."},
    CatalogueRow{"repeated-trait", "A material has a trait twice."},
    CatalogueRow{"contradictory-traits", "A material has traits that exclude each other."},
    CatalogueRow{"same-both-ways", "A switched mark is the same material in both settings."},
    CatalogueRow{"never-switches", "The condition of a switched mark never changes."},
    // what drawings mean
    CatalogueRow{"no-junction", "The file draws no junction."},
    CatalogueRow{"no-levels", "A junction has no drawing."},
    CatalogueRow{"empty-level", "A level holds no cells."},
    CatalogueRow{"level-missing", "A level below the top is not drawn."},
    CatalogueRow{"level-repeated", "A level is drawn twice."},
    CatalogueRow{"level-backwards", "A range of levels runs from the upper to the lower one."},
    CatalogueRow{"too-large", "A junction has more cells or levels than can be read."},
    CatalogueRow{"uneven-rows", "The rows of a junction differ in width."},
    CatalogueRow{"uneven-levels", "The levels of a junction differ in their number of rows."},
    CatalogueRow{"undeclared-mark", "A drawing holds a glyph that no mark declares."},
    CatalogueRow{"unused-mark", "A declared mark is drawn nowhere."},
    CatalogueRow{"no-inlet", "A junction has no inlet."},
    CatalogueRow{"no-outlet", "A junction has no outlet."},
    CatalogueRow{"inlet-in-rock", "An inlet lies in a material that no body may enter."},
    CatalogueRow{"outlet-in-rock", "An outlet lies in a material that no body may enter."},
    CatalogueRow{"plate-without-meaning",
                 "A plate presses no signal, or a plate signal has no plate."},
    CatalogueRow{"plate-nowhere", "A plate signal is placed by no mark."},
    CatalogueRow{"plate-in-mid-air", "A plate lies on nothing that carries it."},
    CatalogueRow{"not-a-plate", "A mark is a plate for a signal that is none."},
    // what is judged, and what is expected
    CatalogueRow{"repeated-property", "A body has a property twice."},
    CatalogueRow{"contradictory-body", "A body both floats and sinks."},
    CatalogueRow{"body-out-of-range", "A body has a measure out of its range."},
    CatalogueRow{"practice-out-of-range", "A rule of practice is set out of its range."},
    CatalogueRow{"repeated-practice", "A rule of practice is set twice."},
    CatalogueRow{"which-junction", "It is unclear which of several junctions is meant."},
    CatalogueRow{"drawn-elsewhere", "A junction of an included file is spoken of."},
    CatalogueRow{"place-outside", "A place lies outside the drawing."},
    CatalogueRow{"expects-nothing", "A block or table of expectations is empty."},
    CatalogueRow{"otherwise-alone", "'otherwise' follows no condition."},
    CatalogueRow{"condition-unfit", "A clause has a condition where it cannot have one."},
    CatalogueRow{"findings-after-events", "Findings are expected after events."},
    CatalogueRow{"not-an-event", "An event names a signal that is no input."},
    CatalogueRow{"rounds-out-of-range", "A train is dealt too often, or never."},
    CatalogueRow{"nothing-is-no-outlet", "'nothing' stands among outlets."},
    CatalogueRow{"uneven-table", "A row of a table has more or fewer settings than headings."},
    CatalogueRow{"repeated-column", "A table has two columns for one signal."},
    CatalogueRow{"repeated-outlet", "A row of a table names an outlet twice."},
    CatalogueRow{"contradictory-rows", "Two rows of a table apply at once and differ."},
    CatalogueRow{"no-reason", "A finding is accepted without a reason."},
    // works
    CatalogueRow{"works-in-itself", "A works is placed within itself, or too deep within others."},
    CatalogueRow{"unknown-design", "Something that is neither junction nor works is placed."},
    CatalogueRow{"unused-setting", "A place gives a signal that nothing in it depends on."},
    CatalogueRow{"joined-twice", "An outlet is joined to two inlets."},
    CatalogueRow{"overlap", "Two places overlap in cells that are not filled alike."},
    CatalogueRow{"outlets-overlap", "Two outlets share some of their cells, but not all."},
    CatalogueRow{"works-in-time", "A works is asked what only junctions are asked."},
    CatalogueRow{"empty-works", "A works places nothing."},
    CatalogueRow{"accepted-twice", "The same finding is accepted twice."},
};

namespace detail {

// Called while compiling, and only for a name without a row: there is no such function.
void name_is_no_row_of_the_catalogue();

}  // namespace detail

// A row's name, checked while compiling: `.name = Listed("open-row")`.
class Listed {
 public:
  consteval Listed(char const* name) : name_(name) {
    for (auto const& row : catalogue)
      if (row.name == name_) return;
    detail::name_is_no_row_of_the_catalogue();
  }
  operator std::string() const { return std::string(name_); }
  constexpr std::string_view view() const { return name_; }

 private:
  std::string_view name_;
};

}  // namespace leat::diagnostics
