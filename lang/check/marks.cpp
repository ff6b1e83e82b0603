#include "lang/check/marks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>

#include "lang/check/constant_control.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/source/code_point.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::MarkDeclaration;
using syntax::MarkRole;

constexpr std::size_t most_labels = 4;

model::MaterialId own_material(MarkRole role) {
  return role == MarkRole::plate ? model::material::plate : model::material::open;
}

std::optional<model::MaterialId> find_material(Reading const& reading, syntax::Word const& word) {
  if (auto const id = reading.names.material(word.text)) return static_cast<model::MaterialId>(*id);
  reading.unknown.add(NameKind::material, word);
  return std::nullopt;
}

void report_same_both_ways(Reading const& reading, MarkDeclaration const& mark) {
  auto const& material = mark.choice->material.text;
  reading.sink.report(
      {Listed("same-both-ways"),
       fmt::format("The mark '{}' is switched from {} to {}", mark.glyph.text, material, material),
       {mark.choice->otherwise->span, fmt::format("still {}", material), {}},
       {{mark.choice->material.span, fmt::format("{} while powered", material), {}}},
       fmt::format("Write '{} {}', or name another material after 'else'.", mark.glyph.text,
                   material)});
}

void report_never_switches(Reading const& reading, MarkDeclaration const& mark, bool value) {
  auto const& always = value ? mark.choice->material : *mark.choice->otherwise;
  reading.sink.report(
      {Listed("never-switches"),
       fmt::format("The mark '{}' never switches: it is always {}", mark.glyph.text, always.text),
       {mark.choice->control->span, fmt::format("this is always {}", value ? "on" : "off"), {}},
       {{always.span, "so the cell is always this", {}}},
       fmt::format("Correct the condition, or write '{} {}'.", mark.glyph.text, always.text)});
}

MarkFill read_fill(Reading const& reading, MarkDeclaration const& mark) {
  MarkFill fill;
  fill.powered = fill.unpowered = own_material(mark.role);
  if (!mark.choice) return fill;
  auto const powered = find_material(reading, mark.choice->material);
  auto const unpowered =
      mark.choice->otherwise ? find_material(reading, *mark.choice->otherwise) : powered;
  fill.is_sound = powered && unpowered;
  if (!fill.is_sound) return fill;
  fill.powered = *powered;
  fill.unpowered = *unpowered;
  if (mark.choice->control) fill.control = &*mark.choice->control;
  return fill;
}

bool has_known_signals(Reading const& reading, syntax::Expression const& expression) {
  bool is_known = true;
  for_each_name(expression, [&](syntax::Expression const& name) {
    is_known = is_known && reading.names.signals.find(name.name);
  });
  return is_known;
}

bool has_known_signals(Reading const& reading) {
  auto const& all = reading.names.signals.all;
  return std::all_of(all.begin(), all.end(), [&](auto const* signal) {
    return !signal->on || has_known_signals(reading, *signal->on);
  });
}

void check_switching(Reading const& reading, Signals const& signals,
                     std::vector<MarkFill> const& fills) {
  ConstantFinder finder(reading.names, signals);
  bool const is_sound = signals.is_sound && has_known_signals(reading);
  for (std::size_t at = 0; at < fills.size(); ++at) {
    auto const& fill = fills[at];
    auto const& mark = *reading.names.marks[at];
    if (!fill.is_sound || !fill.control) continue;
    if (fill.powered == fill.unpowered) {
      report_same_both_ways(reading, mark);
    } else if (is_sound && has_known_signals(reading, *fill.control)) {
      if (auto const value = finder.constant_value(*fill.control))
        report_never_switches(reading, mark, *value);
    }
  }
}

struct Stray {
  std::size_t count = 0;
  MarkUse first;
  std::string junction;
};

bool is_drawn(Drawing const& drawing) {
  return !drawing.strays.empty() || std::any_of(drawing.marks.begin(), drawing.marks.end(),
                                                [](MarkUse const& use) { return use.count > 0; });
}

// What is not plain is named by its number too: it may look like something else, or like nothing.
std::string shown(std::string const& glyph) {
  if (glyph == " ") return "a blank";
  if (glyph.size() == 1) return fmt::format("'{}'", glyph);
  auto const number = static_cast<std::uint32_t>(source::code_point_at(glyph, 0).value);
  return fmt::format("'{}' (U+{:04X})", glyph, number);
}

