#include "lang/check/unknown_names.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <optional>

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
    {NameKind::finding, Listed("unknown-finding"), "finding", "docs/findings.md lists them all."},
    {NameKind::rule, Listed("unknown-practice"), "rule of practice",
     "docs/model.md lists them all."},
    {NameKind::property, Listed("unknown-property"), "property of a body", ""},
}};

constexpr std::size_t most_listed = 8;
constexpr std::size_t most_shown_uses = 4;

std::string remedy_for(KindRow const& row, std::optional<std::string> const& near,
                       std::vector<std::string> const& known) {
  if (near) return fmt::format("The nearest known name is '{}'.", *near);
  if (known.empty() || known.size() > most_listed) return row.cure;
  auto const list = fmt::format("Known here: {}.", fmt::join(known, ", "));
  return *row.cure == '\0' ? list : fmt::format("{} {}", list, row.cure);
}

}  // namespace

void UnknownNames::add(NameKind kind, syntax::Word const& word, std::vector<std::string> known,
                       std::string const& junction) {
  auto& uses = uses_[{kind, word.text, junction}];
  if (uses.spans.empty()) uses.known = std::move(known);
  uses.spans.push_back(word.span);
}

void UnknownNames::report(diagnostics::Sink& sink, bool is_whole) const {
  for (auto const& [key, uses] : uses_) {
    auto const& [kind, name, junction] = key;
    auto const& row = kinds[static_cast<std::size_t>(kind)];
    auto const near = diagnostics::near_name(name, uses.known);
    if (!is_whole && !near) continue;
    diagnostics::Diagnostic found;
    found.name = row.report;
    found.headline = junction.empty() ? fmt::format("There is no {} named '{}'", row.word, name)
                                      : fmt::format("Junction '{}' has no {} named '{}'", junction,
                                                    row.word, name);
    if (uses.spans.size() > 1) found.headline += fmt::format(" (used {} times)", uses.spans.size());
    found.primary = {uses.spans.front(),
                     junction.empty()
                         ? fmt::format("'{}' is not a known {}", name, row.word)
                         : fmt::format("'{}' is no {} of '{}'", name, row.word, junction),
                     {}};
    for (std::size_t i = 1; i < std::min(uses.spans.size(), most_shown_uses); ++i)
      found.others.push_back({uses.spans[i], fmt::format("'{}' is used here too", name), {}});
    found.remedy = remedy_for(row, near, uses.known);
    sink.report(std::move(found));
  }
}

}  // namespace leat::check
