// Random numbers by counting: any draw of any stream at once, the same on every machine and for any number of threads.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "levigate/detail/normal.hpp"
#include "levigate/detail/strict_math.hpp"

namespace levigate::inline v0 {

/// Four words of 32 bits that count.
using PhiloxCounter = std::array<std::uint32_t, 4>;
/// Two words of 32 bits: the seed.
using PhiloxKey = std::array<std::uint32_t, 2>;

/// Philox 4x32-10: four words that look random, of a counter and a key. Different counters give independent words.
///
/// Ten rounds, each two 32-bit products of which low and high words are mixed with the key; the key goes up by the golden ratio and
/// the square root of 3 less 1 in between.
///
/// @param counter  which block of words
/// @param key      which generator
/// @return         the words
/// Source:    Salmon, Moraes, Dror and Shaw, "Parallel random numbers: as easy as 1, 2, 3", SC 2011; vectors in
///            data/reference/philox.json
constexpr PhiloxCounter philox4x32(PhiloxCounter counter, PhiloxKey key) noexcept {
  constexpr int rounds = 10;
  constexpr std::uint64_t multiplier[] = {0xD2511F53, 0xCD9E8D57};
  constexpr std::uint32_t golden_ratio = 0x9E3779B9, root_of_3 = 0xBB67AE85;
  for (int round = 0; round < rounds; ++round) {
    const std::uint64_t a = multiplier[0] * counter[0], b = multiplier[1] * counter[2];
    counter = {
        static_cast<std::uint32_t>(b >> 32) ^ counter[1] ^ key[0], static_cast<std::uint32_t>(b),
        static_cast<std::uint32_t>(a >> 32) ^ counter[3] ^ key[1], static_cast<std::uint32_t>(a)};
    key[0] += golden_ratio;
    key[1] += root_of_3;
  }
  return counter;
}

/// The stream of a name, so that one more of them leaves the others as they are: FNV-1a, 64 bits.
constexpr std::uint64_t stream_named(std::string_view name) noexcept {
  std::uint64_t hash = 0xCBF29CE484222325;
  for (const char letter : name) {
    hash ^= static_cast<unsigned char>(letter);
    hash *= 0x100000001B3;
  }
  return hash;
}

/// A number above 0 and below 1 from 64 random bits: (n + 1/2) / 2^52 of the first 52, all of which a double holds exactly.
constexpr double unit_of(std::uint32_t high, std::uint32_t low) noexcept {
  const std::uint64_t bits = std::uint64_t{high} << 32 | low;
  return (static_cast<double>(bits >> 12) + 0.5) * 0x1p-52;
}

/// One draw of one stream: as many numbers as one asks for.
class Stream {
 public:
  constexpr Stream(std::uint64_t seed, std::uint64_t stream, std::uint32_t draw) noexcept
      : key_{static_cast<std::uint32_t>(seed), static_cast<std::uint32_t>(seed >> 32)},
        draw_(draw),
        stream_{static_cast<std::uint32_t>(stream), static_cast<std::uint32_t>(stream >> 32)} {}

  /// The pair of numbers at a place, each above 0 and below 1.
  constexpr std::array<double, 2> pair(std::uint32_t place) const noexcept {
    const PhiloxCounter words = philox4x32({place, draw_, stream_[0], stream_[1]}, key_);
    return {unit_of(words[0], words[1]), unit_of(words[2], words[3])};
  }

  /// The next number, above 0 and below 1, evenly distributed.
  constexpr double uniform() noexcept {
    const std::size_t half = next_ % 2;
    if (half == 0) pair_ = pair(next_ / 2);
    ++next_;
    return pair_[half];
  }

  /// The next number, normally distributed about 0 with a standard deviation of 1: the quantile of one uniform.
  double normal() noexcept { return -detail::normal_quantile(uniform()); }

 private:
  PhiloxKey key_;
  std::uint32_t draw_;
  std::array<std::uint32_t, 2> stream_;
  std::uint32_t next_ = 0;
  std::array<double, 2> pair_{};
};

}  // namespace levigate
