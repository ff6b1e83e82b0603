#pragma once
#include "lang/grammar/reading.hpp"

namespace leat::grammar {

// Counts how deep expressions and repetitions are nested, for as long as it lives. The bound on it
// also bounds every walk over the tree.
class DepthGuard {
 public:
  explicit DepthGuard(Reading& reading) : reading_(reading) { ++reading_.depth; }
  ~DepthGuard() { --reading_.depth; }
  DepthGuard(DepthGuard const&) = delete;
  DepthGuard& operator=(DepthGuard const&) = delete;
  bool is_too_deep() const { return reading_.depth > 200; }

 private:
  Reading& reading_;
};

}  // namespace leat::grammar
