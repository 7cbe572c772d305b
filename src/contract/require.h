#pragma once
// What must hold if our own code is right. Not for what a user wrote: no input may reach a failing require.
#include <stdexcept>

namespace wellproof {

/// Thrown by require; caught only in apps.
struct ContractBroken : std::logic_error {
  using std::logic_error::logic_error;
};

/// Throws ContractBroken with this sentence unless the condition holds. Always on.
inline void require(bool holds, char const* sentence) {
  if (!holds) {
    throw ContractBroken(sentence);
  }
}

}  // namespace wellproof
