// Sharing work among threads, so that the result does not tell how many there were.
#pragma once

#include <algorithm>
#include <atomic>
#include <cstdint>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

#include "levigate/progress.hpp"

namespace levigate::inline v0 {

namespace detail {

/// How many pieces of work there are, and how many of them a thread takes at a time.
struct Turns {
  std::int64_t of = 0, at_a_time = 1;
};

/// Calls work(i) for each i below turns.of on `threads` threads (0: as many as the machine has), of which the caller's is one; only
/// that one calls progress. What was taken is always finished. Returns the number of pieces done, which are the first ones. Where
/// work throws, the error of the first such piece is thrown, the same for any number of threads; an error of progress is thrown on.
template <typename Work>
std::int64_t share_out(Turns turns, unsigned threads, const Progress& progress, const Work& work) {
  const std::int64_t of = turns.of, at_a_time = turns.at_a_time;
  std::atomic<std::int64_t> next = 0, done = 0;
  std::atomic<bool> stop = false;
  std::mutex guard;
  std::exception_ptr error;
  std::int64_t error_at = of + 1;
  const auto take_turns = [&](const auto& tell) {
    while (!stop) {
      const std::int64_t first = next.fetch_add(at_a_time);
      if (first >= of) return;
      const std::int64_t end = std::min(first + at_a_time, of);
      std::int64_t at = first;
      try {
        for (; at < end; ++at) work(at);
        done += end - first;
        tell();
      } catch (...) {
        const std::scoped_lock lock(guard);
        stop = true;
        if (at < error_at) {
          error_at = at;
          error = std::current_exception();
        }
      }
    }
  };
  std::int64_t told = 0;
  {
    const std::int64_t most = (of + at_a_time - 1) / at_a_time;
    if (threads == 0) threads = std::max(1U, std::thread::hardware_concurrency());
    std::vector<std::jthread> crew;
    for (std::int64_t i = 1; i < std::min<std::int64_t>(threads, most); ++i) {
      crew.emplace_back([&] { take_turns([] {}); });
    }
    take_turns([&] {
      if (!progress) return;
      told = done;
      if (!progress(told, of)) stop = true;
    });
  }
  if (error) std::rethrow_exception(error);
  if (progress && !stop && done == of && told < of) progress(of, of);
  return done;
}

}  // namespace detail

}  // namespace levigate
