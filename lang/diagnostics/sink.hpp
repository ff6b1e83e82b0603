#pragma once
#include <cstddef>
#include <vector>

#include "lang/diagnostics/diagnostic.hpp"

namespace leat::diagnostics {

// Collects diagnostics; never prints, throws or exits. `sorted` orders them by place in the text,
// so the output does not depend on the order of the checks. Past `most` reports it only counts.
class Sink {
 public:
  static constexpr std::size_t most = 50;
  void report(Diagnostic);
  bool is_full() const { return reports_.size() >= most; }
  bool empty() const { return reports_.empty(); }
  std::size_t left_out() const { return left_out_; }
  std::vector<Diagnostic> sorted() const;

 private:
  std::vector<Diagnostic> reports_;
  std::size_t left_out_ = 0;
};

}  // namespace leat::diagnostics
