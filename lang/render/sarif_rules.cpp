#include "lang/render/sarif_rules.hpp"

#include <fmt/format.h>

#include <array>

#include "engine/contract.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/render/finding_pages.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using verdicts::Truthfulness;

struct VerdictRow {
  std::string_view id, summary, description, level;
};

constexpr std::array<VerdictRow, 5> verdict_rows{{
    {"violated-expectation", "An expectation of the file does not hold.",
     "Some combination of the signals breaks what the file expects; the nearest one is shown.",
     "error"},
    {"empty-expectation", "The condition of an expectation never arises.",
     "No combination of the signals makes the condition true, so the expectation says nothing.",
     "error"},
    {"undecided-expectation", "It is not known whether an expectation holds.",
     "There was too much to run, or the signals never come to rest where it speaks of.", "error"},
    {"bounded-expectation", "An expectation holds as far as it was looked for.",
     "Something was left out since there was too much of it; nothing against it was found.",
     "error"},
    {undecided_junction, "It is not known whether a junction is all right.",
     "There was too much to run, the signals never come to rest, or a promise may bar findings.",
     "error"},
}};

std::string_view meaning_of(std::string_view fault) {
  for (auto const& row : diagnostics::catalogue) {
    if (row.name == fault) return row.meaning;
  }
  return "The file cannot be read.";
}

}  // namespace

SarifRules::SarifRules(ToldRun const& run) {
  for (auto const& row : model::finding_table) {
    auto const section = finding_section(findings_manual, row.name).value_or("");
    auto const prose = section_prose(section);
    add(row.name, section_summary(section), prose.empty() ? std::string() : prose.front(),
        fmt::format("{}\n\nleat explain {} shows a design with it and the same repaired.",
                    fmt::join(prose, "\n\n"), row.name),
        word_of(row.severity));
  }
  for (auto const& row : verdict_rows)
    add(row.id, row.summary, std::string(row.description), std::string(row.description), row.level);
  for (auto const& file : run.files) {
    for (auto const& fault : file.faults) {
      if (index_.contains(fault.name)) continue;
      std::string const meaning(meaning_of(fault.name));
      add(fault.name, meaning, meaning, meaning + " Nothing in the file was judged.", "error");
    }
  }
}

void SarifRules::add(std::string_view id, std::string_view summary, std::string const& description,
                     std::string const& help, std::string_view level) {
  index_.emplace(id, list_.size());
  list_.push_back({{"id", id},
                   {"shortDescription", {{"text", summary}}},
                   {"fullDescription", {{"text", description}}},
                   {"help", {{"text", help}}},
                   {"defaultConfiguration", {{"level", level}}}});
}

void SarifRules::put_rule(Json& result, std::string const& id) const {
  auto const found = index_.find(id);
  require(found != index_.end(), "SARIF: a result without a rule");
  result["ruleId"] = id;
  result["ruleIndex"] = found->second;
}

std::string_view rule_of(Truthfulness verdict) {
  switch (verdict) {
    case Truthfulness::violated:
      return "violated-expectation";
    case Truthfulness::empty:
      return "empty-expectation";
    case Truthfulness::undecided:
      return "undecided-expectation";
    case Truthfulness::holds_within_bounds:
      return "bounded-expectation";
    case Truthfulness::holds:
      break;
  }
  return {};
}

}  // namespace leat::render
