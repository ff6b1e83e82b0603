#include "lang/check/unknown_names.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <optional>
#include <set>

#include "engine/model/finding_kind.hpp"
#include "engine/model/practice.hpp"
#include "lang/check/bodies_and_practice.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/diagnostics/near_name.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;

struct KindRow {
  NameKind kind;
  Listed report;
  char const* word;
  char const* cure;  // where there is no close name and the known ones are too many to list
};

constexpr std::size_t kind_count = static_cast<std::size_t>(NameKind::property) + 1;
constexpr std::array<KindRow, kind_count> kinds{{
    {NameKind::signal, Listed("unknown-signal"), "signal", "Declare it in the 'signals' block."},
    {NameKind::material, Listed("unknown-material"), "material",
     "Declare it in the 'materials' block."},
    {NameKind::inlet, Listed("unknown-inlet"), "inlet", "Give a mark the role: 'i inlet NAME'."},
    {NameKind::outlet, Listed("unknown-outlet"), "outlet",
     "Give a mark the role: 'k outlet NAME'."},
    {NameKind::body, Listed("unknown-body"), "body", "Declare it: 'body NAME { ... }'."},
    {NameKind::junction, Listed("unknown-junction"), "junction", "Name a junction of this file."},
    {NameKind::design, Listed("unknown-design"), "junction or works",
     "Place a junction or works of this file."},
    {NameKind::finding, Listed("unknown-finding"), "finding", "docs/findings.md lists them all."},
    {NameKind::rule, Listed("unknown-practice"), "rule of practice",
     "docs/model.md lists them all."},
    {NameKind::property, Listed("unknown-property"), "property of a body", ""},
}};

constexpr std::size_t most_listed = 8;
constexpr std::size_t most_shown_uses = 4;
constexpr std::size_t most_compared = 200;

std::string remedy_for(KindRow const& row, std::optional<std::string> const& near,
                       std::vector<std::string> const& known) {
  if (near) return fmt::format("The nearest known name is '{}'.", *near);
  if (known.empty() || known.size() > most_listed) return row.cure;
  auto const list = fmt::format("Known here: {}.", fmt::join(known, ", "));
  return *row.cure == '\0' ? list : fmt::format("{} {}", list, row.cure);
}

template <class Named>
std::vector<std::string> names_of(std::vector<Named> const& all) {
  std::vector<std::string> names;
  for (auto const& named : all) names.push_back(named.name.text);
  return names;
}

template <class Declaration>
std::vector<std::string> names_of(Roll<Declaration> const& roll) {
  std::vector<std::string> names;
  for (auto const& [name, id] : roll.ids) names.push_back(name);
  std::sort(names.begin(), names.end());
  return names;
}

template <class Table>
std::vector<std::string> names_of_rows(Table const& table) {
  std::vector<std::string> names;
  for (auto const& row : table) names.emplace_back(row.name);
  return names;
}

template <class Declarations>
bool declares_number(Declarations const& all, std::string_view name) {
  return std::any_of(all.begin(), all.end(), [&](auto const& declaration) {
    if constexpr (requires { declaration.name; }) {
      return declaration.name.text == name;
    } else {
      auto const* number = std::get_if<syntax::NumberDeclaration>(&declaration);
      return number != nullptr && number->name.text == name;
    }
  });
}

// Of the file, of a junction or of a works.
bool is_number(syntax::Document const& document, std::string_view name) {
  auto const junctions = all_of<syntax::JunctionDeclaration>(document);
  auto const works = all_of<syntax::WorksDeclaration>(document);
  return declares_number(document.declarations, name) ||
         std::any_of(junctions.begin(), junctions.end(),
                     [&](auto const* each) { return declares_number(each->numbers, name); }) ||
         std::any_of(works.begin(), works.end(),
                     [&](auto const* each) { return declares_number(each->items, name); });
}

// The name is known, but for something inside of the works.
void tell_joined(std::tuple<NameKind, std::string, std::string> const& key, source::Span join,
                 std::vector<std::string> const& known, diagnostics::Diagnostic& found) {
  auto const& [kind, name, works] = key;
  bool const is_outlet = kind == NameKind::outlet;
  auto const* word = is_outlet ? "outlet" : "inlet";
  found.headline =
      fmt::format("The {} '{}' of works '{}' is joined: {}", word, name, works,
                  is_outlet ? "bodies go on from there" : "nobody comes in there from outside");
  found.primary.text = fmt::format("an {} of the works itself is wanted here", word);
  found.others.push_back({join, "it is joined here", {}});
  found.remedy = known.empty() || known.size() > most_listed
                     ? fmt::format("Name an {} that is not joined, or take the join away.", word)
                     : fmt::format("Name one that is not joined ({}), or take the join away.",
                                   fmt::join(known, ", "));
}

}  // namespace

