#pragma once
#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <cstddef>
#include <exception>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

namespace leat::cli {

// Several workers make results, each from its number; one who owns them takes the results in the
// order of the numbers, whichever is ready first. Whatever happens does not depend on how many
// workers there are. A result that was thrown is thrown again where it is taken. Kept until they
// are taken are at most the results that are ready.
template <class Result>
class Crew {
 public:
  Crew(std::size_t count, std::size_t workers, std::function<Result(std::size_t)> work)
      : work_(std::move(work)), results_(count) {
    for (std::size_t i = 0; i < std::min(count, workers); ++i)
      threads_.emplace_back([this] { work_on(); });
  }
  Crew(Crew const&) = delete;
  Crew& operator=(Crew const&) = delete;
  // Lets begun work come to its end, and begins no other.
  ~Crew() {
    {
      std::lock_guard const lock(mutex_);
      next_ = results_.size();
    }
    for (auto& thread : threads_) thread.join();
  }

  // Waits for the next result, but no longer than a moment; none where it is not ready then.
  std::optional<Result> take(std::chrono::milliseconds moment) {
    std::unique_lock lock(mutex_);
    is_ready_.wait_for(lock, moment, [&] { return results_[taken_].is_ready; });
    auto& slot = results_[taken_];
    if (!slot.is_ready) return std::nullopt;
    ++taken_;
    if (slot.thrown) std::rethrow_exception(slot.thrown);
    return std::move(slot.result);
  }
  bool is_all_taken() const { return taken_ == results_.size(); }
  std::size_t ready_count() {
    std::lock_guard const lock(mutex_);
    return ready_;
  }

 private:
  struct Slot {
    bool is_ready = false;
    std::optional<Result> result;
    std::exception_ptr thrown;
  };

  void work_on() {
    while (true) {
      std::size_t number = 0;
      {
        std::lock_guard const lock(mutex_);
        if (next_ >= results_.size()) return;
        number = next_++;
      }
      Slot slot{true, std::nullopt, nullptr};
      try {
        slot.result = work_(number);
      } catch (...) {
        slot.thrown = std::current_exception();
      }
      std::lock_guard const lock(mutex_);
      results_[number] = std::move(slot);
      ++ready_;
      is_ready_.notify_one();
    }
  }

  std::function<Result(std::size_t)> work_;
  std::mutex mutex_;
  std::condition_variable is_ready_;
  std::vector<Slot> results_;
  std::size_t next_ = 0, taken_ = 0, ready_ = 0;
  std::vector<std::thread> threads_;
};

}  // namespace leat::cli