std::string cells(std::size_t count) {
  return count == 1 ? "1 cell" : fmt::format("{} cells", count);
}

void report_stray(Reading const& reading, std::string const& glyph, Stray const& stray,
                  std::vector<MarkDeclaration const*> const& unused) {
  diagnostics::Diagnostic found;
  found.name = Listed("undeclared-mark");
  found.headline = fmt::format("Junction '{}' is drawn with {}, which no mark declares ({})",
                               stray.junction, shown(glyph), cells(stray.count));
  found.primary = {stray.first.span,
                   fmt::format("first of {} drawn with {}", cells(stray.count), shown(glyph)),
                   stray.first.first};
  for (std::size_t i = 0; i < std::min(unused.size(), most_labels); ++i)
    found.others.push_back(
        {unused[i]->glyph.span,
         fmt::format("'{}' is declared here and drawn nowhere", unused[i]->glyph.text),
         {}});
  if (glyph == " ")
    found.remedy = "Draw every cell with a mark.";
  else if (unused.size() == 1)
    found.remedy = fmt::format("Draw '{}' there, or declare {} in the 'marks' block.",
                               unused.front()->glyph.text, shown(glyph));
  else
    found.remedy =
        fmt::format("Declare {} in the 'marks' block, or correct the drawing.", shown(glyph));
  reading.sink.report(std::move(found));
}

void report_unused(Reading const& reading, MarkDeclaration const& mark) {
  reading.sink.report({Listed("unused-mark"),
                       fmt::format("The mark '{}' is drawn in no junction", mark.glyph.text),
                       {mark.span, fmt::format("'{}' is declared here", mark.glyph.text), {}},
                       {},
                       "Draw it where it belongs, or remove the declaration."});
}

// The glyphs that no mark declares, each with all its cells, in the order in which they are met.
class Strays {
 public:
  void add(Drawing const& drawing) {
    for (auto const& [glyph, use] : drawing.strays) {
      auto const [at, is_new] = places_.try_emplace(glyph, all_.size());
      if (is_new) all_.emplace_back(glyph, Stray{0, use, drawing.junction->name.text});
      all_[at->second].second.count += use.count;
    }
  }
  std::vector<std::pair<std::string, Stray>> const& all() const { return all_; }

 private:
  std::map<std::string, std::size_t> places_;
  std::vector<std::pair<std::string, Stray>> all_;
};

void check_marks_of(Reading const& reading, FileNames const& file,
                    std::vector<Drawing> const& drawings) {
  auto const& junctions = file.junctions;
  bool const is_all_drawn = std::all_of(junctions.begin(), junctions.end(), [&](auto junction) {
    return is_drawn(drawings[junction]);
  });
  if (!is_all_drawn || junctions.empty()) return;
  std::vector<MarkDeclaration const*> unused;
  for (auto const mark : file.marks) {
    bool const is_used = std::any_of(junctions.begin(), junctions.end(), [&](auto junction) {
      return drawings[junction].marks[mark].count > 0;
    });
    if (!is_used) unused.push_back(reading.names.marks[mark]);
  }
  Strays strays;
  for (auto const junction : junctions) strays.add(drawings[junction]);
  if (strays.all().empty()) {
    for (auto const* mark : unused) report_unused(reading, *mark);
  }
  for (auto const& [glyph, stray] : strays.all()) {
    report_stray(reading, glyph, stray, unused);
    unused.clear();
  }
}

}  // namespace

std::vector<MarkFill> read_fills(Reading const& reading, Signals const& signals) {
  std::vector<MarkFill> fills;
  for (auto const* mark : reading.names.marks) fills.push_back(read_fill(reading, *mark));
  check_switching(reading, signals, fills);
  return fills;
}

// A glyph without a mark and a mark without a glyph are mostly one slip of the pen. Where a file
// has both, only the glyphs are reported, and the marks named beside the first of them. While a
// junction is not drawn at all, nothing is known about its file's marks.
void check_marks(Reading const& reading, std::vector<Drawing> const& drawings) {
  if (!reading.is_whole) return;
  for (auto const& file : reading.names.files) check_marks_of(reading, file, drawings);
}

}  // namespace leat::check