std::vector<std::string> UnknownNames::known(NameKind kind, Uses const& uses) const {
  std::vector<std::string> names;
  if (uses.ports != nullptr) {
    for (auto const* port : *uses.ports) names.push_back(port->name.text);
    return names;
  }
  if (uses.ends != nullptr) {
    for (auto const& [name, id] : *uses.ends) {
      if (names.size() < most_compared) names.push_back(name);
    }
    return names;
  }
  switch (kind) {
    case NameKind::signal:
      return names_of(names_.signals);
    case NameKind::material: {
      names = names_of(names_.materials);
      auto const& built_in = built_in_material_names();
      names.insert(names.begin(), built_in.begin(), built_in.end());
      return names;
    }
    case NameKind::inlet:
      return names_of(names_.judged().inlets.all);
    case NameKind::outlet:
      return names_of(names_.judged().outlets.all);
    case NameKind::body:
      for (auto const& profile : names_.profiles) names.push_back(profile.name);
      return names;
    case NameKind::junction:
    case NameKind::design: {
      names = names_of(names_.junctions);
      auto const works = names_of(names_.works);
      names.insert(names.end(), works.begin(), works.end());
      return names;
    }
    case NameKind::finding:
      return names_of_rows(model::finding_table);
    case NameKind::rule:
      return names_of_rows(model::rule_table);
    case NameKind::property:
      return body_property_names();
  }
  return names;
}

void UnknownNames::add(NameKind kind, syntax::Word const& word) {
  uses_[{kind, word.text, {}}].spans.push_back(word.span);
}

void UnknownNames::add_port(NameKind kind, syntax::Word const& word, std::string const& junction,
                            std::vector<PortName const*> const& ports) {
  auto& uses = uses_[{kind, word.text, junction}];
  uses.spans.push_back(word.span);
  uses.ports = &ports;
}

void UnknownNames::add_end(NameKind kind, syntax::Word const& word, std::string const& works,
                           std::map<std::string, std::size_t, std::less<>> const& ends,
                           std::optional<source::Span> join) {
  auto& uses = uses_[{kind, word.text, works}];
  uses.spans.push_back(word.span);
  uses.ends = &ends;
  uses.join = join;
}

diagnostics::Diagnostic UnknownNames::describe(Key const& key, Uses const& uses,
                                               std::optional<std::string> const& near,
                                               std::vector<std::string> const& known) const {
  auto const& [kind, name, junction] = key;
  auto const& row = kinds[static_cast<std::size_t>(kind)];
  diagnostics::Diagnostic found;
  found.name = row.report;
  found.headline = junction.empty() ? fmt::format("There is no {} named '{}'", row.word, name)
                                    : fmt::format("{} '{}' has no {} named '{}'",
                                                  uses.ends != nullptr ? "Works" : "Junction",
                                                  junction, row.word, name);
  bool const is_of_number = kind == NameKind::signal && is_number(document_, name);
  if (is_of_number)
    found.headline = fmt::format("'{}' is a number, where a signal is wanted", name);
  if (uses.spans.size() > 1) found.headline += fmt::format(" (used {} times)", uses.spans.size());
  found.primary = {uses.spans.front(),
                   junction.empty()
                       ? fmt::format("'{}' is not a known {}", name, row.word)
                       : fmt::format("'{}' is no {} of '{}'", name, row.word, junction),
                   {}};
  for (std::size_t i = 1; i < std::min(uses.spans.size(), most_shown_uses); ++i)
    found.others.push_back({uses.spans[i], fmt::format("'{}' is used here too", name), {}});
  found.remedy = remedy_for(row, is_of_number ? std::nullopt : near, known);
  if (uses.join) tell_joined(key, *uses.join, known, found);
  return found;
}

// One word in a loop is a name for each turn: the first tells of all. Looking for a close name costs
// the length of the known ones, so it is done for as many unknown names as can be reported, and past
// that the rest is only counted.
void UnknownNames::report(diagnostics::Sink& sink, bool is_whole) const {
  std::size_t compared = 0;
  std::set<std::pair<NameKind, std::size_t>> told;
  for (auto const& [key, uses] : uses_) {
    if (!told.emplace(std::get<NameKind>(key), uses.spans.front().begin).second) continue;
    if (sink.is_full() || ++compared > most_compared) {
      if (is_whole) sink.leave_out();
      continue;
    }
    auto const names = known(std::get<NameKind>(key), uses);
    auto const near = diagnostics::near_name(std::get<1>(key), names);
    if (is_whole || near) sink.report(describe(key, uses, near, names));
  }
}

}  // namespace leat::check
