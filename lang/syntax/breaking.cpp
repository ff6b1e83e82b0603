#include "lang/syntax/breaking.hpp"

#include <algorithm>
#include <initializer_list>
#include <string_view>
#include <utility>
#include <vector>

#include "lang/source/code_point.hpp"
#include "lang/syntax/line.hpp"

namespace leat::syntax {

namespace {

// What has no blank in it; a quoted text is one word.
struct Piece {
  std::string_view text;
  std::size_t begin;
  std::size_t depth;  // of the parentheses around its beginning
};

std::vector<Piece> pieces_of(std::string_view line) {
  std::vector<Piece> pieces;
  std::size_t depth = 0;
  for (auto begin = line.find_first_not_of(' '); begin < line.size();) {
    auto const depth_before = depth;
    bool is_quoted = false;
    auto end = begin;
    for (; end < line.size() && (is_quoted || line[end] != ' '); ++end) {
      char const sign = line[end];
      if (is_quoted && sign == '\\')
        ++end;
      else if (sign == '"')
        is_quoted = !is_quoted;
      else if (!is_quoted && sign == '(')
        ++depth;
      else if (!is_quoted && sign == ')')
        --depth;
    }
    pieces.push_back({line.substr(begin, end - begin), begin, depth_before});
    begin = line.find_first_not_of(' ', end);
  }
  return pieces;
}

// A place where the language lets a line go on below. The weaker it binds, the earlier it is used.
// At some all are used once one is; lists and products are filled up instead.
struct Joint {
  std::size_t at;  // where the next line would begin
  std::size_t strength;
  bool fills;
};

bool is_among(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// Where a part of a sentence begins. `off` is also a value, and then stands behind an operation;
// `where` and `with` may be names anywhere but in what is placed.
bool begins_part(std::string_view word, std::string_view before, bool is_of_place) {
  if (is_among(before, {"and", "or", "xor", "not", "=", "on", "when"})) return false;
  if (before.ends_with(':')) return true;
  if (is_among(word, {"where", "with"})) return is_of_place && !is_among(before, {"as", "place"});
  return is_among(word, {"when", "otherwise", "else", "every", "off", "after", "because"});
}

std::vector<Joint> joints_of(std::string_view line) {
  std::vector<Joint> joints;
  auto const pieces = pieces_of(line);
  bool const is_of_place = !pieces.empty() && pieces.front().text == "place";
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    auto const& [word, at, depth] = pieces[i];
    auto const before = pieces[i - 1].text;
    auto const base = 1 + 4 * depth;
    if (depth == 0 && begins_part(word, before, is_of_place))
      joints.push_back({at, 0, false});
    else if (before.ends_with(','))
      joints.push_back({at, base, true});
    else if (word == "or" || word == "xor")
      joints.push_back({at, base + (word == "or" ? 1 : 2), false});
    else if (word == "and")
      joints.push_back({at, base + 3, true});
  }
  return joints;
}

std::string_view without_blanks_behind(std::string_view text) {
  return text.substr(0, text.find_last_not_of(' ') + 1);
}

bool fits(std::string_view text, std::size_t indent) {
  return indent + source::code_point_count(without_blanks_behind(text)) <= widest_line;
}

// A line that is too wide goes on below at its weakest joints, two blanks further in, and each part
// is looked at in turn. A part has none of the joints it was cut at, so this ends. Cost: the length
// of the line times the depth of its parentheses.
class Breaker {
 public:
  std::string take() { return std::move(out_); }

  void put(std::string_view line, std::size_t indent) {
    auto const joints = fits(line, indent) ? std::vector<Joint>() : joints_of(line);
    if (joints.empty()) return put_line(line, indent);
    auto const weakest = *std::min_element(
        joints.begin(), joints.end(),
        [](Joint const& one, Joint const& other) { return one.strength < other.strength; });
    std::vector<std::size_t> cuts;
    for (auto const& joint : joints)
      if (joint.strength == weakest.strength) cuts.push_back(joint.at);
    cuts.push_back(line.size());
    std::size_t begin = 0;
    for (std::size_t i = 0; i < cuts.size(); ++i) {
      auto const inner = begin == 0 ? indent : indent + 2;
      while (weakest.fills && i + 1 < cuts.size() &&
             fits(line.substr(begin, cuts[i + 1] - begin), inner))
        ++i;
      put(line.substr(begin, cuts[i] - begin), inner);
      begin = cuts[i];
    }
  }

 private:
  void put_line(std::string_view line, std::size_t indent) {
    if (!out_.empty()) out_ += '\n';
    out_.append(indent, ' ');
    out_ += without_blanks_behind(line);
  }

  std::string out_;
};

}  // namespace

std::string broken(std::string_view line, std::size_t indent) {
  Breaker breaker;
  breaker.put(line, indent);
  return breaker.take();
}

}  // namespace leat::syntax
