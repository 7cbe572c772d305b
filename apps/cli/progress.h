#pragma once
// How far a proof has come, as one line on a terminal that is overwritten and at last wiped.
#include <chrono>
#include <cstddef>
#include <string>

namespace wellproof {

class ProgressLine {
 public:
  /// @param shown false: nothing is ever written
  explicit ProgressLine(bool shown) : shown_(shown) {}
  void tell(std::size_t done, std::size_t all);
  void wipe();

 private:
  using Clock = std::chrono::steady_clock;
  bool shown_;
  bool written_ = false;
  Clock::time_point began_ = Clock::now();
  Clock::time_point last_;
};

/// "[########........] 50 %  12 s left"
std::string progress_text(std::size_t done, std::size_t all, double passed_s);

}  // namespace wellproof
