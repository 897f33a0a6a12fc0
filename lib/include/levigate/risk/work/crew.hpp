// Sharing draws among threads, so that the result does not tell how many there were.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstdint>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

#include "levigate/risk/progress.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Draws that a thread takes at a time. What was taken is always finished, so that the draws done are the first ones.
inline constexpr std::int64_t draws_at_a_time = 16;

/// Calls work(draw) for each draw on `threads` threads (0: as many as the machine has), of which the caller's is one; only that
/// one calls progress. Returns the number of draws done, which are the first ones. Where work throws, the error of the first such
/// draw is thrown, the same for any number of threads; an error of progress is thrown on.
template <typename Work>
std::int64_t for_each_draw(std::int64_t draws, unsigned threads, const Progress& progress,
                           const Work& work) {
  std::atomic<std::int64_t> next = 0, done = 0;
  std::atomic<bool> stop = false;
  std::mutex guard;
  std::exception_ptr error;
  std::int64_t error_at = draws + 1;
  const auto take_turns = [&](const auto& tell) {
    while (!stop) {
      const std::int64_t first = next.fetch_add(draws_at_a_time);
      if (first >= draws) return;
      const std::int64_t end = std::min(first + draws_at_a_time, draws);
      std::int64_t draw = first;
      try {
        for (; draw < end; ++draw) work(draw);
        done += end - first;
        tell();
      } catch (...) {
        const std::scoped_lock lock(guard);
        stop = true;
        if (draw < error_at) {
          error_at = draw;
          error = std::current_exception();
        }
      }
    }
  };
  std::int64_t told = 0;
  {
    const std::int64_t turns = (draws + draws_at_a_time - 1) / draws_at_a_time;
    if (threads == 0) threads = std::max(1U, std::thread::hardware_concurrency());
    std::vector<std::jthread> crew;
    for (std::int64_t i = 1; i < std::min<std::int64_t>(threads, turns); ++i) {
      crew.emplace_back([&] { take_turns([] {}); });
    }
    take_turns([&] {
      if (!progress) return;
      told = done;
      if (!progress(told, draws)) stop = true;
    });
  }
  if (error) std::rethrow_exception(error);
  if (progress && !stop && done == draws && told < draws) progress(draws, draws);
  return done;
}

}  // namespace detail

}  // namespace levigate
