#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "lang/cli/commands.hpp"
#include "lang/cli/files.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/sights.hpp"
#include "lang/render/check_report.hpp"
#include "lang/render/diagnostic_text.hpp"
#include "lang/render/works_report.hpp"

namespace leat::cli {

namespace {

using verdicts::Truthfulness;

// One file of the run with all that became of it.
struct CheckedFile {
  std::string name;
  std::optional<FileFault> fault;
  std::unique_ptr<Loaded> loaded;
  std::vector<diagnostics::Diagnostic> faults;
  std::size_t faults_left_out = 0;
  // By junction; of works the second, as of a junction of too many signals to be run as one.
  std::vector<Judgement> judgements;
  std::vector<std::unique_ptr<works::WorksJudgement>> works;
  Exit exit = Exit::holds;

  std::size_t size() const { return judgements.size(); }
  bool is_works(std::size_t i) const { return works[i] != nullptr; }
};

Exit exit_of(Truthfulness verdict) {
  switch (verdict) {
    case Truthfulness::holds:
      return Exit::holds;
    case Truthfulness::violated:
    case Truthfulness::empty:
      return Exit::violated;
    case Truthfulness::holds_within_bounds:
    case Truthfulness::undecided:
      return Exit::undecided;
  }
  return Exit::fault;
}

Exit exit_of(std::vector<findings::Finding> const& findings, model::Severity fail_on) {
  bool const fails = std::any_of(findings.begin(), findings.end(), [&](auto const& finding) {
    return !finding.accepted_by && finding.severity >= fail_on;
  });
  return fails ? Exit::violated : Exit::holds;
}

Exit exit_of(works::WorksJudgement const& judged, model::Severity fail_on) {
  auto exit = works::is_incomplete(judged) ? Exit::undecided : Exit::holds;
  for (auto const& piece : works::pieces_of(judged))
    exit = worst(exit, exit_of(piece.judged->findings, fail_on));
  exit = worst(exit, exit_of(render::whole_of(judged).findings, fail_on));
  for (auto const& claim : judged.expectations) exit = worst(exit, exit_of(claim.verdict));
  return exit;
}

Exit exit_of(Judgement const& judgement, model::Severity fail_on) {
  auto exit = judgement.is_decided ? Exit::holds : Exit::undecided;
  exit = worst(exit, exit_of(judgement.findings, fail_on));
  for (auto const& expectation : judgement.expectations) {
    exit = worst(exit, exit_of(expectation.verdict));
  }
  return exit;
}

void judge_one(lower::Junction const& junction, CheckedFile& file, model::Severity fail_on,
               Terminal& terminal) {
  file.judgements.emplace_back();
  file.works.emplace_back();
  auto& judgement = file.judgements.back();
  if (!junction.map.is_works())
    judgement = judge(junction.design, {}, ProgressLines(terminal, junction.map.junction.name));
  if (junction.map.is_works() || has_too_many_variables(judgement)) {
    auto& works = file.works.back();
    works = std::make_unique<works::WorksJudgement>(works::judge_works(junction.design));
    file.exit = worst(file.exit, exit_of(*works, fail_on));
    return;
  }
  file.exit = worst(file.exit, exit_of(file.judgements.back(), fail_on));
}

CheckedFile checked(std::string const& path, model::Severity fail_on, Terminal& terminal) {
  CheckedFile file;
  file.name = path;
  auto read = read_file(path);
  if (auto* fault = std::get_if<FileFault>(&read)) {
    file.fault = std::move(*fault);
    file.exit = Exit::unusable;
    return file;
  }
  auto& [name, text] = std::get<FileText>(read);
  file.name = name;
  file.loaded =
      std::make_unique<Loaded>(Loaded{source::SourceText(std::move(name), std::move(text)), {}});
  diagnostics::Sink sink;
  Disk disk;
  file.loaded->junctions = lower::read_designs(file.loaded->text, disk, sink);
  file.faults = sink.sorted();
  file.faults_left_out = sink.left_out();
  if (!file.faults.empty()) {
    file.exit = Exit::unusable;
    return file;
  }
  for (auto const& junction : file.loaded->junctions) judge_one(junction, file, fail_on, terminal);
  return file;
}

std::string_view verdict_word(CheckedFile const& file) {
  switch (file.exit) {
    case Exit::holds:
      return "holds";
    case Exit::undecided:
      return "undecided";
    case Exit::unusable:
      return "unusable";
    default:
      break;
  }
  auto const has = [&](Truthfulness verdict) {
    auto const is_it = [&](auto const& expectation) { return expectation.verdict == verdict; };
    for (std::size_t i = 0; i < file.size(); ++i) {
      auto const& claims = file.judgements[i].expectations;
      if (std::any_of(claims.begin(), claims.end(), is_it)) return true;
      if (!file.is_works(i)) continue;
      auto const& works = file.works[i]->expectations;
      if (std::any_of(works.begin(), works.end(), is_it)) return true;
    }
    return false;
  };
  bool const is_empty = !has(Truthfulness::violated) && has(Truthfulness::empty);
  return is_empty ? "empty" : "violated";
}

render::Summary summary_of(CheckedFile const& file) {
  render::Summary summary;
  summary.file = file.name;
  summary.faults = file.faults.size();
  summary.faults_left_out = file.faults_left_out;
  summary.verdict = verdict_word(file);
  for (std::size_t i = 0; i < file.size(); ++i) {
    if (file.is_works(i))
      add(summary, {file.loaded->subject(i), *file.works[i]});
    else
      add(summary, file.loaded->junctions[i].design, file.judgements[i]);
  }
  return summary;
}

bool has_picture(findings::Finding const& finding) {
  return !finding.cells.empty() && !finding.accepted_by && !finding.examples.empty() &&
         !model::is_of_switching(finding.kind);
}

void print_text(CheckedFile const& file, Terminal& terminal) {
  auto const look = terminal.result_look();
  for (auto const& found : file.faults) {
    terminal.result(render::diagnostic_text(found, file.loaded->text, look));
  }
  for (std::size_t i = 0; i < file.judgements.size(); ++i) {
    auto const subject = file.loaded->subject(i);
    if (file.is_works(i)) {
      terminal.result(render::works_report({subject, *file.works[i]}, look));
      continue;
    }
    Sights sights(subject, file.judgements[i]);
    std::vector<render::Scene const*> scenes;
    for (auto const& finding : file.judgements[i].findings)
      scenes.push_back(has_picture(finding) ? sights.of(finding.examples.front()) : nullptr);
    terminal.result(
        render::junction_report({subject, file.judgements[i], std::move(scenes)}, look));
  }
  terminal.result(render::summary_text(summary_of(file), look));
}

void print_lines(CheckedFile const& file, Terminal& terminal) {
  for (auto const& found : file.faults) {
    terminal.result(render::diagnostic_line(found, file.loaded->text));
  }
  for (std::size_t i = 0; i < file.judgements.size(); ++i) {
    auto const subject = file.loaded->subject(i);
    terminal.result(file.is_works(i) ? render::works_lines({subject, *file.works[i]})
                                     : render::junction_lines({subject, file.judgements[i], {}}));
  }
  terminal.flush();
  terminal.narrate(render::summary_line(summary_of(file)));
}

render::FindingsPart part_of(CheckedFile const& file) {
  render::FindingsPart part;
  part.file = file.name;
  if (file.fault) {
    part.fault = file.fault->headline;
    part.remedy = file.fault->remedy;
    return part;
  }
  part.text = &file.loaded->text;
  part.diagnostics = file.faults;
  for (std::size_t i = 0; i < file.judgements.size(); ++i) {
    if (file.is_works(i))
      part.works.push_back({file.loaded->subject(i), *file.works[i]});
    else
      part.junctions.push_back({file.loaded->subject(i), file.judgements[i]});
  }
  return part;
}

}  // namespace

Exit run(CheckOptions const& options, Terminal& terminal) {
  auto format = options.format;
  if (format.empty()) format = terminal.is_result_on_terminal() ? "text" : "lines";
  auto exit = Exit::holds;
  std::vector<CheckedFile> files;
  for (auto const& path : options.files) {
    auto file = checked(path, options.fail_on, terminal);
    exit = worst(exit, file.exit);
    if (format == "json") {
      files.push_back(std::move(file));
    } else if (file.fault) {
      terminal.refuse(file.fault->headline, file.fault->remedy);
    } else {
      if (format == "text" && &path != &options.files.front()) terminal.result("\n");
      format == "text" ? print_text(file, terminal) : print_lines(file, terminal);
    }
  }
  if (format == "json") {
    std::vector<render::FindingsPart> parts;
    for (auto const& file : files) parts.push_back(part_of(file));
    terminal.result(render::findings_document(parts, static_cast<int>(exit)));
  }
  return exit;
}

}  // namespace leat::cli
