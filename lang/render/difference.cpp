#include "lang/render/difference.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <span>
#include <unordered_map>
#include <vector>

#include "lang/render/columns.hpp"

namespace leat::render {

namespace {

using Lines = std::vector<std::string_view>;

// Each with its line end; the last one may have none.
Lines lines_of(std::string_view text) {
  Lines lines;
  while (!text.empty()) {
    auto const end = std::min(text.find('\n'), text.size() - 1) + 1;
    lines.push_back(text.substr(0, end));
    text.remove_prefix(end);
  }
  return lines;
}

// A stretch of lines that both texts have, or that one of them has for its own.
struct Stretch {
  bool is_common;
  std::size_t old_begin, old_end, new_begin, new_end;
};

using Numbered = std::span<int const>;

// The fewest lines to take out and put in (E. W. Myers, An O(ND) Difference Algorithm and Its
// Variations, Algorithmica 1, 1986). `reach[k]` is how far into the old text one comes with so many
// edits on diagonal k, which is the place in the old text less that in the new one; each round keeps
// its own, to walk the way back. Texts that differ in more lines than the bound are told as wholly
// different, so memory stays within 16 MiB. Cost: lines times differences.
class FewestEdits {
 public:
  FewestEdits(Numbered old_lines, Numbered new_lines) : old_(old_lines), new_(new_lines) {}

  // Pairs of places of lines that stay, ascending; none where the bound is met.
  std::vector<std::pair<std::size_t, std::size_t>> common() {
    constexpr int most_edits = 2000;
    for (int edits = 0; edits <= most_edits; ++edits)
      if (reaches_end(edits)) return way_back(edits);
    return {};
  }

 private:
  int at(int round, int k) const {
    return rounds_[static_cast<std::size_t>(round)][static_cast<std::size_t>(k + round)];
  }
  // Whether diagonal k was come to by putting in a line rather than by taking one out.
  bool comes_down(int edits, int k) const {
    return k == -edits || (k != edits && at(edits - 1, k - 1) < at(edits - 1, k + 1));
  }
  int begin_of(int edits, int k) const {
    if (edits == 0) return 0;
    return comes_down(edits, k) ? at_or_none(edits - 1, k + 1) : at_or_none(edits - 1, k - 1) + 1;
  }
  int at_or_none(int round, int k) const { return std::abs(k) > round ? -1 : at(round, k); }

  bool reaches_end(int edits) {
    std::vector<int> reach(static_cast<std::size_t>(2 * edits + 1), -1);
    auto const old_size = static_cast<int>(old_.size()), new_size = static_cast<int>(new_.size());
    for (int k = -edits; k <= edits; k += 2) {
      auto x = begin_of(edits, k);
      while (x < old_size && x - k < new_size && is_common(x, x - k)) ++x;
      reach[static_cast<std::size_t>(k + edits)] = x;
    }
    rounds_.push_back(std::move(reach));
    auto const last = old_size - new_size;
    return std::abs(last) <= edits && (last - edits) % 2 == 0 && at(edits, last) >= old_size;
  }
  bool is_common(int x, int y) const {
    return old_[static_cast<std::size_t>(x)] == new_[static_cast<std::size_t>(y)];
  }

  std::vector<std::pair<std::size_t, std::size_t>> way_back(int edits) const {
    std::vector<std::pair<std::size_t, std::size_t>> pairs;
    auto k = static_cast<int>(old_.size()) - static_cast<int>(new_.size());
    auto x = static_cast<int>(old_.size());
    for (; edits >= 0; --edits) {
      auto const begin = begin_of(edits, k);
      for (; x > begin; --x)
        pairs.emplace_back(static_cast<std::size_t>(x - 1), static_cast<std::size_t>(x - 1 - k));
      if (edits == 0) break;
      bool const came_down = comes_down(edits, k);
      k += came_down ? 1 : -1;
      x = came_down ? begin : begin - 1;
    }
    std::reverse(pairs.begin(), pairs.end());
    return pairs;
  }

