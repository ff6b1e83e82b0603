#include "engine/works/prospects.hpp"

#include "engine/works/sweep.hpp"

namespace leat::works {

using logic::Diagram;

namespace {

struct InDiagram {
  using Value = Function;
  Diagram& diagram;
  static Value nothing() { return Diagram::never; }
  static Value everything() { return Diagram::always; }
  static Value of(Function condition) { return condition; }
  static Value opposite(Value a) { return !a; }
  Value both(Value a, Value b) { return diagram.both(a, b); }
  Value either(Value a, Value b) { return diagram.either(a, b); }
};

}  // namespace

class Prospects::Answers : public Sweep<InDiagram> {
 public:
  using Sweep::Sweep;
};

Prospects::Prospects(Network const& network, Diagram& diagram)
    : answers_(std::make_unique<Answers>(network, InDiagram{diagram})),
      known_(network.profile_count() * prospect_count) {}

Prospects::~Prospects() = default;

Function Prospects::of(Prospect prospect, model::InletId inlet, model::ProfileId profile) {
  auto& known = known_[profile * prospect_count + static_cast<std::size_t>(prospect)];
  if (known.empty()) known = answers_->answer(prospect, profile);
  return known[inlet];
}

}  // namespace leat::works
