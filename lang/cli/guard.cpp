#include <algorithm>

#include "lang/cli/commands.hpp"
#include "lang/cli/judged.hpp"
#include "lang/cli/loaded.hpp"
#include "lang/cli/sights.hpp"
#include "lang/render/example.hpp"
#include "lang/render/guard.hpp"
#include "lang/render/islands_text.hpp"

namespace leat::cli {

namespace {

constexpr char const* too_much =
    "it has too many combinations or changes to follow bodies through each";

// What is told, and what it points into.
class Guarding {
 public:
  Guarding(Loaded const& loaded, bool is_drawn, Terminal& terminal)
      : loaded_(loaded), is_drawn_(is_drawn), terminal_(terminal) {}

  void add(std::size_t number) {
    auto const subject = loaded_.subject(number);
    judged_.push_back(std::make_unique<Judged>(judged(
        loaded_.junctions[number], ProgressLines(terminal_, subject.map.junction.name,
                                                 progress_unit(loaded_.junctions[number])))));
    auto const& found = *judged_.back();
    bool const has_restless =
        found.works ? found.works->conditions->has_restless() : found.junction.has_restless;
    if (found.works)
      add_pieces(subject, *found.works);
    else
      add_whole(subject, found.junction);
    if (has_restless) warn_of_restless(subject, terminal_);
    exit_ = has_restless ? Exit::undecided : exit_;
  }

  std::vector<render::GuardPart> const& parts() const { return parts_; }
  Exit exit() const { return exit_; }

 private:
  static bool is_known(Judgement const& judged) {
    return judged.is_decided && judged.switchings.is_complete;
  }

  void refuse(render::Subject const& subject, std::string const& why, bool never_rests) {
    refuse_undecided(subject, why, never_rests, terminal_);
    exit_ = Exit::undecided;
  }

  void add_whole(render::Subject const& subject, Judgement const& judged) {
    auto const why = judged.unended ? render::unended_words(*judged.unended) : too_much;
    if (!is_known(judged)) refuse(subject, why, render::never_rests(judged));
    parts_.push_back({subject, judged, {}});
    if (!is_known(judged) || !is_drawn_) return;
    sights_.push_back(std::make_unique<Sights>(subject, judged));
    for (auto const& guard : judged.guards) {
      for (auto const& threat : guard.threats)
        parts_.back().sights.push_back(sights_.back()->of(threat.example));
    }
  }

  static std::vector<render::GuardPlace> places_of(render::Subject const& subject,
                                                   works::WorksJudgement const& works,
                                                   std::uint32_t number) {
    std::vector<render::GuardPlace> places;
    auto const& part = works.islands.parts[number];
    auto const& first = works::first_copy(works.islands, number);
    for (auto c : part.copies) {
      auto const& copy = works.islands.copies[c];
      render::GuardPlace place{render::standing_words(subject, part, copy), {}};
      if (place.name.empty()) continue;
      for (auto const& guard : works.parts[number].guards)
        place.flips.push_back(
            works::flips_that_bring(works::change_in(copy, first, {guard.event, guard.goes_on}),
                                    subject.design.circuit, *works.conditions));
      places.push_back(std::move(place));
    }
    return places;
  }

  // Each kind of island once; where nothing moves in any, the first says so. Of regions it is not
  // known what switching does.
  void add_pieces(render::Subject const& subject, works::WorksJudgement const& works) {
    auto const& all = works.parts;
    for (std::uint32_t part = 0; part < all.size(); ++part) {
      if (is_known(all[part]) && !all[part].guards.empty())
        parts_.push_back({subject, all[part], {}, places_of(subject, works, part)});
    }
    if (!std::all_of(all.begin(), all.end(), is_known)) return refuse(subject, too_much, false);
    bool const is_still = std::all_of(all.begin(), all.end(),
                                      [](Judgement const& part) { return part.guards.empty(); });
    if (is_still && !all.empty()) parts_.push_back({subject, all.front(), {}});
  }

  Loaded const& loaded_;
  bool is_drawn_;
  Terminal& terminal_;
  std::vector<std::unique_ptr<Judged>> judged_;
  std::vector<std::unique_ptr<Sights>> sights_;
  std::vector<render::GuardPart> parts_;
  Exit exit_ = Exit::holds;
};

}  // namespace

Exit run(GuardOptions const& options, Terminal& terminal) {
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  auto const chosen = chosen_junctions(*loaded, options.junction, terminal);
  if (!chosen) return Exit::unusable;
  bool const is_text = options.format == "text";
  Guarding guarding(*loaded, is_text, terminal);
  for (auto i : *chosen) guarding.add(i);
  std::string text;
  for (auto const& part : guarding.parts()) {
    bool const is_known = part.judgement.is_decided && part.judgement.switchings.is_complete;
    if (!is_known || !is_text) continue;
    text.append(text.empty() ? "" : "\n").append(render::guard_text(part, terminal.result_look()));
  }
  terminal.result(is_text ? text : render::guard_document(guarding.parts()));
  return guarding.exit();
}

}  // namespace leat::cli
