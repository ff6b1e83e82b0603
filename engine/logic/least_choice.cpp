#include "engine/logic/least_choice.hpp"

#include <algorithm>
#include <numeric>
#include <optional>

#include "engine/contract.hpp"

namespace leat::logic {

namespace {

// Fewest first, then cheapest.
struct Cost {
  std::uint64_t count = 0, price = 0;
  auto operator<=>(Cost const&) const = default;
  Cost operator+(Cost const& other) const { return {count + other.count, price + other.price}; }
};

struct Column {
  SmallRows rows;  // of those still open
  std::uint32_t price = 0, offer = 0;
};

// What is still to be decided.
struct Core {
  SmallRows open;
  std::vector<Column> columns;
};

using Taken = std::vector<std::uint32_t>;

void forget_closed_rows(Core& core) {
  for (auto& column : core.columns) column.rows &= core.open;
  std::erase_if(core.columns, [](Column const& column) { return column.rows.is_empty(); });
}

// The rows that exactly one column holds; none where a row is left without any.
std::optional<SmallRows> held_once(Core const& core) {
  SmallRows once, twice;
  for (auto const& column : core.columns) {
    twice |= once & column.rows;
    once |= column.rows;
  }
  if (!core.open.is_within(once)) return std::nullopt;
  return once & ~twice & core.open;
}

bool take_essential(Core& core, SmallRows const& exclusive, Taken& taken) {
  if (exclusive.is_empty()) return false;
  for (auto const& column : core.columns) {
    if (!column.rows.meets(exclusive)) continue;
    taken.push_back(column.offer);
    core.open &= ~column.rows;
  }
  forget_closed_rows(core);
  return true;
}

// A row that every column holds which holds another row comes with that one.
bool forget_implied_rows(Core& core) {
  bool has_changed = false;
  auto left = core.open;
  core.open.each([&](Row row) {
    if (!left.contains(row)) return;
    auto common = left;
    for (auto const& column : core.columns) {
      if (column.rows.contains(row)) common &= column.rows;
    }
    if (common.count() == 1) return;
    left &= ~common;
    left.insert(row);
    has_changed = true;
  });
  core.open = left;
  if (has_changed) forget_closed_rows(core);
  return has_changed;
}

// Columns in the order in which an earlier one may stand for a later one.
void sort_widest_first(std::vector<Column>& columns) {
  std::sort(columns.begin(), columns.end(), [](Column const& a, Column const& b) {
    auto const size_a = a.rows.count(), size_b = b.rows.count();
    if (size_a != size_b) return size_a > size_b;
    return a.price != b.price ? a.price < b.price : a.offer < b.offer;
  });
}

bool strike_out_needless_columns(Core& core) {
  sort_widest_first(core.columns);
  std::vector<Column> kept;
  for (auto const& column : core.columns) {
    bool const is_needless = std::any_of(kept.begin(), kept.end(), [&](Column const& other) {
      return other.price <= column.price && column.rows.is_within(other.rows);
    });
    if (!is_needless) kept.push_back(column);
  }
  bool const has_changed = kept.size() < core.columns.size();
  core.columns = std::move(kept);
  return has_changed;
}

// Which columns hold each open row.
struct Holders {
  explicit Holders(Core const& core) : core(core) {
    core.open.each([&](Row row) { rows.push_back(row); });
    of_row.resize(rows.size());
    for (std::size_t r = 0; r < rows.size(); ++r) {
      for (std::uint32_t c = 0; c < core.columns.size(); ++c) {
        if (core.columns[c].rows.contains(rows[r])) of_row[r].push_back(c);
      }
    }
    by_need.resize(rows.size());
    std::iota(by_need.begin(), by_need.end(), std::size_t{0});
    std::stable_sort(by_need.begin(), by_need.end(), [&](std::size_t a, std::size_t b) {
      return of_row[a].size() < of_row[b].size();
    });
  }

