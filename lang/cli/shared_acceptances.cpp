#include "lang/cli/shared_acceptances.hpp"

#include <algorithm>
#include <set>

#include "engine/works/knowledge.hpp"

namespace leat::cli {

namespace {

using findings::Finding;
using model::FindingKind;

template <class Visit>
void for_each_finding(Judged const& judged, Visit visit) {
  for (auto const& finding : judged.junction.findings) visit(finding);
  if (!judged.works) return;
  for (auto const& piece : works::pieces_of(*judged.works)) {
    for (auto const& finding : piece.judged->findings) visit(finding);
  }
  for (auto const& found : judged.works->findings) visit(found.finding);
}

bool is_known(Judged const& judged) {
  return judged.works ? works::are_findings_complete(*judged.works) : judged.junction.is_decided;
}

bool speaks_of_findings(model::Design const& design) {
  return std::any_of(design.expectations.begin(), design.expectations.end(), [](auto const& each) {
    return each.claim == model::Claim::no_findings || each.claim == model::Claim::finds;
  });
}

// The same acceptance stands in each junction that it speaks of: it is known by where it is
// written.
class Settling {
 public:
  Settling(std::vector<lower::Junction>& junctions, std::vector<Judged>& all,
           Progress const& progress)
      : junctions_(junctions), all_(all), progress_(progress) {
    for (std::size_t i = 0; i < all_.size(); ++i) {
      is_all_known_ = is_all_known_ && is_known(all_[i]);
      for_each_finding(all_[i], [&](Finding const& finding) {
        if (finding.accepted_by) settled_.insert(begin_of(i, *finding.accepted_by));
      });
    }
  }

  void run() {
    for (std::size_t i = 0; i < all_.size(); ++i) {
      std::set<std::size_t> wrong;
      for_each_finding(all_[i], [&](Finding const& finding) {
        if (finding.kind != FindingKind::stale_acceptance) return;
        bool const is_told = !settled_.insert(begin_of(i, *finding.acceptance)).second;
        bool const is_shared = !junctions_[i].design.acceptances[*finding.acceptance].cell;
        if (is_told || (is_shared && !is_all_known_)) wrong.insert(*finding.acceptance);
      });
      if (!wrong.empty()) take_back(i, wrong);
    }
  }

 private:
  std::size_t begin_of(std::size_t junction, std::size_t acceptance) const {
    return junctions_[junction].map.acceptances[acceptance].span.begin;
  }

  // What is expected of findings hangs on all of them: then the junction is judged again, as one
  // of which the acceptances do not speak.
  void take_back(std::size_t i, std::set<std::size_t> const& wrong) {
    auto& [design, map] = junctions_[i];
    if (speaks_of_findings(design)) {
      for (auto a = wrong.rbegin(); a != wrong.rend(); ++a) {
        auto const at = static_cast<std::ptrdiff_t>(*a);
        design.acceptances.erase(design.acceptances.begin() + at);
        map.acceptances.erase(map.acceptances.begin() + at);
      }
      all_[i] = judged(junctions_[i], progress_);
      return;
    }
    auto const is_wrong = [&](Finding const& finding) {
      return finding.kind == FindingKind::stale_acceptance && wrong.count(*finding.acceptance) != 0;
    };
    std::erase_if(all_[i].junction.findings, is_wrong);
    if (all_[i].works)
      std::erase_if(all_[i].works->findings,
                    [&](auto const& each) { return is_wrong(each.finding); });
  }

  std::vector<lower::Junction>& junctions_;
  std::vector<Judged>& all_;
  Progress const& progress_;
  std::set<std::size_t> settled_;  // answered to, or told
  bool is_all_known_ = true;
};

}  // namespace

void settle_shared_acceptances(std::vector<lower::Junction>& junctions, std::vector<Judged>& all,
                               Progress const& progress) {
  if (all.size() > 1) Settling(junctions, all, progress).run();
}

}  // namespace leat::cli
