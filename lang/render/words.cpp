#include "lang/render/words.hpp"

#include <fmt/format.h>

#include <array>

namespace leat::render {

namespace {

template <std::size_t N, class Id>
std::string_view chosen(std::array<std::string_view, N> const& words, Id id) {
  return words[static_cast<std::size_t>(id)];
}

constexpr std::array<std::string_view, 3> severities{"note", "warning", "error"};
constexpr std::array<std::string_view, 5> side_words{"east", "south", "west", "north", "none"};
constexpr std::array<std::string_view, 4> verdicts{"certain", "split", "doubtful", "lost"};
constexpr std::array<std::string_view, 6> rules{"fall", "drift", "sink", "rise", "push", "climb"};
constexpr std::array<std::string_view, 6> ends{"none", "outlet", "spill", "dry", "still", "pinned"};
constexpr std::array<std::string_view, 5> truths{"holds", "holds within bounds", "violated",
                                                 "empty", "undecided"};
constexpr std::array<std::string_view, 8> kinds{"lever", "button", "plate",  "clock",
                                                "wire",  "latch",  "toggle", "delay"};

constexpr std::array<std::string_view, 4> dangers{"misrouted", "stranded", "spilled", "crushed"};

}  // namespace

std::string_view word_of(model::Severity id) { return chosen(severities, id); }
std::string_view word_of(model::Side id) { return chosen(side_words, id); }
std::string_view word_of(body::Verdict id) { return chosen(verdicts, id); }
std::string_view word_of(body::MoveRule id) { return chosen(rules, id); }
std::string_view word_of(body::End id) { return chosen(ends, id); }
std::string_view word_of(verdicts::Truthfulness id) { return chosen(truths, id); }
std::string_view word_of(model::SignalKind id) { return chosen(kinds, id); }

std::string_view word_of(explore::Danger::Kind id) { return chosen(dangers, id); }

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  if (count == 1) return fmt::format("1 {}", one);
  if (!many.empty()) return fmt::format("{} {}", count, many);
  return fmt::format("{} {}s", count, one);
}

std::string listed(std::vector<std::string> const& names, std::string_view last, std::size_t most) {
  if (names.size() > most) {
    std::string result;
    for (std::size_t i = 0; i < most; ++i) result += names[i] + ", ";
    result.resize(result.size() - 2);
    return fmt::format("{} {} {} more", result, last, names.size() - most);
  }
  std::string result;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) result += i + 1 == names.size() ? fmt::format(" {} ", last) : ", ";
    result += names[i];
  }
  return result;
}

std::string place_words(model::Place at) {
  return fmt::format("level {}, row {}, column {}", at.z, at.y, at.x);
}

std::string place_code(model::Place at) { return fmt::format("{} {} {}", at.x, at.y, at.z); }

std::vector<std::string> names_of(std::vector<source::Named> const& known,
                                  std::vector<std::uint32_t> const& ids) {
  std::vector<std::string> names;
  for (auto id : ids) names.push_back(known[id].name);
  return names;
}

}  // namespace leat::render
