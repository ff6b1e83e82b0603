#include <algorithm>
#include <iterator>

#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

bool is_of(model::Acceptance const& acceptance, Finding const& finding) {
  return acceptance.kind == finding.kind &&
         (!acceptance.cell ||
          std::binary_search(finding.cells.begin(), finding.cells.end(), *acceptance.cell));
}

// Only what bodies or water do in some combinations can be told of fewer of them. What comes with
// examples of its own, or is said of all combinations together, is accepted as a whole or not.
bool can_be_parted(Finding const& finding) {
  return !finding.waters.empty() && finding.examples.empty();
}

Finding stale(std::size_t acceptance, model::Acceptance const& accepted,
              logic::RowSet const& reachable) {
  auto finding = finding_of(FindingKind::stale_acceptance);
  if (accepted.cell) finding.cells = {*accepted.cell};
  finding.acceptance = acceptance;
  finding.rows = reachable;
  return finding;
}

// Gives each finding to the acceptances that speak of it. One that covers all of its combinations
// takes it whole; else each in turn takes those of its combinations that are left, as a finding of
// their own, and what nobody takes stays as it is. So accepted parts and the rest make up what was
// found, and no combination is told twice. Cost: acceptances times findings, each a few row sets.
class Accepting {
 public:
  explicit Accepting(Explored const& explored)
      : acceptances_(explored.design.acceptances), is_answered_(acceptances_.size(), false) {
    for (auto const& acceptance : acceptances_)
      rows_.push_back(acceptance.condition ? std::optional(explored.truth.of(*acceptance.condition))
                                           : std::nullopt);
  }

  // Gives the parts that are taken off.
  std::vector<Finding> accept(Finding& finding) {
    std::vector<std::size_t> partly;
    for (std::size_t a = 0; a < acceptances_.size(); ++a) {
      if (!is_of(acceptances_[a], finding)) continue;
      if (!rows_[a] || (finding.rows & ~*rows_[a]).is_empty()) {
        is_answered_[a] = true;
        if (!finding.accepted_by) finding.accepted_by = a;
      } else if (!(finding.rows & *rows_[a]).is_empty()) {
        partly.push_back(a);
      }
    }
    if (finding.accepted_by) {
      for (auto a : partly) is_answered_[a] = true;
      return {};
    }
    return can_be_parted(finding) ? parted(finding, partly) : together(finding, partly);
  }

  bool is_answered(std::size_t acceptance) const { return is_answered_[acceptance]; }

 private:
  std::vector<Finding> parted(Finding& finding, std::vector<std::size_t> const& partly) {
    std::vector<Finding> parts;
    for (auto a : partly) {
      is_answered_[a] = true;
      auto part = finding.rows & *rows_[a];
      if (part.is_empty()) continue;
      auto const left = finding.rows & ~*rows_[a];
      if (left.is_empty()) {
        finding.accepted_by = a;
        break;
      }
      parts.push_back(finding);
      parts.back().rows = std::move(part);
      parts.back().accepted_by = a;
      finding.rows = left;
    }
    return parts;
  }

  std::vector<Finding> together(Finding& finding, std::vector<std::size_t> const& partly) {
    auto left = finding.rows;
    for (auto a : partly) left = left & ~*rows_[a];
    if (!left.is_empty()) return {};
    finding.accepted_by = partly.front();
    for (auto a : partly) is_answered_[a] = true;
    return {};
  }

  std::vector<model::Acceptance> const& acceptances_;
  std::vector<std::optional<logic::RowSet>> rows_;  // none: in all combinations
  std::vector<bool> is_answered_;
};

}  // namespace

void accept(Explored const& explored, std::vector<Finding>& findings) {
  Accepting accepting(explored);
  std::vector<Finding> more;
  for (auto& finding : findings) {
    auto parts = accepting.accept(finding);
    std::move(parts.begin(), parts.end(), std::back_inserter(more));
  }
  auto const& acceptances = explored.design.acceptances;
  for (std::size_t a = 0; a < acceptances.size(); ++a) {
    if (!accepting.is_answered(a))
      more.push_back(stale(a, acceptances[a], explored.combinations.reachable));
  }
  std::move(more.begin(), more.end(), std::back_inserter(findings));
}

}  // namespace leat::findings
