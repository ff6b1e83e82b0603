#include "lang/cli/checked_file.hpp"

#include <algorithm>
#include <memory>
#include <vector>

#include "lang/cli/body_ways.hpp"
#include "lang/cli/held_record.hpp"
#include "lang/cli/interruption.hpp"
#include "lang/cli/judged.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/shared_acceptances.hpp"
#include "lang/cli/sights.hpp"
#include "lang/cli/verdict.hpp"
#include "lang/render/check_report.hpp"
#include "lang/render/diagnostic_text.hpp"
#include "lang/render/works_questions.hpp"
#include "lang/render/works_report.hpp"

namespace leat::cli {

namespace {

using verdicts::Truthfulness;

// A file in work.
struct Work {
  Loaded loaded;
  std::vector<diagnostics::Diagnostic> faults;
  std::size_t faults_left_out = 0;
  std::optional<record::Record> record;  // what it did when it was last accepted
  std::vector<Judged> judged;            // fewer than there are junctions where it was stopped
};

Work understood(FileText file) {
  Work work{{source::SourceText(std::move(file.name), std::move(file.text)), {}}, {}, 0, {}, {}};
  diagnostics::Sink sink;
  Disk disk;
  work.loaded.junctions = lower::read_designs(work.loaded.text, disk, sink);
  work.faults = sink.sorted();
  work.faults_left_out = sink.left_out();
  return work;
}

// Adds what a record speaks of that there is no more, to the first junction.
void tell_gone(Work& work) {
  auto const gone = work.record ? count_gone(*work.record, work.loaded.junctions) : 0;
  if (gone == 0 || work.judged.empty()) return;
  auto finding = findings::finding_of(model::FindingKind::stale_record);
  finding.measured = static_cast<int>(gone);
  auto& [junction, works] = work.judged.front();
  if (works)
    works->findings.push_back({finding, logic::Diagram::always});
  else
    junction.findings.push_back(std::move(finding));
}

// Adds what a junction does otherwise than its record says. What is undecided is told as that
// alone.
void hold_against(record::Record const& record, render::Subject const& subject, Judged& judged) {
  HeldRecord const held(subject, judged, find(record, subject.map.junction.name));
  if (!held.is_whole()) return;
  for (auto const& finding : held.findings()) {
    if (judged.works)
      judged.works->findings.push_back({finding, logic::Diagram::always});
    else
      judged.junction.findings.push_back(finding);
  }
}

bool has(Work const& work, Truthfulness verdict) {
  auto const is_it = [&](auto const& expectation) { return expectation.verdict == verdict; };
  auto const in = [&](auto const& all) { return std::any_of(all.begin(), all.end(), is_it); };
  return std::any_of(work.judged.begin(), work.judged.end(), [&](Judged const& judged) {
    return in(judged.junction.expectations) || (judged.works && in(judged.works->expectations));
  });
}

std::string_view verdict_word(Work const& work, Exit exit) {
  if (exit == Exit::holds) return "holds";
  if (exit == Exit::undecided) return "undecided";
  if (exit == Exit::unusable) return "unusable";
  bool const is_empty = !has(work, Truthfulness::violated) && has(work, Truthfulness::empty);
  return is_empty ? "empty" : "violated";
}

render::Summary summary_of(Work const& work, std::string const& verdict) {
  render::Summary summary;
  summary.file = work.loaded.text.name();
  summary.faults = work.faults.size();
  summary.faults_left_out = work.faults_left_out;
  summary.verdict = verdict;
  for (std::size_t i = 0; i < work.judged.size(); ++i) {
    auto const& [junction, works] = work.judged[i];
    if (works)
      add(summary, {work.loaded.subject(i), *works});
    else
      add(summary, work.loaded.junctions[i].design, junction);
  }
  return summary;
}

bool has_picture(findings::Finding const& finding) {
  return !finding.cells.empty() && !finding.accepted_by && !finding.examples.empty() &&
         !model::is_of_switching(finding.kind);
}

std::string junction_text(render::Subject const& subject, Judgement const& judgement,
                          render::Look look) {
  Sights sights(subject, judgement);
  std::vector<render::Scene const*> scenes;
  for (auto const& finding : judgement.findings)
    scenes.push_back(has_picture(finding) ? sights.of(finding.examples.front()) : nullptr);
  return render::junction_report({subject, judgement, std::move(scenes)}, look);
}

void put_text(Work const& work, render::Look look, CheckedFile& file) {
  for (auto const& found : work.faults)
    file.result += render::diagnostic_text(found, work.loaded.text, look);
  for (std::size_t i = 0; i < work.judged.size(); ++i) {
    auto const subject = work.loaded.subject(i);
    auto const& [junction, works] = work.judged[i];
    file.result += works ? render::works_report({subject, *works}, look)
                         : junction_text(subject, junction, look);
  }
  file.result += render::summary_text(summary_of(work, file.told.verdict), look);
}

void put_lines(Work const& work, CheckedFile& file) {
  for (auto const& found : work.faults)
    file.result += render::diagnostic_line(found, work.loaded.text);
  for (std::size_t i = 0; i < work.judged.size(); ++i) {
    auto const subject = work.loaded.subject(i);
    auto const& [junction, works] = work.judged[i];
    file.result += render::open_lines(subject, works ? render::open_questions({subject, *works})
                                                     : render::open_questions(subject, junction));
    file.result += works ? render::works_lines({subject, *works})
                         : render::junction_lines({subject, junction, {}});
  }
  file.narration = render::summary_line(summary_of(work, file.told.verdict));
}

void put_told(Work const& work, bool with_ways, CheckedFile& file) {
  for (auto const& found : work.faults)
    file.told.faults.push_back(render::told(found, work.loaded.text));
  file.told.faults_left_out = work.faults_left_out;
  for (std::size_t i = 0; i < work.judged.size(); ++i) {
    auto const subject = work.loaded.subject(i);
    auto const& [junction, works] = work.judged[i];
    file.told.junctions.push_back(works       ? render::told({subject, *works})
                                  : with_ways ? render::told(with_body_ways(subject, junction))
                                              : render::told({subject, junction, {}, {}}));
  }
}

void judge_all(Work& work, CheckWish const& wish, JunctionProgress const& progress,
               CheckedFile& file) {
  if (!work.faults.empty()) {
    file.exit = Exit::unusable;
    return;
  }
  try {
    auto& junctions = work.loaded.junctions;
    for (auto const& junction : junctions) {
      work.judged.push_back(judged(junction, [&](std::size_t done, std::size_t total) {
        progress(junction, done, total);
      }));
    }
    settle_shared_acceptances(junctions, work.judged, [&](std::size_t done, std::size_t total) {
      progress(junctions.back(), done, total);
    });
  } catch (Stopped const&) {
    file.told.is_finished = false;
  }
  for (std::size_t i = 0; work.record && i < work.judged.size(); ++i)
    hold_against(*work.record, work.loaded.subject(i), work.judged[i]);
  if (file.told.is_finished) tell_gone(work);
  for (auto const& [junction, works] : work.judged)
    file.exit =
        worst(file.exit, works ? exit_of(*works, wish.fail_on) : exit_of(junction, wish.fail_on));
}

}  // namespace

CheckedFile checked_file(DesignFile const& design, CheckWish const& wish,
                         JunctionProgress const& progress) {
  auto read = read_file(design.name);
  if (auto* fault = std::get_if<FileFault>(&read)) return unread_file(std::move(*fault));
  auto record = record_beside(design.name);
  if (auto* fault = std::get_if<FileFault>(&record)) return unread_file(std::move(*fault));
  auto work = understood(std::move(std::get<FileText>(read)));
  work.record = std::move(std::get<std::optional<record::Record>>(record));
  CheckedFile file;
  file.told.name = work.loaded.text.name();
  judge_all(work, wish, progress, file);
  file.told.verdict =
      file.told.is_finished ? verdict_word(work, file.exit) : std::string_view("interrupted");
  file.has_no_junction = design.is_from_folder && work.faults_left_out == 0 &&
                         work.faults.size() == 1 && work.faults.front().name == "no-junction";
  if (wish.format == "text")
    put_text(work, wish.look, file);
  else if (wish.format == "lines")
    put_lines(work, file);
  else
    put_told(work, wish.format == "sarif", file);
  return file;
}

CheckedFile unchecked_file(DesignFile const& design) {
  CheckedFile file;
  file.told.name = design.name;
  file.told.verdict = "interrupted";
  file.told.is_finished = false;
  return file;
}

CheckedFile unread_file(FileFault fault) {
  CheckedFile file;
  file.told.name = fault.name;
  file.told.verdict = "unusable";
  file.told.faults.push_back({"file-not-read", {fault.name}, {}, fault.headline, fault.remedy});
  file.exit = Exit::unusable;
  file.fault = std::move(fault);
  return file;
}

}  // namespace leat::cli
