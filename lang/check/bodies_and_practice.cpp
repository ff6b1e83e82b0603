#include "lang/check/bodies_and_practice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <string>

#include "lang/diagnostics/catalogue.hpp"
#include "lang/syntax/wording.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::BodyDeclaration;
using syntax::BodyProperty;

struct MeasureRow {
  char const* name;
  int model::Profile::*measure;
  long least, most;
  char const* unit;
};

constexpr std::array<MeasureRow, 4> measures{{
    {"footprint", &model::Profile::footprint, 1, 2, "cells"},
    {"height", &model::Profile::height, 1, 2, "cells"},
    {"breath", &model::Profile::breath, 1, 1'000'000, "ticks"},
    {"safe_fall", &model::Profile::safe_fall, 0, 1000, "cells"},
}};

bool is_manner(std::string_view name) { return name == "floats" || name == "sinks"; }

void report_repeated(Reading const& reading, BodyDeclaration const& body,
                     BodyProperty const& second, BodyProperty const& first) {
  bool const is_same = first.name.text == second.name.text;
  reading.sink.report(
      {is_same ? Listed("repeated-property") : Listed("contradictory-body"),
       is_same ? fmt::format("The body '{}' has '{}' twice", body.name.text, first.name.text)
               : fmt::format("The body '{}' both floats and sinks", body.name.text),
       {second.span, fmt::format("'{}' is said here", second.name.text), {}},
       {{first.span, fmt::format("'{}' is said before", first.name.text), {}}},
       "Keep one of them."});
}

void set_measure(Reading const& reading, BodyDeclaration const& body, BodyProperty const& property,
                 MeasureRow const& row, model::Profile& profile) {
  bool const fits = property.value && !property.value->is_too_large &&
                    property.value->value >= row.least && property.value->value <= row.most;
  if (fits) {
    profile.*row.measure = static_cast<int>(property.value->value);
    return;
  }
  reading.sink.report(
      {Listed("body-out-of-range"),
       fmt::format("The body '{}' has a {} that no body can have", body.name.text, row.name),
       {property.value ? property.value->span : property.span,
        fmt::format("{} is {} to {} {}", row.name, row.least, row.most, row.unit),
        {}},
       {},
       fmt::format("Write '{}' and a number from {} to {}.", row.name, row.least, row.most)});
}

// A body that says nothing of its safe fall bears the longest drop of the practice.
model::Profile standard_profile(model::Practice const& practice) {
  model::Profile profile;
  profile.safe_fall = practice[model::Rule::longest_drop];
  return profile;
}

model::Profile read_profile(Reading const& reading, BodyDeclaration const& body,
                            model::Profile profile) {
  std::map<std::string_view, BodyProperty const*> said;
  for (auto const& property : body.properties) {
    std::string_view const name = property.name.text;
    auto const [at, is_new] = said.try_emplace(is_manner(name) ? "floats" : name, &property);
    if (!is_new) {
      report_repeated(reading, body, property, *at->second);
      continue;
    }
    auto const row = std::find_if(measures.begin(), measures.end(),
                                  [&](auto const& measure) { return name == measure.name; });
    if (row != measures.end())
      set_measure(reading, body, property, *row, profile);
    else if (is_manner(name))
      profile.floats = name == "floats";
    else
      reading.unknown.add(NameKind::property, property.name);
  }
  return profile;
}

void set_rule(Reading const& reading, syntax::PracticeSetting const& setting,
              model::RuleRow const& row, model::Practice& practice) {
  auto const& value = setting.value;
  if (!value.is_too_large && value.value >= row.least && value.value <= row.most) {
    practice.set(row.rule, static_cast<int>(value.value));
    return;
  }
  reading.sink.report(
      {Listed("practice-out-of-range"),
       fmt::format("The practice sets {} out of its range", row.name),
       {value.span, fmt::format("{} is {} to {} {}", row.name, row.least, row.most, row.unit), {}},
       {},
       fmt::format("The standard is {}; leave it away to keep that.", row.standard)});
}

// Two files may each say by which practice they are judged; but there is only one practice.
void set_again(Reading const& reading, syntax::PracticeSetting const& second,
               syntax::PracticeSetting const& first) {
  auto const& name = second.name.text;
  bool const is_one_file =
      reading.source.file_of(second.span.begin) == reading.source.file_of(first.span.begin);
  if (!is_one_file && line_of(second) == line_of(first)) return;
  reading.sink.report(
      {Listed("repeated-practice"),
       is_one_file ? fmt::format("The practice sets {} twice", name)
                   : fmt::format("Two files set {} differently", name),
       {second.span, fmt::format("{} is set here{}", name, is_one_file ? " again" : ""), {}},
       {{first.span,
         fmt::format("{} is {} here", name, is_one_file ? "first set" : "set otherwise"),
         {}}},
       is_one_file ? "Keep one of them." : "Keep one of them, or set the same in both."});
}

}  // namespace

std::vector<std::string> body_property_names() {
  std::vector<std::string> names{"floats", "sinks"};
  for (auto const& row : measures) names.emplace_back(row.name);
  return names;
}

std::vector<model::Profile> read_profiles(Reading const& reading, model::Practice const& practice) {
  auto const standard = standard_profile(practice);
  std::vector<model::Profile> profiles;
  for (auto const& profile : reading.names.profiles)
    profiles.push_back(profile.declaration ? read_profile(reading, *profile.declaration, standard)
                                           : standard);
  return profiles;
}

model::Practice read_practice(Reading const& reading) {
  model::Practice practice;
  std::map<std::string_view, syntax::PracticeSetting const*> said;
  for (auto const* block : all_of<syntax::PracticeDeclaration>(reading.document)) {
    for (auto const& setting : block->settings) {
      auto const row =
          std::find_if(model::rule_table.begin(), model::rule_table.end(),
                       [&](auto const& rule) { return rule.name == setting.name.text; });
      if (row == model::rule_table.end()) {
        reading.unknown.add(NameKind::rule, setting.name);
        continue;
      }
      auto const [at, is_new] = said.try_emplace(row->name, &setting);
      if (is_new)
        set_rule(reading, setting, *row, practice);
      else
        set_again(reading, setting, *at->second);
    }
  }
  return practice;
}

}  // namespace leat::check
