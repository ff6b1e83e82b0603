#pragma once
#include <csignal>

namespace leat::cli {

// While it lives, SIGINT and SIGTERM do not end the program but are remembered, so that what is
// known by then can be told; a second one ends it at once. A signal that was ignored before stays
// so. One at a time: signals belong to the process.
class Interruption {
 public:
  Interruption();
  ~Interruption();
  Interruption(Interruption const&) = delete;
  Interruption& operator=(Interruption const&) = delete;
  bool has_come() const;

 private:
  struct sigaction interrupt_before_ {
  }, terminate_before_{};
};

// What a worker throws out of the engine's Progress when nobody waits for its answer any more.
struct Stopped {};

}  // namespace leat::cli