  Core const& core;
  std::vector<Row> rows;
  std::vector<std::vector<std::uint32_t>> of_row;
  std::vector<std::size_t> by_need;  // the row with the fewest holders first
};

// Prices for rows such that no column's rows cost more than the column: by linear programming
// duality their sum is at most what any choice costs. Rows in need order get what their cheapest
// holder still bears.
std::uint64_t raised(Holders const& holders, std::vector<std::uint64_t>& left) {
  std::uint64_t sum = 0;
  for (auto r : holders.by_need) {
    auto least = ~std::uint64_t{0};
    for (auto c : holders.of_row[r]) least = std::min(least, left[c]);
    for (auto c : holders.of_row[r]) left[c] -= least;
    sum += least;
  }
  return sum;
}

// Columns count 1 each, in units fine enough for a share of a column.
std::uint64_t least_count(Holders const& holders) {
  constexpr std::uint64_t unit = 1u << 20;
  auto const count = holders.core.columns.size();
  std::vector<std::uint64_t> left(count, unit);
  auto const apart = raised(holders, left);

  left.assign(count, unit);
  std::uint64_t shared = 0;
  for (auto const& columns : holders.of_row) {
    int widest = 1;
    for (auto c : columns) widest = std::max(widest, holders.core.columns[c].rows.count());
    auto const share = unit / static_cast<std::uint64_t>(widest);
    for (auto c : columns) left[c] -= share;
    shared += share;
  }
  shared += raised(holders, left);
  return (std::max(apart, shared) + unit - 1) / unit;
}

std::uint64_t least_price(Holders const& holders) {
  std::vector<std::uint64_t> left;
  for (auto const& column : holders.core.columns) left.push_back(column.price);
  return raised(holders, left);
}

class Search {
 public:
  Search(std::vector<Offer> const& offers, SmallRows const& needed, std::size_t most_work)
      : offers_(offers), needed_(needed), most_work_(most_work) {}

  Choice run() {
    Core core{needed_, {}};
    for (std::uint32_t i = 0; i < offers_.size(); ++i)
      core.columns.push_back({offers_[i].rows, offers_[i].price, i});
    forget_closed_rows(core);
    explore(std::move(core), {});
    require(best_.has_value(), "least_choice: the offers do not hold what is needed");
    std::sort(best_->begin(), best_->end());
    return {std::move(*best_), !has_given_up_};
  }

 private:
  // Whether the core can still be covered.
  bool reduce(Core& core, Taken& taken) {
    while (!core.open.is_empty()) {
      work_ += core.columns.size();
      auto const exclusive = held_once(core);
      if (!exclusive) return false;
      if (take_essential(core, *exclusive, taken)) continue;
      work_ +=
          core.columns.size() * (core.columns.size() + static_cast<std::size_t>(core.open.count()));
      bool const has_fewer_rows = forget_implied_rows(core);
      bool const has_fewer_columns = strike_out_needless_columns(core);
      if (!has_fewer_rows && !has_fewer_columns) break;
    }
    return true;
  }

  void explore(Core core, Taken taken) {
    if (!reduce(core, taken)) return;
    if (core.open.is_empty()) {
      keep_if_better(taken);
      return;
    }
    if (!best_) keep_if_better(with_widest(core, taken));
    Holders const holders(core);
    auto const bound = cost_of(taken) + Cost{least_count(holders), least_price(holders)};
    if (bound >= best_cost_) return;
    branch(core, holders, taken);
  }

  void branch(Core const& core, Holders const& holders, Taken const& taken) {
    auto rest = core;
    for (auto c : holders.of_row[holders.by_need.front()]) {
      if (work_ >= most_work_) {
        has_given_up_ = true;
        return;
      }
      auto const& column = core.columns[c];
      std::erase_if(rest.columns, [&](Column const& other) { return other.offer == column.offer; });
      auto with = rest;
      with.open &= ~column.rows;
      forget_closed_rows(with);
      auto more = taken;
      more.push_back(column.offer);
      explore(std::move(with), std::move(more));
    }
  }

  // A choice to begin with: always the column that holds most of what is open.
  static Taken with_widest(Core core, Taken taken) {
    while (!core.open.is_empty()) {
      sort_widest_first(core.columns);
      taken.push_back(core.columns.front().offer);
      core.open &= ~core.columns.front().rows;
      forget_closed_rows(core);
    }
    return taken;
  }

  void keep_if_better(Taken taken) {
    leave_out_spare(taken);
    auto const cost = cost_of(taken);
    if (best_ && cost >= best_cost_) return;
    best_cost_ = cost;
    best_ = std::move(taken);
  }

  void leave_out_spare(Taken& taken) const {
    for (std::size_t i = 0; i < taken.size();) {
      SmallRows held;
      for (std::size_t other = 0; other < taken.size(); ++other) {
        if (other != i) held |= offers_[taken[other]].rows;
      }
      if (needed_.is_within(held)) {
        taken.erase(taken.begin() + static_cast<std::ptrdiff_t>(i));
      } else {
        ++i;
      }
    }
  }

  Cost cost_of(Taken const& taken) const {
    Cost cost;
    for (auto offer : taken) cost = cost + Cost{1, offers_[offer].price};
    return cost;
  }

  std::vector<Offer> const& offers_;
  SmallRows needed_;
  std::size_t most_work_, work_ = 0;
  std::optional<Taken> best_;
  Cost best_cost_;
  bool has_given_up_ = false;
};

}  // namespace

Choice least_choice(std::vector<Offer> const& offers, SmallRows const& needed,
                    std::size_t most_work) {
  return Search(offers, needed, most_work).run();
}

}  // namespace leat::logic
