// Random numbers for jobs and stacks made up: the same on every machine, as the engine's bits are the standard's. And how many
// cases of them a build tries.
#pragma once

#include <cstddef>
#include <random>

namespace random_numbers {

// One in so many random cases is tried. Sanitizers look for undefined behaviour, not for numbers: their build sets 10.
#ifndef LEVIGATE_TEST_SHARE
#define LEVIGATE_TEST_SHARE 1
#endif

/// Of so many random cases those that this build tries.
constexpr int share_of(int cases) { return cases / LEVIGATE_TEST_SHARE; }

/// Where more than so many of all cases must be of a kind: more than how many of those tried. A small count scatters more, so
/// half of a share is enough for it.
constexpr int least_of(int cases) { return LEVIGATE_TEST_SHARE == 1 ? cases : share_of(cases) / 2; }

class Random {
 public:
  explicit Random(unsigned seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_()) / 4294967296.0;
  }
  std::size_t below(std::size_t end) { return engine_() % end; }
  bool chance(double p) { return between(0, 1) < p; }
  std::mt19937& engine() { return engine_; }

 private:
  std::mt19937 engine_;
};

}  // namespace random_numbers
