#include <algorithm>
#include <random>

#include "engine/works/judge_works.hpp"
#include "tests/laws/random_plant.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

using model::Claim;
using verdicts::Truthfulness;

#ifdef LEAT_SANITIZED
constexpr unsigned plants = 30;
#else
constexpr unsigned plants = 400;
#endif

// A random plant without joins, so that its drawing can be judged as one junction too; with a
// promise, and with claims of every sort.
class Asked {
 public:
  explicit Asked(unsigned seed) : plant_(laws::random_plant(seed, seed % 4 == 3)), random_(seed) {
    plant_.joins.clear();
    if (below(2) == 0) plant_.circuit.nevers.push_back(expression(2));
    for (unsigned k = 0; k < static_cast<unsigned>(model::FindingKind::count); ++k) {
      model::Expectation finds{Claim::finds};
      finds.kind = static_cast<model::FindingKind>(k);
      // In a works wires that agree are meant to, as places follow what they are given.
      if (finds.kind != model::FindingKind::twin_signals) ask(finds);
    }
    model::Expectation none{Claim::no_findings};
    none.ceiling = model::Severity::warning;
    ask(none);
    for (model::InletId inlet = 0; inlet < plant_.inlets.size(); ++inlet) ask_of(inlet);
  }

  model::Design const& plant() const { return plant_; }

 private:
  unsigned below(unsigned bound) { return static_cast<unsigned>(random_() % bound); }

  model::ExpressionId expression(unsigned literals) {
    auto& circuit = plant_.circuit;
    std::vector<model::SignalId> inputs;
    for (model::SignalId s = 0; s < circuit.signals.size(); ++s)
      if (circuit.signals[s].is_input()) inputs.push_back(s);
    std::optional<model::ExpressionId> all;
    for (; literals > 0; --literals) {
      auto const input = inputs[below(static_cast<unsigned>(inputs.size()))];
      auto literal = circuit.add({model::Operator::signal, input, 0});
      if (below(2) == 0) literal = circuit.add({model::Operator::negation, literal, 0});
      all =
          all ? circuit.add({below(3) == 0 ? model::Operator::parity : model::Operator::conjunction,
                             *all, literal})
              : literal;
    }
    return *all;
  }

  void ask(model::Expectation expectation) {
    if (below(3) == 0) expectation.condition = expression(1 + below(2));
    plant_.expectations.push_back(expectation);
  }

  void ask_of(model::InletId inlet) {
    for (auto claim : {Claim::reaches_nothing, Claim::never_trapped, Claim::never_spilled,
                       Claim::never_split, Claim::never_doubtful, Claim::never_lost}) {
      model::Expectation expectation{claim};
      expectation.inlet = inlet;
      ask(expectation);
    }
    for (auto claim : {Claim::reaches, Claim::may_reach, Claim::never_reaches}) {
      model::Expectation expectation{claim};
      expectation.inlet = inlet;
      expectation.outlet = below(static_cast<unsigned>(plant_.outlets.size()));
      ask(expectation);
    }
  }

  model::Design plant_;
  std::mt19937 random_;
};

bool is_proved(Truthfulness verdict) {
  return verdict == Truthfulness::holds || verdict == Truthfulness::violated ||
         verdict == Truthfulness::empty;
}

}  // namespace

// Source: docs/model.md, a works is one drawing: what is proved of it is so of the drawing, judged
// combination by combination.
TEST_CASE("law: what is proved of a plant is so in its drawing") {
  std::size_t proved = 0, open = 0;
  for (unsigned seed = 0; seed < plants; ++seed) {
    Asked const asked(seed);
    auto const& plant = asked.plant();
    auto const flat = judge(plant);
    if (!flat.is_decided || !flat.histories.is_followed || !flat.switchings.is_complete) continue;
    auto const composed = works::judge_works(plant);
    for (std::size_t e = 0; e < plant.expectations.size(); ++e) {
      auto const is = composed.expectations[e].verdict, want = flat.expectations[e].verdict;
      if (!is_proved(is) || !is_proved(want)) {
        open += is_proved(want) ? 1u : 0u;
        continue;
      }
      auto const& expectation = plant.expectations[e];
      INFO("seed " << seed << ", expectation " << e << ", claim "
                   << static_cast<int>(expectation.claim) << ", kind "
                   << static_cast<int>(expectation.kind.value_or(model::FindingKind::count)));
      CHECK(is == want);
      ++proved;
    }
  }
  INFO(proved << " proved, " << open << " open");
  CHECK(open * 10 < proved);
}
