#include "lang/render/found_again.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/works/showing.hpp"
#include "lang/render/condition.hpp"
#include "lang/render/islands_text.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

// What is found in a part, written on the signals of one copy after the other. The part's own
// findings are told in the signals of its first copy.
class Copies {
 public:
  Copies(JudgedWorks const& works, works::Piece const& piece, findings::Finding const& finding)
      : works_(works),
        part_(piece.part),
        own_(piece.region ? works.judgement.by_regions[part_]->regions[*piece.region].own_variables
                          : works.judgement.own_variables[part_]),
        statement_(logic::shortest_statement(finding.rows, piece.judged->combinations.reachable)) {
    if (!finding.event) return;
    auto const& first = works::first_copy(works.judgement.islands, part_).signals;
    auto const event = std::find(first.begin(), first.end(), *finding.event);
    if (event != first.end()) event_ = static_cast<std::size_t>(event - first.begin());
  }

  FoundAgain at(works::Copy const& copy) const {
    std::vector<std::string> names;
    for (auto signal : own_) names.push_back(name_of(copy.signals[signal]));
    FoundAgain found;
    found.place = standing_words(works_.subject, works_.judgement.islands.parts[part_], copy);
    if (found.place.empty()) found.place = "the island at " + least_place(copy);
    found.condition = condition_expression(statement_, names);
    if (event_) found.event = name_of(copy.signals[*event_]);
    return found;
  }

 private:
  std::string const& name_of(model::SignalId signal) const {
    return works_.subject.map.signals[signal].name;
  }

  JudgedWorks const& works_;
  std::uint32_t part_;
  std::vector<model::SignalId> const& own_;
  logic::Statement statement_;
  std::optional<std::size_t> event_;  // as the part's signal
};

bool can_show(works::WorksJudgement const& judged, works::Piece const& piece,
              works::Copy const& copy, findings::Finding const& finding) {
  auto& diagram = judged.conditions->diagram();
  auto const shows =
      works::showing(judged, piece, copy, works::eased(judged, works::occasion_of(finding)));
  return diagram.both(shows, judged.conditions->reachable()) != logic::Diagram::never;
}

}  // namespace

std::vector<FoundAgain> found_again(JudgedWorks const& works, works::Piece const& piece,
                                    findings::Finding const& finding) {
  std::vector<FoundAgain> found;
  if (!piece.judged->is_decided) return found;
  auto const& islands = works.judgement.islands;
  Copies const copies(works, piece, finding);
  auto const& standing = islands.parts[piece.part].copies;
  auto const first = copies.at(islands.copies[standing.front()]);
  for (auto c = standing.begin() + 1; c != standing.end(); ++c) {
    auto const& copy = islands.copies[*c];
    auto again = copies.at(copy);
    if (!can_show(works.judgement, piece, copy, finding)) continue;
    again.is_alike = again.condition == first.condition && again.event == first.event;
    found.push_back(std::move(again));
  }
  return found;
}

std::vector<std::string> also_words(std::vector<FoundAgain> const& found) {
  std::vector<std::string> words;
  for (auto const& again : found) {
    words.push_back(again.place);
    if (again.is_alike) continue;
    auto const is_always = again.condition == "on";
    if (again.event)
      words.back() +=
          fmt::format(" by {}{}", *again.event, is_always ? "" : " while " + again.condition);
    else
      words.back() += fmt::format(" (when {})", again.condition);
  }
  return words;
}

}  // namespace leat::render
