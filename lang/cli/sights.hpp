#pragma once
#include <map>
#include <memory>

#include "engine/judge.hpp"
#include "lang/render/level_picture.hpp"

namespace leat::cli {

// The waters of a judgement made ready to be drawn, each once. Scenes point into it.
class Sights {
 public:
  Sights(render::Subject const& subject, Judgement const& judged)
      : subject_(subject), judged_(judged) {}

  // Contract: an example of the judgement, with a water of its histories.
  render::Scene const* of(explore::Example const&);

 private:
  struct Sight {
    model::Arrangement arrangement;
    render::Scene scene;
  };
  render::Subject subject_;
  Judgement const& judged_;
  std::map<std::uint32_t, std::unique_ptr<Sight>> by_water_;
};

}  // namespace leat::cli
