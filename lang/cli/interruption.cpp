#include "lang/cli/interruption.hpp"

namespace leat::cli {

namespace {

// All that a handler may touch (POSIX).
volatile std::sig_atomic_t is_interrupted = 0;

void remember(int) { is_interrupted = 1; }

void heed(int signal, struct sigaction& before) {
  sigaction(signal, nullptr, &before);
  if (before.sa_handler == SIG_IGN) return;
  struct sigaction action {};
  action.sa_handler = remember;
  action.sa_flags = SA_RESTART | static_cast<int>(SA_RESETHAND);
  sigemptyset(&action.sa_mask);
  sigaction(signal, &action, nullptr);
}

}  // namespace

Interruption::Interruption() {
  is_interrupted = 0;
  heed(SIGINT, interrupt_before_);
  heed(SIGTERM, terminate_before_);
}

Interruption::~Interruption() {
  sigaction(SIGINT, &interrupt_before_, nullptr);
  sigaction(SIGTERM, &terminate_before_, nullptr);
}

bool Interruption::has_come() const { return is_interrupted != 0; }

}  // namespace leat::cli
