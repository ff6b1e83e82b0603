#include "engine/works/region_waters.hpp"

#include <algorithm>

namespace leat::works {

using model::Cell;
using model::Design;

namespace {

bool do_rest(Judgement const& judged) {
  return !judged.has_restless && judged.histories.is_followed && explore::do_rest(judged.histories);
}

void spend(std::size_t& budget, std::size_t amount) { budget -= std::min(budget, amount); }

// Where a drawing lies that is the whole itself.
Copy lying_on(Held const& held) {
  Copy where;
  for (model::SignalId own = 0; own < held.signals.size(); ++own) where.signals.push_back(own);
  for (std::uint32_t own = 0; own < held.design.acceptances.size(); ++own)
    where.acceptances.push_back(own);
  return where;
}

void tell_only_of(std::vector<Cell> const& known, std::vector<findings::Finding>& findings) {
  std::erase_if(findings, [&](findings::Finding& finding) {
    if (finding.cells.empty()) return false;
    std::erase_if(finding.cells,
                  [&](Cell c) { return !std::binary_search(known.begin(), known.end(), c); });
    return finding.cells.empty();
  });
}

}  // namespace

RegionWaters::RegionWaters(Design const& design, Supports const& supports, AsBuilt& as_built,
                           Budget const& budget, Progress const& progress)
    : design_(design),
      supports_(supports),
      as_built_(as_built),
      budget_(budget),
      progress_(progress),
      built_(water::settle_fresh(as_built.arrangement())),
      excerpts_(design, supports),
      cuttings_(design) {}

std::uint32_t RegionWaters::add_drawing(Design design) {
  auto drawing = std::make_unique<Drawing>();
  drawing->design = std::move(design);
  auto& judged = drawing->judged = leat::judge(drawing->design, budget_, progress_);
  auto const& histories = judged.histories;
  spend(budget_.history.most_changes, histories.changes);
  spend(budget_.history.most_cells, 2 * histories.waters.size() * drawing->design.grid.size());
  for (auto const& water : histories.waters)
    drawing->arrangements.emplace_back(drawing->design, histories.settings[water.setting]);
  drawings_.push_back(std::move(drawing));
  return static_cast<std::uint32_t>(drawings_.size() - 1);
}

SolvedRegion RegionWaters::judge(Region const& region) {
  auto const& held = as_built_.held(supports_, region);
  auto const budget = budget_;
  auto const excerpt = excerpts_.of(region);
  auto known = cuttings_.cut(held.design, excerpt);
  auto where = std::move(known.form.copy);
  if (known.is_new) {
    drawing_of_form_.push_back(add_drawing(part_of(std::move(known.form), held.design).drawn()));
    drawings_.back()->bounds.emplace(drawings_.back()->design);
  }
  auto const number = drawing_of_form_[known.number];
  lying_.push_back({number, {where, drawings_[number]->design.grid, design_.grid}});
  if (stands_for(*drawings_[number], excerpt, lying_.back().frame)) {
    auto found = solved(region, where, held);
    tell_only_of(excerpt.water, found.judged.findings);
    return found;
  }
  if (known.is_new) budget_ = budget;  // what does not stand for anything is not counted
  where = lying_on(held);
  auto const whole = add_drawing(held.design);
  lying_.back() = {whole, {where, drawings_[whole]->design.grid, design_.grid}};
  return solved(region, where, held);
}

// What is too much in a drawing is not tried as a whole, where it would take longer.
bool RegionWaters::stands_for(Drawing const& drawing, Excerpt const& excerpt,
                              Frame const& frame) const {
  if (!drawing.judged.is_decided) return true;
  return do_rest(drawing.judged) && is_as_built(drawing, excerpt, frame) &&
         changes_by_itself(excerpt, supports_.bounds(), *drawing.bounds, frame);
}

bool RegionWaters::is_as_built(Drawing const& drawing, Excerpt const& excerpt,
                               Frame const& frame) const {
  auto const& histories = drawing.judged.histories;
  auto const& own = histories.waters[histories.nodes.front().water].field;
  return built_.is_settled && std::all_of(excerpt.water.begin(), excerpt.water.end(), [&](Cell c) {
           return built_.field[c] == (frame.holds(c) ? own[frame.own(c)] : water::dry);
         });
}

SolvedRegion RegionWaters::solved(Region const& region, Copy const& where, Held const& held) {
  auto const& [number, frame] = lying_.back();
  auto const& drawing = *drawings_[number];
  SolvedRegion solved;
  solved.region = region;
  solved.drawing = number;
  auto& judged = solved.judged = drawing.judged;
  for (auto& water : judged.histories.waters) water.field = {};
  for (auto& finding : judged.findings) {
    for (auto& c : finding.cells) c = frame.in_whole(c);
    std::sort(finding.cells.begin(), finding.cells.end());
    if (finding.accepted_by) finding.accepted_by = where.acceptances[*finding.accepted_by];
  }
  for (auto signal : where.signals) solved.signals.push_back(held.signals[signal]);
  for (auto variable : judged.variables) solved.own_variables.push_back(solved.signals[variable]);
  solved.promises = drawing.design.circuit.nevers.size();
  solved.is_solved = judged.is_decided && do_rest(judged);
  return solved;
}

}  // namespace leat::works
