#include "lang/cli/interruption.hpp"

#include <atomic>

namespace leat::cli {

namespace {

// A handler runs on any thread, and may touch only what needs no lock.
std::atomic<bool> is_interrupted = false;
static_assert(std::atomic<bool>::is_always_lock_free);

void remember(int) { is_interrupted = true; }

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
  is_interrupted = false;
  heed(SIGINT, interrupt_before_);
  heed(SIGTERM, terminate_before_);
}

Interruption::~Interruption() {
  sigaction(SIGINT, &interrupt_before_, nullptr);
  sigaction(SIGTERM, &terminate_before_, nullptr);
}

bool Interruption::has_come() const { return is_interrupted; }

}  // namespace leat::cli
