#pragma once
#include <cstddef>
#include <vector>

#include "lang/diagnostics/diagnostic.hpp"

namespace leat::diagnostics {

// Collects diagnostics; never prints, throws or exits. `sorted` orders them by place in the text,
// so the output does not depend on the order of the checks. Past `most` reports it only counts, and
// who reads the text stops reading at `most_left_out`: then `left_out` says "at least".
class Sink {
 public:
  static constexpr std::size_t most = 50;
  static constexpr std::size_t most_left_out = 20'000;
  void report(Diagnostic);
  // Counts a diagnostic that was not made because the sink is full.
  void leave_out() { ++left_out_; }
  bool is_full() const { return reports_.size() >= most; }
  bool has_enough() const { return left_out_ >= most_left_out; }
  bool empty() const { return reports_.empty(); }
  std::size_t left_out() const { return left_out_; }
  std::vector<Diagnostic> sorted() const;

 private:
  std::vector<Diagnostic> reports_;
  std::size_t left_out_ = 0;
};

}  // namespace leat::diagnostics
