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
    CatalogueRow{"not-understood-yet", "A construct of a later edition."},
    // the order of words
    CatalogueRow{"unknown-declaration", "A declaration begins with a word that begins none."},
    CatalogueRow{"unknown-entry", "An entry of a block begins with something that begins none."},
    CatalogueRow{"cut-short", "A line or block ends before it is complete."},
    CatalogueRow{"out-of-place", "Something else was expected where this stands."},
    CatalogueRow{"crowded-line", "Something follows on a line that is already complete."},
    CatalogueRow{"unclosed-block", "A block has no closing brace."},
    CatalogueRow{"stray-brace", "A closing brace closes nothing."},
    CatalogueRow{"nested-too-deep", "An expression is nested too deep."},
    // names and texts
    CatalogueRow{"reserved-name", "A word of the language is used as a name."},
    CatalogueRow{"malformed-name", "A name is not written as a name."},
    CatalogueRow{"unclosed-text", "A quoted text does not end on its line."},
    CatalogueRow{"unknown-escape", "A backslash in a text is followed by something unknown."},
    // marks and rows
    CatalogueRow{"long-mark", "A mark is more than one character."},
    CatalogueRow{"unfit-mark", "A character cannot be a mark."},
    CatalogueRow{"open-row", "A row has no closing bar."},
    CatalogueRow{"tab-in-row", "A row holds a tab."},
    CatalogueRow{"text-after-row", "Something follows on the line of a row."},
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
