// Sharing draws among threads.
#pragma once

#include <cstdint>

#include "levigate/detail/crew.hpp"
#include "levigate/progress.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Calls work(draw) for each draw, as share_out() of detail/crew.hpp does: sixteen draws at a time.
template <typename Work>
std::int64_t for_each_draw(std::int64_t draws, unsigned threads, const Progress& progress,
                           const Work& work) {
  return share_out({.of = draws, .at_a_time = 16}, threads, progress, work);
}

}  // namespace detail

}  // namespace levigate
