#include <fmt/format.h>

#include <cstdint>

#include "lang/render/findings_formats.hpp"
#include "lang/render/json.hpp"
#include "lang/render/sarif_rules.hpp"
#include "lang/render/words.hpp"

// Written after the standard: Static Analysis Results Interchange Format (SARIF) Version 2.1.0
// (OASIS). Sections in brackets are its own.
namespace leat::render {

namespace {

using verdicts::Truthfulness;

// A message is a text in which `[words](1)` would be a link [3.11.6] and `{0}` a gap to be filled
// [3.11.5]: names and titles of a design must be neither.
Json message(std::string const& text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    result += text[i];
    if (text[i] == '{' || text[i] == '}') result += text[i];
    if (text[i] == ']' && i + 1 < text.size() && text[i + 1] == '(') result += ' ';
  }
  return {{"text", result}};
}

// A file name as a relative reference, or of scheme file where it begins at the root [3.10.1]:
// every byte that is not plain by itself by its number (RFC 3986).
std::string uri_of(std::string const& name) {
  std::string uri = name.starts_with('/') ? "file://" : "";
  for (char c : name) {
    bool const is_plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
                          (c >= '0' && c <= '9') ||
                          std::string_view("/-._~").find(c) != std::string_view::npos;
    uri += is_plain ? std::string(1, c) : fmt::format("%{:02X}", static_cast<std::uint8_t>(c));
  }
  return uri;
}

// FNV-1a, 64 bits.
std::uint64_t hash_of(std::vector<std::string> const& words) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  auto const add = [&hash](char c) {
    hash = (hash ^ static_cast<std::uint8_t>(c)) * 0x100000001b3u;
  };
  for (auto const& word : words) {
    for (char c : word) add(c);
    add('\0');
  }
  return hash;
}

std::string sentence(std::string const& words) {
  return words.empty() || words.ends_with('.') ? words : words + ".";
}

std::string joined(std::vector<std::string> const& sentences) {
  std::string text;
  for (auto const& words : sentences) {
    if (words.empty()) continue;
    text += (text.empty() ? "" : " ") + sentence(words);
  }
  return text;
}

std::string after(std::string_view words, std::string const& text) {
  return text.empty() ? std::string() : fmt::format("{} {}", words, text);
}

class Log {
 public:
  explicit Log(ToldRun const& run) : run_(run), rules_(run) {
    for (auto const& file : run_.files) (void)artifact(file.name, true);
    for (auto const& file : run_.files) add_file(file);
  }

  Json document() {
    Json driver{{"name", "leat"}, {"version", run_.version}, {"rules", rules_.list()}};
    Json run{{"tool", {{"driver", std::move(driver)}}},
             {"invocations", Json::array({invocation()})},
             {"artifacts", artifacts_},
             {"columnKind", "unicodeCodePoints"},
             {"results", results_}};
    return {{"$schema",
             "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/"
             "sarif-schema-2.1.0.json"},
            {"version", "2.1.0"},
            {"runs", Json::array({std::move(run)})}};
  }

 private:
  Json invocation() const {
    constexpr int unusable = 2;
    Json invocation{{"executionSuccessful", !run_.is_interrupted && run_.exit != unusable},
                    {"exitCode", run_.exit},
                    {"exitCodeDescription", run_.exit_meaning}};
    if (run_.is_interrupted) {
      auto line = run_line(run_);
      line.pop_back();
      invocation["toolExecutionNotifications"] =
          Json::array({{{"level", "error"}, {"message", message(line)}}});
    }
    return invocation;
  }

  std::size_t artifact(std::string const& name, bool is_target) {
    auto const [entry, is_new] = artifact_index_.try_emplace(name, artifacts_.size());
    if (is_new) {
      Json artifact{{"location", {{"uri", uri_of(name)}, {"index", entry->second}}},
                    {"sourceLanguage", "leat"}};
      if (is_target) artifact["roles"] = Json::array({"analysisTarget"});
      artifacts_.push_back(std::move(artifact));
    }
    return entry->second;
  }

  Json location(Spot const& spot, std::optional<model::Place> const& cell,
                std::string const& junction) {
    auto const index = artifact(spot.file, false);
    Json physical{{"artifactLocation", {{"uri", uri_of(spot.file)}, {"index", index}}}};
    if (spot.line > 0)
      physical["region"] = {{"startLine", spot.line},
                            {"startColumn", spot.column},
                            {"endLine", spot.line},
                            {"endColumn", spot.end_column}};
    Json location{{"physicalLocation", std::move(physical)}};
    if (cell) {
      location["logicalLocations"] = Json::array(
          {{{"name", place_code(*cell)},
            {"fullyQualifiedName", fmt::format("{}: {}", junction, place_words(*cell))},
            {"kind", "cell"},
            {"properties", {{"level", cell->z}, {"row", cell->y}, {"column", cell->x}}}}});
    } else if (!junction.empty()) {
      location["logicalLocations"] = Json::array(
          {{{"name", junction}, {"fullyQualifiedName", junction}, {"kind", "junction"}}});
    }
    return location;
  }

  Json location(Remark const& remark, std::string const& junction) {
    auto place = location(remark.spot, remark.cell, junction);
    if (!remark.words.empty()) place["message"] = message(remark.words);
    return place;
  }

  // What is told elsewhere; no two of it may be alike [3.27.22].
  Json related(std::vector<Remark> const& remarks, std::string const& junction) {
    auto list = Json::array();
    for (auto const& remark : remarks) {
      auto place = location(remark, junction);
      if (std::find(list.begin(), list.end(), place) == list.end())
        list.push_back(std::move(place));
    }
    return list;
  }

