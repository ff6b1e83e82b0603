#pragma once
#include <bit>
#include <cstdint>
#include <vector>

#include "engine/water/word.hpp"
#include "engine/water/zeroed.hpp"

namespace leat::water {

// Numbers to come back to, each once, handed out in ascending order, so that what lies side by side
// in memory is read side by side. One bit a number, and one for each 64 of these that has any:
// adding is two writes, and handing out costs what was added and a look at one word for every 4096
// numbers.
class Agenda {
 public:
  explicit Agenda(std::size_t numbers)
      : words_(numbers / word_bits + 1), summary_(numbers / (word_bits * word_bits) + 1) {}

  void add(std::uint32_t number) {
    auto const word = number / word_bits;
    words_[word] |= Word{1} << number % word_bits;
    summary_[word / word_bits] |= Word{1} << word % word_bits;
  }

  // Appends them all to `numbers`, and is empty after that.
  void move_to(std::vector<std::uint32_t>& numbers) {
    for (std::size_t s = 0; s < summary_.size(); ++s) {
      for (; summary_[s]; summary_[s] &= summary_[s] - 1) {
        auto const word = s * word_bits + static_cast<std::size_t>(std::countr_zero(summary_[s]));
        for (auto& rest = words_[word]; rest; rest &= rest - 1) {
          numbers.push_back(static_cast<std::uint32_t>(
              word * word_bits + static_cast<std::size_t>(std::countr_zero(rest))));
        }
      }
    }
  }

 private:
  Zeroed<Word> words_;
  std::vector<Word> summary_;
};

}  // namespace leat::water
