#include "engine/works/trials.hpp"

#include <array>
#include <optional>
#include <random>

#include "engine/works/sweep.hpp"

namespace leat::works {

using logic::Diagram;
using Word = std::uint64_t;

namespace {

constexpr int most_rounds = 16, rounds_by_chance = 4;
constexpr std::size_t flips_a_word = 63;  // beside the combination itself, which is the lowest bit

// Several questions side by side, each answered in the combinations of one word.
constexpr std::size_t questions = 8;
struct Words {
  std::array<Word, questions> of{};
  bool operator==(Words const&) const = default;
};

template <class Make>
Words each(Make make) {
  Words made;
  for (std::size_t question = 0; question < questions; ++question)
    made.of[question] = make(question);
  return made;
}

// Conditions in the combinations of one word, the same for every question.
class InWords {
 public:
  using Value = Words;
  InWords(Diagram const& diagram, std::vector<Word> variables)
      : diagram_(diagram), variables_(std::move(variables)), known_(diagram.node_count()) {}

  static Words nothing() { return {}; }
  static Words everything() { return opposite({}); }
  static Words opposite(Words const& a) {
    return each([&](std::size_t question) { return ~a.of[question]; });
  }
  static Words both(Words const& a, Words const& b) {
    return each([&](std::size_t question) { return a.of[question] & b.of[question]; });
  }
  static Words either(Words const& a, Words const& b) {
    return each([&](std::size_t question) { return a.of[question] | b.of[question]; });
  }
  Words of(Function f) {
    return each([word = word_of(f)](std::size_t) { return word; });
  }

  Word word_of(Function f) {
    auto const level = diagram_.level(f);
    if (level == Diagram::below_all) return f == Diagram::always ? ~Word{0} : 0;
    auto const flip = (f.edge & 1u) != 0 ? ~Word{0} : 0;
    auto& known = known_[f.edge >> 1];
    if (!known) {
      auto const [off, on] = diagram_.branches({f.edge & ~1u}, level);
      known = (variables_[level] & word_of(on)) | (~variables_[level] & word_of(off));
    }
    return *known ^ flip;
  }

 private:
  Diagram const& diagram_;
  std::vector<Word> variables_;             // by level
  std::vector<std::optional<Word>> known_;  // by node
};

class Trials {
 public:
  Trials(Network const& network, Diagram const& diagram, std::size_t variables, Function reachable)
      : network_(network), diagram_(diagram), reachable_(reachable), matters_(variables, false) {
    for (model::OutletId outlet = 0; outlet < network.outlet_count(); ++outlet)
      number_.push_back(network.join_of(outlet) ? 0 : ++last_);
    if (has_way(&Way::spills)) asked_.push_back(Prospect::spilled);
    if (has_way(&Way::is_unsure)) asked_.push_back(Prospect::unsure);
    if (has_way(&Way::is_barred)) asked_.push_back(Prospect::barred);
  }

  std::vector<bool> run(Reached& reached) {
    if (reachable_ == Diagram::never) return std::move(matters_);
    std::vector<bool> is_led_to(matters_.size(), false);
    for (int round = 0; round < most_rounds; ++round) {
      auto const level = deepest_left(reached, is_led_to);
      if (!level) break;
      is_led_to[*level] = true;
      flip_all_left(reached.combination(*level));
    }
    for (int round = 0; round < rounds_by_chance; ++round) flip_all_left(some_combination());
    return std::move(matters_);
  }

 private:
  std::optional<Diagram::Level> deepest_left(Reached const& reached,
                                             std::vector<bool> const& is_led_to) const {
    std::optional<Diagram::Level> deepest;
    for (Diagram::Level level = 0; level < matters_.size(); ++level) {
      if (matters_[level] || is_led_to[level] || !reached.depth(level)) continue;
      if (!deepest || reached.depth(*deepest) < reached.depth(level)) deepest = level;
    }
    return deepest;
  }

  void flip_all_left(std::vector<bool> const& tried) {
    std::vector<Diagram::Level> flipped;
    for (Diagram::Level level = 0; level < matters_.size(); ++level) {
      if (!matters_[level]) flipped.push_back(level);
      bool const is_last = level + 1 == matters_.size();
      if (flipped.size() < flips_a_word && !(is_last && !flipped.empty())) continue;
      compare(tried, flipped);
      flipped.clear();
    }
  }

