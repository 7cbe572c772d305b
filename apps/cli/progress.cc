#include "cli/progress.h"

#include <cmath>
#include <cstdio>

#include <fmt/format.h>

namespace wellproof {
namespace {

constexpr std::size_t bar_width = 40;
constexpr auto least_between = std::chrono::milliseconds(100);

}  // namespace

std::string progress_text(std::size_t done, std::size_t all, double passed_s) {
  if (all == 0) {
    return "";
  }
  double const share = static_cast<double>(done) / static_cast<double>(all);
  auto const filled = static_cast<std::size_t>(share * bar_width);
  std::string text = fmt::format("[{}{}] {:3.0f} %", std::string(filled, '#'), std::string(bar_width - filled, '.'),
                                 std::floor(100 * share));
  if (done > 0 && done < all && passed_s > 1) {
    double const left_s = std::ceil(passed_s * (1 - share) / share);
    text += left_s < 100 ? fmt::format("  {:.0f} s left", left_s) : fmt::format("  {:.0f} min left", left_s / 60);
  }
  return text;
}

void ProgressLine::tell(std::size_t done, std::size_t all) {
  auto const now = Clock::now();
  if (!shown_ || (written_ && now - last_ < least_between && done < all)) {
    return;
  }
  last_ = now;
  written_ = true;
  std::string const line = progress_text(done, all, std::chrono::duration<double>(now - began_).count());
  std::fprintf(stderr, "\r\x1b[2K%s", line.c_str());
  std::fflush(stderr);
}

void ProgressLine::wipe() {
  if (written_) {
    std::fputs("\r\x1b[2K", stderr);
    std::fflush(stderr);
  }
}

}  // namespace wellproof
