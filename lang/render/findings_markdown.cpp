#include <fmt/format.h>

#include "lang/render/findings_formats.hpp"
#include "lang/render/markdown.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using Lines = std::vector<std::vector<std::string>>;
using verdicts::Truthfulness;

// A table under a line of its own; nothing where it has only its heading.
std::string section(std::string_view title, Lines const& lines) {
  return lines.size() < 2 ? std::string() : fmt::format("\n{}\n\n{}", title, markdown_table(lines));
}

std::string where(Spot const& spot, std::vector<model::Place> const& cells) {
  auto words = markdown_code(spot_words(spot));
  if (!cells.empty()) words += ", " + place_words(cells.front());
  if (cells.size() > 1) words += fmt::format(" and {}", counted(cells.size() - 1, "more cell"));
  return words;
}

std::string junction_part(ToldJunction const& junction) {
  Lines open{{"severity", "finding", "where", "what", "when", "do"}};
  Lines accepted{{"finding", "where", "what", "because"}};
  Lines unkept{{"verdict", "expectation", "where", "fails when", "what happens"}};
  for (auto const& finding : junction.findings) {
    auto const place = where(finding.spot, finding.cells);
    auto const headline = markdown_text(finding.headline);
    if (finding.accepted)
      accepted.push_back({finding.name, place, headline, markdown_code(finding.accepted->reason)});
    else
      open.push_back({std::string(word_of(finding.severity)), finding.name, place, headline,
                      markdown_text(finding.when), markdown_text(finding.remedy)});
  }
  std::size_t kept = 0;
  for (auto const& expectation : junction.expectations) {
    kept += expectation.verdict == Truthfulness::holds ? 1 : 0;
    if (expectation.verdict != Truthfulness::holds)
      unkept.push_back({std::string(word_of(expectation.verdict)),
                        markdown_code(expectation.clause), where(expectation.spot, {}),
                        markdown_text(expectation.when), markdown_text(expectation.outcome)});
  }
  auto text = fmt::format("\n### {}\n", markdown_text(junction.name));
  for (auto const& [headline, remedy, severity] : junction.open)
    text += fmt::format("\nUndecided: {}. {}\n", markdown_text(headline), markdown_text(remedy));
  text += section("Findings:", open) +
          section("Expectations that were not found to hold:", unkept) +
          section("Accepted findings:", accepted);
  return text + fmt::format("\n{} found to hold.\n",
                            counted(kept, "expectation was", "expectations were"));
}

std::string file_part(ToldFile const& file) {
  auto text = fmt::format("\n## {}: {}\n", markdown_code(file.name), file.verdict);
  Lines faults{{"fault", "where", "what", "do"}};
  for (auto const& fault : file.faults)
    faults.push_back({fault.name, where(fault.spot, {}), markdown_text(fault.headline),
                      markdown_text(fault.remedy)});
  text += section("Faults of the file, so that nothing was judged:", faults);
  if (file.faults_left_out > 0)
    text += fmt::format("\n{} not shown.\n",
                        counted(file.faults_left_out, "more fault is", "more faults are"));
  for (auto const& junction : file.junctions) text += junction_part(junction);
  if (!file.is_finished) text += "\n**Interrupted**: this file was not judged to its end.\n";
  return text;
}

}  // namespace

std::string findings_markdown(ToldRun const& run) {
  auto text =
      "# leat check\n\n" + markdown_text(run_line(run).substr(0, run_line(run).size() - 1)) + "\n";
  for (auto const& file : run.files) text += file_part(file);
  return text;
}

}  // namespace leat::render
