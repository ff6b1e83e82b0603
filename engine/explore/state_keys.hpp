#pragma once
#include <array>
#include <cstdint>

#include "engine/logic/machine.hpp"

namespace leat::explore {

// Codes of a machine made dense: a key for every code, so that the codes met so far have small
// keys.
//
// Idea: of 40 variables often many follow from others (a latch from the levers that drive it).
// Where they follow by parity, the codes met span few dimensions over the field of two elements.
// The key is a linear image of the code (less the first code) whose lowest `dimensions` bits are
// coordinates in that span and whose other bits are zero exactly on it: Gaussian elimination, done
// as codes come. The map stays invertible, so keys are as good as codes, always.
//
// Invariant: include() changes no key below 2^dimensions; it maps others by the returned step.
// Cost: one exclusive-or for each bit of a code; at most 64 steps ever.
class StateKeys {
 public:
  using Key = std::uint64_t;

  explicit StateKeys(logic::Code first);

  Key key_of(logic::Code) const;
  logic::Code code_of(Key) const;
  // What a change of one variable alone does to the key (exclusive-or).
  Key change(std::size_t variable) const { return image_[variable]; }
  int dimensions() const { return dimensions_; }
  bool includes(Key key) const { return dimensions_ == 64 || key >> dimensions_ == 0; }

  // How keys made before are to be rewritten when the span has grown.
  struct Step {
    int from = 0, to = 0;  // bits that change places
    Key cleared = 0;       // bits that flip where bit `to` is then set
    Key operator()(Key key) const {
      auto const differ = (key >> from ^ key >> to) & 1u;
      key ^= differ << from | differ << to;
      return (key >> to & 1u) != 0 ? key ^ cleared : key;
    }
  };
  // Makes the span hold a key that it does not. Contract: not included yet.
  Step include(Key);

 private:
  logic::Code first_;
  std::array<Key, 64> image_;             // of each variable
  std::array<logic::Code, 64> preimage_;  // of each bit of a key
  int dimensions_ = 0;
};

}  // namespace leat::explore
