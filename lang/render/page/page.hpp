#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/findings/finding.hpp"
#include "engine/playback/playback.hpp"
#include "engine/verdicts/expectations.hpp"
#include "lang/render/comparison_sheet.hpp"
#include "lang/render/json.hpp"
#include "lang/render/subject.hpp"
#include "lang/render/table_sheet.hpp"

// One self-contained page: a design with its levels, tables and findings, to be read without
// script and without a net, and to be worked with where there is script. Nothing is computed in
// the page: all that can be done to the design was solved beforehand and is embedded.
namespace leat::render {

// A finding in words, for a page.
struct PageNote {
  std::string severity, name, headline, place, when, steps, reason, remedy, accepted;
  std::string also;  // where else in a works
  std::vector<model::Cell> cells;
  std::optional<std::vector<model::SignalId>> flips;  // the nearest way to it
};

// An expectation and what became of it.
struct PageClaim {
  std::string title, clause, verdict, place, when;
};

// A junction or a works of the page.
struct PagePart {
  Subject subject;
  playback::Playback const& playback;
  TableSheet sheet;
  bool has_table = true;  // false: it would be too long to be read
  std::vector<PageNote> notes;
  std::vector<PageClaim> claims;
  std::vector<std::string> left_out;  // sentences: what is not in the page, and why
  // Of two revisions: which one it is, and where it is drawn in another way than the other.
  enum class Revision { only, before, now } revision = Revision::only;
  std::vector<model::Cell> differing;
};

// Of two revisions, each junction as it was before the same one as it is now; and what the two do
// differently.
std::string page(std::vector<PagePart> const&, std::vector<ComparisonSheet> const& = {});

// The cells of each that are drawn in another way in the other, which stands shifted by so much:
// made of something else, switched by something else, or another inlet or outlet.
struct DifferingCells {
  std::vector<model::Cell> before, now;
};
DifferingCells differing_cells(Subject const& before, Subject const& now, model::Place shift);

// leat-page: what the page's script reads.
Json page_data(std::vector<PagePart> const&);

}  // namespace leat::render
