#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "lang/render/findings_formats.hpp"
#include "lang/render/words.hpp"
#include "lang/render/xml.hpp"

// The form of test reports that many programs read and no standard defines: written after common
// practice (no source), with the elements and attributes that all of its dialects share.
namespace leat::render {

namespace {

using verdicts::Truthfulness;

enum class Outcome { passed, failed, broken };

struct Case {
  std::string name;
  Outcome outcome = Outcome::passed;
  std::string type, message, text;
};

struct Suite {
  std::string name, classname;
  std::vector<Case> cases;
  std::size_t count(Outcome outcome) const {
    return static_cast<std::size_t>(std::count_if(
        cases.begin(), cases.end(), [&](Case const& c) { return c.outcome == outcome; }));
  }
};

Outcome outcome_of(Truthfulness verdict) {
  if (verdict == Truthfulness::holds) return Outcome::passed;
  bool const is_wrong = verdict == Truthfulness::violated || verdict == Truthfulness::empty;
  return is_wrong ? Outcome::failed : Outcome::broken;
}

// Lines of what is known, each with a word before it; what is empty is left out.
std::string lines(std::vector<std::pair<std::string_view, std::string>> const& parts) {
  std::string text;
  for (auto const& [word, words] : parts) {
    if (!words.empty()) text += fmt::format("{}{}: {}", text.empty() ? "" : "\n", word, words);
  }
  return text;
}

std::string steps_text(std::optional<ToldWay> const& way) {
  std::string text;
  if (!way) return text;
  for (auto const& deed : way->deeds) text += (text.empty() ? "" : ", ") + deed.words;
  return text;
}

Case expectation_case(ToldExpectation const& expectation) {
  auto name = expectation.title.empty() ? expectation.clause
                                        : expectation.title + ": " + expectation.clause;
  auto const outcome = outcome_of(expectation.verdict);
  if (outcome == Outcome::passed) return {std::move(name), outcome, {}, {}, {}};
  return {std::move(name), outcome, std::string(word_of(expectation.verdict)), expectation.outcome,
          lines({{"at", spot_words(expectation.spot)},
                 {"fails when", expectation.when},
                 {"try", steps_text(expectation.way)},
                 {"then", expectation.outcome},
                 {"do", expectation.remedy},
                 {"see", expectation.command}})};
}

// All findings that make the run fail, as one case; where it was not looked for them, it is broken.
Case findings_case(ToldJunction const& junction, model::Severity fail_on) {
  std::vector<std::string> failing;
  for (auto const& finding : junction.findings) {
    if (!is_failing(finding, fail_on)) continue;
    auto const when = finding.when.empty() ? std::string() : " when " + finding.when;
    failing.push_back(fmt::format("{}: {}: {}: {}{}. {}", spot_words(finding.spot),
                                  word_of(finding.severity), finding.name, finding.headline, when,
                                  finding.remedy));
  }
  auto name = fmt::format("no finding of severity {} or worse", word_of(fail_on));
  if (!failing.empty())
    return {std::move(name), Outcome::failed, "finding", counted(failing.size(), "finding"),
            fmt::format("{}", fmt::join(failing, "\n"))};
  auto const open = std::find_if(junction.open.begin(), junction.open.end(),
                                 [&](auto const& each) { return is_failing(each, fail_on); });
  if (open != junction.open.end())
    return {std::move(name), Outcome::broken, "undecided", open->headline,
            lines({{"at", spot_words(junction.spot)}, {"do", open->remedy}})};
  return {std::move(name), Outcome::passed, {}, {}, {}};
}

// Cases of one suite have names of their own: of several alike the later ones are numbered.
void number_alike(std::vector<Case>& cases) {
  std::map<std::string, int> seen;
  for (auto& c : cases) {
    auto const times = ++seen[c.name];
    if (times > 1) c.name += fmt::format(" ({})", times);
  }
}

Suite suite_of(ToldFile const& file, ToldJunction const& junction, model::Severity fail_on) {
  Suite suite{fmt::format("{}: {}", file.name, junction.name), junction.name, {}};
  for (auto const& expectation : junction.expectations)
    suite.cases.push_back(expectation_case(expectation));
  suite.cases.push_back(findings_case(junction, fail_on));
  number_alike(suite.cases);
  return suite;
}

// Of a file that could not be judged, or not to its end.
Suite broken_suite(ToldFile const& file) {
  if (file.faults.empty())
    return {file.name,
            file.name,
            {{"the file is judged", Outcome::broken, "interrupted",
              "The run was interrupted before its end", "at: " + spot_words({file.name})}}};
  std::string text;
  for (auto const& fault : file.faults)
    text += fmt::format("{}{}: {}: {}. {}", text.empty() ? "" : "\n", spot_words(fault.spot),
                        fault.name, fault.headline, fault.remedy);
  auto const count = file.faults.size() + file.faults_left_out;
  return {file.name,
          file.name,
          {{"the file is understood", Outcome::broken, "unusable", counted(count, "fault"),
            std::move(text)}}};
}

std::vector<Suite> suites_of(ToldRun const& run) {
  std::vector<Suite> suites;
  for (auto const& file : run.files) {
    for (auto const& junction : file.junctions)
      suites.push_back(suite_of(file, junction, run.fail_on));
    if (!file.faults.empty() || !file.is_finished) suites.push_back(broken_suite(file));
  }
  return suites;
}

void write_case(XmlWriter& xml, Suite const& suite, Case const& c) {
  XmlWriter::Attributes const attributes{{"classname", suite.classname}, {"name", c.name}};
  if (c.outcome == Outcome::passed) return xml.element("testcase", attributes);
  xml.begin("testcase", attributes);
  xml.element(c.outcome == Outcome::failed ? "failure" : "error",
              {{"message", c.message}, {"type", c.type}}, c.text);
  xml.end();
}

XmlWriter::Attributes counts(std::string name, std::size_t tests, std::size_t failures,
                             std::size_t errors) {
  return {{"name", std::move(name)},
          {"tests", std::to_string(tests)},
          {"failures", std::to_string(failures)},
          {"errors", std::to_string(errors)}};
}

}  // namespace

std::string findings_junit(ToldRun const& run) {
  auto const suites = suites_of(run);
  std::size_t tests = 0, failures = 0, errors = 0;
  for (auto const& suite : suites) {
    tests += suite.cases.size();
    failures += suite.count(Outcome::failed);
    errors += suite.count(Outcome::broken);
  }
  XmlWriter xml;
  xml.begin("testsuites", counts("leat check", tests, failures, errors));
  for (auto const& suite : suites) {
    xml.begin("testsuite", counts(suite.name, suite.cases.size(), suite.count(Outcome::failed),
                                  suite.count(Outcome::broken)));
    for (auto const& c : suite.cases) write_case(xml, suite, c);
    xml.end();
  }
  xml.end();
  return xml.text();
}

}  // namespace leat::render
