#pragma once
// Work that falls apart into pieces, on several threads.
#include <atomic>
#include <cstddef>
#include <system_error>
#include <thread>
#include <vector>

namespace wellproof {

/// Does work(0) … work(count − 1) in any order on so many threads.
template <class Work>
void shared_out(std::size_t count, unsigned threads, Work const& work) {
  std::atomic<std::size_t> next{0};
  auto const hand = [&] {
    for (std::size_t i = next.fetch_add(1); i < count; i = next.fetch_add(1)) {
      work(i);
    }
  };
  std::vector<std::thread> crew;
  try {
    while (crew.size() + 1 < threads) {
      crew.emplace_back(hand);
    }
  } catch (std::system_error const&) {
    // A machine that has no more threads to give (a browser may have none): those that there are do the work.
  }
  hand();
  for (auto& each : crew) {
    each.join();
  }
}

}  // namespace wellproof
