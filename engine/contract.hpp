#pragma once
#include <stdexcept>

// Misuse of an engine interface is a fault of the caller's code, never of the user's design: it is
// checked in every build and thrown as one type, so that the program can tell it from its results.
namespace leat {

class ContractBroken : public std::logic_error {
 public:
  using std::logic_error::logic_error;
};

inline void require(bool holds, char const* what) {
  if (!holds) throw ContractBroken(what);
}

}  // namespace leat
