#include "engine/works/destinations.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "engine/works/claims.hpp"

namespace leat::works {

using body::Verdict;
using logic::Diagram;

namespace {

class Partition {
 public:
  Partition(Passage const& passage, Conditions& conditions, std::size_t most)
      : passage_(passage), diagram_(conditions.diagram()), most_(most) {
    trouble_ = troubled(passage, diagram_);
  }

  std::optional<std::vector<Destination>> of(Function all) {
    auto const several = diagram_.both(all, splitting(passage_, diagram_));
    auto const plain = diagram_.both(all, !several);
    auto arriving = Diagram::never;
    for (auto const& end : passage_.ends) {
      auto const alone = diagram_.both(plain, end.condition);
      arriving = diagram_.either(arriving, alone);
      add(Verdict::certain, {end.outlet}, diagram_.both(alone, !trouble_));
      add(Verdict::doubtful, {end.outlet}, diagram_.both(alone, trouble_));
    }
    add(Verdict::lost, {}, diagram_.both(plain, !arriving));
    divide(several, 0, {});
    if (found_.size() > most_) return std::nullopt;
    std::stable_sort(found_.begin(), found_.end(), [](auto const& a, auto const& b) {
      return a.verdict != b.verdict ? a.verdict < b.verdict : a.outlets < b.outlets;
    });
    return std::move(found_);
  }

 private:
  void add(Verdict verdict, std::vector<model::OutletId> outlets, Function condition) {
    if (condition != Diagram::never) found_.push_back({verdict, std::move(outlets), condition});
  }

  // By the ends one after the other: reached, or not.
  void divide(Function all, std::size_t end, std::vector<model::OutletId> reached) {
    if (all == Diagram::never || found_.size() > most_) return;
    if (end == passage_.ends.size()) {
      add(Verdict::split, std::move(reached), all);
      return;
    }
    auto const& [outlet, condition] = passage_.ends[end];
    divide(diagram_.both(all, !condition), end + 1, reached);
    reached.push_back(outlet);
    divide(diagram_.both(all, condition), end + 1, std::move(reached));
  }

  Passage const& passage_;
  Diagram& diagram_;
  std::size_t most_;
  Function trouble_;
  std::vector<Destination> found_;
};

void fill(Diagram const& diagram, Function f, Diagram::Level level, logic::Row first,
          logic::Row count, logic::RowSet& rows) {
  if (f == Diagram::never) return;
  if (f == Diagram::always) {
    for (logic::Row row = first; row < first + count; ++row) rows.insert(row);
    return;
  }
  auto const [off, on] = diagram.branches(f, level);
  fill(diagram, off, level + 1, first, count / 2, rows);
  fill(diagram, on, level + 1, first + count / 2, count / 2, rows);
}

}  // namespace

std::optional<std::vector<Destination>> destinations(Passage const& passage, Conditions& conditions,
                                                     std::size_t most) {
  return Partition(passage, conditions, most).of(conditions.reachable());
}

logic::RowSet rows_of(Diagram const& diagram, Function f, int inputs) {
  require(inputs <= logic::RowSet::most_inputs, "rows_of: more variables than a row can hold");
  logic::RowSet rows(inputs);
  fill(diagram, f, 0, 0, rows.row_count(), rows);
  return rows;
}

}  // namespace leat::works
