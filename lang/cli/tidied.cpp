#include "lang/cli/tidied.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include "lang/grammar/parse.hpp"
#include "lang/lower/lower.hpp"
#include "lang/render/documents.hpp"
#include "lang/syntax/likeness.hpp"
#include "lang/syntax/print.hpp"

namespace leat::cli {

namespace {

// As `leat resolve` shows them.
std::string as_document(std::vector<lower::Junction> const& junctions,
                        source::SourceText const& text) {
  std::vector<render::Subject> subjects;
  for (auto const& junction : junctions)
    subjects.push_back({junction.design, junction.map, text, junctions.size() == 1});
  return render::design_document(subjects);
}

bool has_no_fault_but_drawing_nothing(diagnostics::Sink const& sink) {
  auto const reports = sink.sorted();
  return std::all_of(reports.begin(), reports.end(), [](diagnostics::Diagnostic const& report) {
    return std::string_view(report.name) == "no-junction";
  });
}

std::vector<std::string> comments_of(syntax::Document const& document,
                                     source::SourceText const& text) {
  std::vector<std::string> comments;
  for (auto const& comment : document.comments) {
    comments.emplace_back(text.text(comment.span));
    comments.back().erase(comments.back().find_last_not_of(" \t") + 1);
  }
  return comments;
}

}  // namespace

std::optional<std::string> tidied(source::SourceText& text, lower::FileAccess& files,
                                  diagnostics::Sink& sink) {
  auto const tree = grammar::parse(text, sink);
  if (!sink.empty()) return std::nullopt;
  auto printed = syntax::print(tree, text);

  source::SourceText again(text.name(), printed);
  diagnostics::Sink others;
  auto const tree_again = grammar::parse(again, others);
  if (!others.empty() || !syntax::are_alike(tree, tree_again) ||
      comments_of(tree, text) != comments_of(tree_again, again))
    return std::nullopt;

  diagnostics::Sink of_meaning;
  auto const designs = lower::read_designs(text, files, of_meaning);
  if (!has_no_fault_but_drawing_nothing(of_meaning)) {
    sink = std::move(of_meaning);
    return std::nullopt;
  }
  auto const designs_again = lower::read_designs(again, files, others);
  if (others.empty() != of_meaning.empty()) return std::nullopt;
  if (as_document(designs, text) != as_document(designs_again, again)) return std::nullopt;
  return printed;
}

}  // namespace leat::cli
