// Random numbers for jobs and stacks made up: the same on every machine, as the engine's bits are the standard's.
#pragma once

#include <cstddef>
#include <random>

namespace random_numbers {

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