  bool has_way(bool Way::*is_so) const {
    for (model::InletId inlet = 0; inlet < network_.inlet_count(); ++inlet) {
      for (model::ProfileId profile = 0; profile < network_.profile_count(); ++profile) {
        auto const& ways = network_.ways(inlet, profile);
        if (std::any_of(ways.begin(), ways.end(), [&](Way const& way) { return way.*is_so; }))
          return true;
      }
    }
    return false;
  }

  // One that can come about, by chance.
  std::vector<bool> some_combination() {
    std::vector<bool> values;
    auto at = reachable_;
    for (Diagram::Level level = 0; level < matters_.size(); ++level) {
      auto const [off, on] = diagram_.branches(at, level);
      bool const is_on = off == Diagram::never || (on != Diagram::never && (chance_() & 1) != 0);
      values.push_back(is_on);
      at = is_on ? on : off;
    }
    return values;
  }

  void compare(std::vector<bool> const& tried, std::vector<Diagram::Level> const& flipped) {
    std::vector<Word> variables;
    for (bool value : tried) variables.push_back(value ? ~Word{0} : 0);
    for (std::size_t i = 0; i < flipped.size(); ++i) variables[flipped[i]] ^= Word{2} << i;
    InWords in_words(diagram_, std::move(variables));
    auto const differing = in_words.word_of(reachable_) & differences(std::move(in_words));
    for (std::size_t i = 0; i < flipped.size(); ++i)
      if ((differing >> (i + 1) & 1) != 0) matters_[flipped[i]] = true;
  }

  // Where something becomes of a body that enters and not in the first combination, or the other
  // way round.
  Word differences(InWords in_words) const {
    Sweep<InWords> sweep(network_, std::move(in_words));
    Word differing = 0;
    auto const compare = [&](std::vector<Words> const& by_inlet) {
      for (model::InletId inlet = 0; inlet < by_inlet.size(); ++inlet) {
        if (!network_.is_entrance(inlet)) continue;
        for (auto here : by_inlet[inlet].of) differing |= here ^ (Word{0} - (here & 1));
      }
    };
    for (model::ProfileId profile = 0; profile < network_.profile_count(); ++profile) {
      std::vector<Words> arriving(network_.inlet_count());
      for (std::size_t digit = 0; last_ >> digit > 0; digit += questions) {
        auto const reached =
            sweep.reaching([&](model::OutletId o) { return digits(o, digit); }, profile);
        compare(reached);
        for (model::InletId inlet = 0; inlet < reached.size(); ++inlet)
          arriving[inlet] = InWords::either(arriving[inlet], any_of(reached[inlet]));
      }
      compare(sweep.trapped(std::move(arriving), profile));
      for (auto prospect : asked_) compare(sweep.answer(prospect, profile));
    }
    return differing;
  }

  // The same for every question: whether any of them is answered so. Every outlet has a digit that
  // is set, so who arrives is seen in some.
  static Words any_of(Words const& answers) {
    Word any = 0;
    for (auto answer : answers.of) any |= answer;
    return each([any](std::size_t) { return any; });
  }

  // An outlet's number from some digit on, a digit a question.
  Words digits(model::OutletId outlet, std::size_t first) const {
    return each([number = number_[outlet] >> first](std::size_t question) {
      return Word{0} - (number >> question & 1);
    });
  }

  Network const& network_;
  Diagram const& diagram_;
  Function reachable_;
  std::vector<bool> matters_;  // by level
  // Of each outlet among the plant's own, from 1, so that whoever arrives is seen in some digit; 0
  // where it is joined.
  std::vector<std::size_t> number_;
  std::size_t last_ = 0;
  std::vector<Prospect> asked_;
  std::minstd_rand chance_;  // seeded alike each time
};

}  // namespace

std::vector<bool> variables_that_matter(Network const& network, Diagram const& diagram,
                                        Reached& reached, std::size_t variables,
                                        Function reachable) {
  return Trials(network, diagram, variables, reachable).run(reached);
}

}  // namespace leat::works