  // First what a player does, then where the body goes, one level deeper [3.38.10].
  Json flow(ToldWay const& way, std::string const& junction) {
    auto steps = Json::array();
    auto const add = [&](Remark const& remark, int level) {
      steps.push_back({{"location", location(remark, junction)},
                       {"nestingLevel", level},
                       {"executionOrder", steps.size() + 1}});
    };
    for (auto const& deed : way.deeds) add(deed, 0);
    for (auto const& step : way.trail) add(step, 1);
    return {{"threadFlows", Json::array({{{"locations", std::move(steps)}}})}};
  }

  Json flows(std::vector<ToldWay> const& ways, std::string const& junction) {
    auto list = Json::array();
    for (auto const& way : ways) {
      if (!way.deeds.empty() || !way.trail.empty()) list.push_back(flow(way, junction));
    }
    return list;
  }

  // The names that make it what it is, and which of several alike it is: neither lines nor cells,
  // so that it stays the same when the text or the drawing moves.
  Json fingerprint(std::vector<std::string> const& names) {
    auto const hash = hash_of(names);
    auto const ordinal = ++alike_[hash];
    return {{"leatNames/v1", fmt::format("{:016x}:{}", hash, ordinal)}};
  }

  void add_result(std::string const& rule, std::string_view level, std::string const& text,
                  Json place, std::vector<std::string> names, Json more) {
    Json result;
    rules_.put_rule(result, rule);
    // Of what is not known no level may be given [3.27.10].
    result["kind"] = level == "none" ? "open" : "fail";
    result["level"] = level;
    result["message"] = message(text);
    result["locations"] = Json::array({std::move(place)});
    names.insert(names.begin(), rule);
    result["partialFingerprints"] = fingerprint(names);
    result["suppressions"] = Json::array();
    for (auto& [key, value] : more.items()) {
      if (!value.empty()) result[key] = std::move(value);
    }
    results_.push_back(std::move(result));
  }

  void add_finding(ToldJunction const& junction, ToldFinding const& finding) {
    auto names = std::vector<std::string>{junction.name};
    for (auto const* list : {&finding.inlets, &finding.outlets, &finding.bodies, &finding.signals})
      names.push_back(fmt::format("{}", fmt::join(*list, " ")));
    names.push_back(finding.event.value_or(""));
    std::optional<model::Place> cell;
    if (!finding.cells.empty()) cell = finding.cells.front();
    Json more{{"relatedLocations", related(finding.elsewhere, junction.name)},
              {"codeFlows", flows(finding.ways, junction.name)},
              {"suppressions", suppressions(junction, finding)},
              {"properties", {{"junction", junction.name}, {"cellCount", finding.cells.size()}}}};
    add_result(finding.name, word_of(finding.severity),
               joined({finding.headline, after("When:", finding.when), finding.reason,
                       finding.remedy, after("See:", finding.command)}),
               location(finding.spot, cell, junction.name), std::move(names), std::move(more));
  }

  Json suppressions(ToldJunction const& junction, ToldFinding const& finding) {
    if (!finding.accepted) return Json::array();
    Json suppression{{"kind", "inSource"},
                     {"status", "accepted"},
                     {"location", location(finding.accepted->spot, {}, junction.name)}};
    if (!finding.accepted->reason.empty()) suppression["justification"] = finding.accepted->reason;
    return Json::array({std::move(suppression)});
  }

  void add_expectation(ToldJunction const& junction, ToldExpectation const& expectation) {
    auto const rule = rule_of(expectation.verdict);
    if (rule.empty()) return;
    bool const is_wrong =
        expectation.verdict == Truthfulness::violated || expectation.verdict == Truthfulness::empty;
    std::vector<ToldWay> ways;
    if (expectation.way) ways.push_back(*expectation.way);
    Json more{{"relatedLocations", related(expectation.elsewhere, junction.name)},
              {"codeFlows", flows(ways, junction.name)},
              {"properties", {{"junction", junction.name}, {"clause", expectation.clause}}}};
    add_result(std::string(rule), is_wrong ? "error" : "none",
               joined({fmt::format("{}: {}", word_of(expectation.verdict), expectation.clause),
                       after("Fails when:", expectation.when), expectation.outcome,
                       expectation.remedy, after("See:", expectation.command)}),
               location(expectation.spot, {}, junction.name),
               {junction.name, expectation.title, expectation.clause}, std::move(more));
  }

  void add_fault(ToldFile const& file, ToldFault const& fault) {
    Json more{{"relatedLocations", related(fault.elsewhere, {})}};
    add_result(fault.name, "error", joined({fault.headline, fault.remedy}),
               location(fault.spot, {}, {}), {file.name, fault.headline}, std::move(more));
  }

  void add_file(ToldFile const& file) {
    for (auto const& fault : file.faults) add_fault(file, fault);
    for (auto const& junction : file.junctions) {
      for (auto const& finding : junction.findings) add_finding(junction, finding);
      for (auto const& expectation : junction.expectations) add_expectation(junction, expectation);
      for (auto const& open : junction.open)
        add_result(std::string(undecided_junction), "none", joined({open.headline, open.remedy}),
                   location(junction.spot, {}, junction.name), {junction.name}, Json::object());
    }
  }

  ToldRun const& run_;
  SarifRules rules_;
  std::map<std::string, std::size_t> artifact_index_;
  Json artifacts_ = Json::array(), results_ = Json::array();
  std::map<std::uint64_t, std::size_t> alike_;
};

}  // namespace

std::string findings_sarif(ToldRun const& run) { return printed(Log(run).document()); }

}  // namespace leat::render
