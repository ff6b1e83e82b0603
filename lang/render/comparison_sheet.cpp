#include "lang/render/comparison_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "lang/render/example.hpp"
#include "lang/render/fate_words.hpp"
#include "lang/render/finding_sentences.hpp"
#include "lang/render/machine.hpp"
#include "lang/render/table_lines.hpp"
#include "lang/render/words.hpp"
#include "lang/render/works_condition.hpp"

namespace leat::render {

using compare::Change;
using compare::Duration;
using compare::PartChange;
using logic::Diagram;
using model::SignalId;

std::string_view word_of(Change change) {
  switch (change) {
    case Change::same:
      return "the same";
    case Change::better:
      return "better";
    case Change::other:
      return "changed";
    case Change::worse:
      return "worse";
  }
  return {};
}

namespace {

constexpr char const* not_known = "not known";

class Telling {
 public:
  explicit Telling(ComparedJunction const& junction) : junction_(junction) {
    auto const& map = junction.after.map;
    for (auto variable : junction.ground.conditions().variables()) {
      auto const is_after = variable < map.signals.size();
      names_.push_back(is_after ? map.signals[variable].name : name_before(variable) + " (before)");
    }
  }

  ComparisonEntry tell(compare::RouteChange const& change) const {
    auto const& map = junction_.after.map;
    ComparisonEntry entry{change.change,
                          "route",
                          map.inlets[change.inlet].name,
                          map.profiles[change.profile].name,
                          route_headline(change),
                          {},
                          {},
                          {},
                          {},
                          {},
                          {}};
    put_condition(change.condition, entry);
    entry.before = change.is_known_before ? fate_words(junction_.before, change.before)
                                          : std::string(not_known);
    entry.after =
        change.is_known_after ? fate_words(junction_.after, change.after) : std::string(not_known);
    put_example(change.example, entry);
    put_replay(change, entry);
    return entry;
  }

  ComparisonEntry tell(compare::FindingChange const& change) const {
    bool const is_after = change.after.has_value();
    auto const& sighting =
        is_after ? junction_.is.sightings[*change.after] : junction_.was.sightings[*change.before];
    ComparisonEntry entry;
    entry.change = change.change;
    entry.topic = "finding";
    entry.name = model::row_of(sighting.kind).name;
    entry.headline = sighting_headline(is_after ? junction_.after : junction_.before, sighting);
    std::string const missing = change.is_known ? "not found" : not_known;
    entry.before = change.before ? "found" : missing;
    entry.after = change.after ? "found" : missing;
    if (change.before && change.after) {
      bool const has_come = change.come != Diagram::never;
      entry.before = has_come ? missing + " there" : "found there too";
      entry.after = has_come ? "found there too" : missing + " there";
      bool const is_lost =
          junction_.was.sightings[*change.before].is_accepted && !sighting.is_accepted;
      if (is_lost) entry.before = "accepted", entry.after = "no longer accepted";
    }
    put_condition(change.come != Diagram::never ? change.come : change.gone, entry);
    put_example(change.example, entry);
    return entry;
  }

  ComparisonEntry tell(compare::TimeChange const& change) const {
    auto const& duration = change.after ? junction_.is.durations[*change.after]
                                        : junction_.was.durations[*change.before];
    ComparisonEntry entry;
    entry.change = change.change;
    entry.topic = "time";
    put_subject(duration, change.after ? junction_.after : junction_.before, entry);
    // A record says nothing of a change of which nothing was known, either.
    entry.before = change.before           ? duration_words(junction_.was.durations[*change.before])
                   : junction_.is_recorded ? "not recorded"
                                           : "it changed no cell";
    entry.after =
        change.after ? duration_words(junction_.is.durations[*change.after]) : "it changes no cell";
    return entry;
  }

  ComparisonEntry tell(compare::ValueChange const& change) const {
    ComparisonEntry entry;
    entry.change = Change::same;
    entry.topic = "signal";
    entry.name = junction_.after.map.signals[change.after].name;
    entry.headline = fmt::format("'{}' stands the other way round", entry.name);
    put_condition(change.condition, entry);
    put_example(change.example, entry);
    return entry;
  }

  ComparisonEntry tell(compare::ClaimChange const& change) const {
    auto const& words = change.after ? junction_.after.map.expectations[*change.after]
                                     : junction_.before.map.expectations[*change.before];
    ComparisonEntry entry;
    entry.change = change.change;
    entry.topic = "expected";
    entry.name = words.title.empty() ? "expectation" : words.title;
    entry.headline = words.clause;
    entry.before = change.before ? word_of(junction_.was.verdicts[*change.before]) : "not expected";
    entry.after = change.after ? word_of(junction_.is.verdicts[*change.after]) : "not expected";
    return entry;
  }

  ComparisonEntry tell(PartChange const& change) const;

  std::string share_of(compare::Function f) const {
    return share_words(count_of(f), count_of(junction_.ground.reachable()));
  }
  Count count_of(compare::Function f) const {
    return std::ldexp(junction_.ground.diagram().share(f),
                      static_cast<int>(junction_.ground.variable_count()));
  }