  Numbered old_, new_;
  std::vector<std::vector<int>> rounds_;
};

std::vector<Stretch> stretches_of(Lines const& old_lines, Lines const& new_lines) {
  std::unordered_map<std::string_view, int> numbers;
  auto const numbered = [&](Lines const& lines) {
    std::vector<int> all;
    for (auto const line : lines)
      all.push_back(numbers.try_emplace(line, static_cast<int>(numbers.size())).first->second);
    return all;
  };
  auto const old_numbers = numbered(old_lines), new_numbers = numbered(new_lines);
  std::size_t same_before = 0, same_behind = 0;
  auto const shorter = std::min(old_numbers.size(), new_numbers.size());
  while (same_before < shorter && old_numbers[same_before] == new_numbers[same_before])
    ++same_before;
  while (same_behind < shorter - same_before &&
         old_numbers[old_numbers.size() - 1 - same_behind] ==
             new_numbers[new_numbers.size() - 1 - same_behind])
    ++same_behind;
  auto const middle = [&](std::vector<int> const& all) {
    return Numbered(all).subspan(same_before, all.size() - same_before - same_behind);
  };
  std::vector<Stretch> stretches;
  std::size_t old_at = 0, new_at = 0;
  auto const put = [&](bool is_common, std::size_t old_end, std::size_t new_end) {
    if (old_end == old_at && new_end == new_at) return;
    bool const goes_on = !stretches.empty() && stretches.back().is_common == is_common;
    if (!goes_on) stretches.push_back({is_common, old_at, old_at, new_at, new_at});
    stretches.back().old_end = old_at = old_end;
    stretches.back().new_end = new_at = new_end;
  };
  put(true, same_before, same_before);
  for (auto const& pair : FewestEdits(middle(old_numbers), middle(new_numbers)).common()) {
    put(false, same_before + pair.first, same_before + pair.second);
    put(true, old_at + 1, new_at + 1);
  }
  put(false, old_lines.size() - same_behind, new_lines.size() - same_behind);
  put(true, old_lines.size(), new_lines.size());
  return stretches;
}

// With the line's own tabs, and nothing else that a terminal would obey.
std::string shown(std::string_view line) {
  std::string text;
  while (true) {
    auto const tab = std::min(line.find('\t'), line.size());
    text += showable(line.substr(0, tab));
    if (tab == line.size()) return text;
    text += '\t';
    line.remove_prefix(tab + 1);
  }
}

class Writer {
 public:
  Writer(Lines const& old_lines, Lines const& new_lines, Look look, bool is_for_terminal)
      : old_(old_lines), new_(new_lines), look_(look), is_for_terminal_(is_for_terminal) {}

  // Changes with few common lines between them are one hunk.
  std::string hunks(std::vector<Stretch> const& stretches) {
    for (std::size_t first = 0; first < stretches.size(); ++first) {
      if (stretches[first].is_common) continue;
      auto last = first;
      while (last + 2 < stretches.size() &&
             stretches[last + 1].old_end - stretches[last + 1].old_begin <= 2 * around)
        last += 2;
      put_hunk(std::span(stretches).subspan(first, last + 1 - first));
      first = last;
    }
    return std::move(out_);
  }

 private:
  static constexpr std::size_t around = 3;

  void put_hunk(std::span<Stretch const> changes) {
    auto const &first = changes.front(), &last = changes.back();
    auto const before = std::min(around, first.old_begin);
    auto const behind = std::min(around, old_.size() - last.old_end);
    auto const range = [](std::size_t begin, std::size_t end) {
      auto const count = end - begin;
      auto const shown_begin = count == 0 ? begin : begin + 1;
      return count == 1 ? std::to_string(shown_begin) : fmt::format("{},{}", shown_begin, count);
    };
    auto const head = fmt::format("@@ -{} +{} @@",
                                  range(first.old_begin - before, last.old_end + behind),
                                  range(first.new_begin - before, last.new_end + behind));
    out_ += painted(look_, Role::quiet, head) + "\n";
    put(' ', Role::plain, old_, first.old_begin - before, first.old_begin);
    for (auto const& change : changes) {
      if (change.is_common) {
        put(' ', Role::plain, old_, change.old_begin, change.old_end);
      } else {
        put('-', Role::error, old_, change.old_begin, change.old_end);
        put('+', Role::good, new_, change.new_begin, change.new_end);
      }
    }
    put(' ', Role::plain, old_, last.old_end, last.old_end + behind);
  }
  void put(char sign, Role role, Lines const& lines, std::size_t begin, std::size_t end) {
    for (auto i = begin; i < end; ++i) {
      auto line = lines[i];
      bool const ends = line.ends_with('\n');
      if (ends) line.remove_suffix(1);
      auto const text = is_for_terminal_ ? shown(line) : std::string(line);
      out_ += painted(look_, role, sign + text) + "\n";
      if (!ends) out_ += "\\ No newline at end of file\n";
    }
  }

  Lines const &old_, &new_;
  Look look_;
  bool is_for_terminal_;
  std::string out_;
};

}  // namespace

std::string line_difference(std::string_view name, std::string_view old_text,
                            std::string_view new_text, Look look, bool is_for_terminal) {
  if (old_text == new_text) return {};
  auto const old_lines = lines_of(old_text), new_lines = lines_of(new_text);
  auto const title = showable(name);
  auto const head = painted(look, Role::strong, "--- " + title) + "\n" +
                    painted(look, Role::strong, "+++ " + title) + "\n";
  Writer writer(old_lines, new_lines, look, is_for_terminal);
  return head + writer.hunks(stretches_of(old_lines, new_lines));
}

}  // namespace leat::render
