#pragma once
// The one door of the program: a request as bytes in, an answer out. Command line, page and WebAssembly module are ways
// to carry these bytes. It opens no file and prints nothing.
#include <cstddef>
#include <functional>
#include <string_view>
#include <utility>

#include "door/request.h"

namespace wellproof {

class Door {
 public:
  /// Called while a proof is computed, from one thread at a time.
  using Progress = std::function<void(std::size_t done, std::size_t all)>;

  Door() = default;
  explicit Door(Progress progress) : progress_(std::move(progress)) {}

  /// Never throws for what was asked. Exit code 3: memory, or a promise of our own code, gave way.
  Answer ask(std::string_view request) const;

 private:
  Progress progress_;
};

}  // namespace wellproof