 private:
  std::string const& name_before(SignalId joint) const {
    auto const& before = junction_.ground.before();
    auto const at = std::find(before.begin(), before.end(), joint);
    return junction_.before.map.signals[static_cast<std::size_t>(at - before.begin())].name;
  }

  std::string route_headline(compare::RouteChange const& change) const {
    auto const body = fmt::format("{} from {}", junction_.after.map.profiles[change.profile].name,
                                  junction_.after.map.inlets[change.inlet].name);
    if (!change.is_known_after) return "It is not known what becomes of the " + body;
    if (!change.is_known_before) return "It was not known what becomes of the " + body;
    auto const who = "The " + body;
    switch (change.change) {
      case Change::worse:
        return who +
               (change.after.outlets.empty() ? " no longer arrives" : " is less sure to arrive");
      case Change::better:
        return who + (change.before.outlets.empty() ? " arrives now" : " is surer to arrive");
      case Change::other:
      case Change::same:
        break;
    }
    return who + " goes elsewhere";
  }

  std::string sighting_headline(Subject const& subject, compare::Sighting const& sighting) const {
    if (sighting.finding != nullptr) return sentences_of(subject, *sighting.finding).headline;
    auto const& map = subject.map;
    auto of = names_of(map.signals, sighting.signals);
    if (of.empty()) of = names_of(map.outlets, sighting.outlets);
    if (of.empty()) of = names_of(map.inlets, sighting.inlets);
    auto const name = model::row_of(sighting.kind).name;
    return of.empty() ? fmt::format("{} was recorded", name)
                      : fmt::format("{} was recorded of {}", name, listed(of));
  }

  void put_condition(compare::Function f, ComparisonEntry& entry) const {
    if (names_.empty() || f == Diagram::never) return;
    entry.condition =
        condition_expression(junction_.ground.diagram(), f, junction_.ground.reachable(), names_);
    entry.share = share_of(f);
  }

  // Joint flips as the signals after, or before where `is_after` does not hold; those that the
  // revision does not know are left out.
  std::vector<SignalId> flips_of(compare::Example const& example, bool is_after) const {
    auto const& ids = is_after ? junction_.ground.after() : junction_.ground.before();
    std::vector<SignalId> flips;
    for (auto joint : *example.flips) {
      auto const at = std::find(ids.begin(), ids.end(), joint);
      if (at != ids.end()) flips.push_back(static_cast<SignalId>(at - ids.begin()));
    }
    return flips;
  }

  void put_example(std::optional<compare::Example> const& example, ComparisonEntry& entry) const {
    if (!example || !example->flips || names_.empty()) return;
    entry.steps = player_steps(junction_.after, flips_of(*example, true));
  }

  // How one revision is told to be as in the example: by its flips where it has memory.
  std::string way(Subject const& subject, compare::Example const& example, bool is_after) const {
    auto const flips = flips_of(example, is_after);
    if (flips.empty()) return {};
    auto const& signals = subject.design.circuit.signals;
    bool const has_memory =
        std::any_of(signals.begin(), signals.end(), [](auto const& s) { return s.is_memory(); });
    if (has_memory) return fmt::format(" --do \"{}\"", script_of(subject, flips));
    Assignment assignment;
    for (auto flip : flips) assignment[flip] = !signals[flip].starts_on;
    return fmt::format(" --when \"{}\"", setting_text(subject, assignment));
  }

  void put_replay(compare::RouteChange const& change, ComparisonEntry& entry) const {
    if (!change.example || !change.example->flips) return;
    auto const passage = std::find_if(
        junction_.was.passages.begin(), junction_.was.passages.end(), [&](works::Passage const& p) {
          return junction_.matching.inlets[p.inlet] == change.inlet &&
                 junction_.matching.profiles[p.profile] == change.profile;
        });
    if (!junction_.is_recorded)
      entry.replay.push_back(follow_command(junction_.before, passage->inlet, passage->profile,
                                            way(junction_.before, *change.example, false)));
    entry.replay.push_back(follow_command(junction_.after, change.inlet, change.profile,
                                          way(junction_.after, *change.example, true)));
  }

  void put_subject(Duration const& duration, Subject const& subject, ComparisonEntry& entry) const {
    auto const& map = subject.map;
    if (duration.kind == Duration::Kind::trip) {
      entry.name = map.inlets[duration.inlet].name;
      entry.body = map.profiles[duration.profile].name;
      entry.headline = fmt::format("The longest trip of a {} from {}", entry.body, entry.name);
      return;
    }
    entry.name = map.signals[duration.event].name;
    auto const event = event_words(subject.design.circuit.signals[duration.event].kind, entry.name,
                                   duration.goes_on);
    entry.headline = duration.kind == Duration::Kind::wait
                         ? fmt::format("The wait before you {}", event)
                         : fmt::format("The time until all have left, after you {}", event);
  }

  std::string duration_words(Duration const& duration) const {
    if (!duration.is_known) return not_known;
    return duration.ticks ? time_words(junction_.after, *duration.ticks) : "without a bound";
  }

