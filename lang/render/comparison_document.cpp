#include "lang/render/comparison_sheet.hpp"
#include "lang/render/json.hpp"

namespace leat::render {

namespace {

std::string_view code_of(compare::Change change) {
  return change == compare::Change::same ? "same" : word_of(change);
}

Json text_or_null(std::string const& text) { return text.empty() ? Json(nullptr) : Json(text); }

Json entry_json(ComparisonEntry const& entry) {
  return {{"change", code_of(entry.change)},
          {"topic", entry.topic},
          {"name", entry.name},
          {"body", text_or_null(entry.body)},
          {"headline", entry.headline},
          {"condition", text_or_null(entry.condition)},
          {"before", text_or_null(entry.before)},
          {"after", text_or_null(entry.after)},
          {"steps", text_or_null(entry.steps)},
          {"replay", entry.replay}};
}

Json sheet_json(ComparisonSheet const& sheet) {
  auto entries = Json::array();
  for (auto const& entry : sheet.entries) entries.push_back(entry_json(entry));
  return {{"before", text_or_null(sheet.junction_before)},
          {"after", text_or_null(sheet.junction_after)},
          {"change", code_of(sheet.gravest)},
          {"proved", sheet.is_proved},
          {"complete", !sheet.is_cut},
          {"routes", sheet.routes},
          {"routes_same", sheet.routes_same},
          {"combinations", count_json(sheet.combinations)},
          {"shift", sheet.shift ? place_json(*sheet.shift) : Json(nullptr)},
          {"differences", std::move(entries)}};
}

}  // namespace

std::string comparison_document(FileComparison const& comparison, int exit) {
  auto document = document_head("leat-comparison");
  document["before"] = comparison.before;
  document["after"] = comparison.after;
  document["exit"] = exit;
  document["verdict"] = comparison.verdict;
  document["junctions"] = Json::array();
  for (auto const& sheet : comparison.sheets) document["junctions"].push_back(sheet_json(sheet));
  return printed(document);
}

}  // namespace leat::render