  ComparedJunction const& junction_;
  std::vector<std::string> names_;
};

std::string_view noun_of(PartChange::Part part) {
  switch (part) {
    case PartChange::Part::signal:
      return "signal";
    case PartChange::Part::inlet:
      return "inlet";
    case PartChange::Part::outlet:
      return "outlet";
    case PartChange::Part::body:
      return "body";
    case PartChange::Part::practice:
      return "practice";
    case PartChange::Part::outside:
      return "outside";
  }
  return {};
}

std::vector<source::Named> const& named(source::SourceMap const& map, PartChange::Part part) {
  switch (part) {
    case PartChange::Part::inlet:
      return map.inlets;
    case PartChange::Part::outlet:
      return map.outlets;
    case PartChange::Part::body:
      return map.profiles;
    default:
      return map.signals;
  }
}

std::string on_or_off(bool is_on) { return is_on ? "on as built" : "off as built"; }

void put_signal(PartChange const& change, Subject const& before, Subject const& after,
                ComparisonEntry& entry) {
  auto const& was = before.design.circuit.signals[*change.before];
  auto const& is = after.design.circuit.signals[*change.after];
  switch (change.what) {
    case PartChange::What::kind:
      entry.before = word_of(was.kind), entry.after = word_of(is.kind);
      break;
    case PartChange::What::start:
      entry.before = on_or_off(was.starts_on), entry.after = on_or_off(is.starts_on);
      break;
    default:
      entry.before = time_words(before, was.ticks), entry.after = time_words(after, is.ticks);
  }
}

ComparisonEntry Telling::tell(PartChange const& change) const {
  auto const& [before, after] = std::tie(junction_.before, junction_.after);
  ComparisonEntry entry;
  entry.change = change.change;
  entry.topic = "declared";
  auto const noun = noun_of(change.part);
  if (change.part == PartChange::Part::practice) {
    auto const& row = model::rule_table[*change.after];
    entry.name = row.name;
    entry.headline = fmt::format("Practice says otherwise of {}", row.name);
    entry.before = std::to_string(before.design.practice[row.rule]);
    entry.after = std::to_string(after.design.practice[row.rule]);
    return entry;
  }
  if (change.part == PartChange::Part::outside) {
    entry.name = noun;
    entry.headline = "What lies outside the drawing is another thing";
    entry.before = before.design.outside_is_open ? "open" : "solid";
    entry.after = after.design.outside_is_open ? "open" : "solid";
    return entry;
  }
  entry.name = change.after ? named(after.map, change.part)[*change.after].name
                            : named(before.map, change.part)[*change.before].name;
  if (change.what == PartChange::What::gone) {
    entry.headline = fmt::format("There is no {} '{}' any more", noun, entry.name);
  } else if (change.what == PartChange::What::come) {
    entry.headline = fmt::format("There is a new {} '{}'", noun, entry.name);
  } else if (change.what == PartChange::What::joined) {
    entry.headline =
        fmt::format("The {} '{}' is joined now, and lies inside of the works", noun, entry.name);
  } else if (change.what == PartChange::What::parted) {
    entry.headline = fmt::format("The {} '{}' is no longer joined: it is one of the works itself",
                                 noun, entry.name);
  } else {
    entry.headline = fmt::format("The {} '{}' is declared otherwise", noun, entry.name);
    if (change.part == PartChange::Part::signal) put_signal(change, before, after, entry);
  }
  return entry;
}

}  // namespace

ComparisonSheet comparison_sheet(ComparedJunction const& junction) {
  ComparisonSheet sheet;
  auto const& comparison = junction.comparison;
  sheet.junction_before = junction.before.map.junction.name;
  sheet.junction_after = junction.after.map.junction.name;
  Telling const telling(junction);
  auto const tell = [&](auto const& changes) {
    for (auto const& change : changes) sheet.entries.push_back(telling.tell(change));
  };
  tell(comparison.routes);
  tell(comparison.findings);
  tell(comparison.claims);
  tell(comparison.times);
  tell(comparison.parts);
  tell(comparison.values);
  sheet.gravest = compare::gravest(comparison);
  sheet.combinations = telling.count_of(junction.ground.reachable());
  sheet.routes = comparison.lanes;
  sheet.routes_same = comparison.lanes - comparison.lanes_changed;
  if (junction.shift && *junction.shift != model::Place{}) sheet.shift = junction.shift;
  sheet.is_proved = comparison.is_proved;
  sheet.is_cut = comparison.is_cut;
  return sheet;
}

ComparisonSheet missing_sheet(std::string const& junction, bool is_gone) {
  ComparisonSheet sheet;
  (is_gone ? sheet.junction_before : sheet.junction_after) = junction;
  sheet.gravest = is_gone ? Change::worse : Change::other;
  ComparisonEntry entry;
  entry.change = sheet.gravest;
  entry.topic = "declared";
  entry.name = junction;
  entry.headline = is_gone ? fmt::format("There is no junction '{}' any more", junction)
                           : fmt::format("There is a new junction '{}'", junction);
  sheet.entries.push_back(std::move(entry));
  sheet.is_proved = true;
  return sheet;
}

}  // namespace leat::render
