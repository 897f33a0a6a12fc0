// Random numbers by counting: the words themselves, and that the numbers made from them are what they should be. Statistics
// have fixed seeds; each test of them fails by chance once in a thousand seeds.
#include "levigate/risk/philox.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <vector>

namespace philox_test {
namespace {

using namespace levigate;

static_assert(philox4x32({0, 0, 0, 0}, {0, 0}) ==
              PhiloxCounter{0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8});
static_assert(unit_of(0, 0) > 0.0 && unit_of(~0U, ~0U) < 1.0);
static_assert(unit_of(0, 0) == 1.0 - unit_of(~0U, ~0U), "as near to 0 as to 1");
static_assert(unit_of(0x80000000, 0) - unit_of(0x7fffffff, ~0U) == 0x1p-52,
              "the lowest bits count");

template <std::size_t count>
std::array<std::uint32_t, count> words(const nlohmann::json& hexadecimal) {
  std::array<std::uint32_t, count> result{};
  for (std::size_t i = 0; i < count; ++i) {
    const auto text = hexadecimal.at(i).get<std::string>();
    result[i] = static_cast<std::uint32_t>(std::stoul(text, nullptr, 16));
  }
  return result;
}

TEST(Philox, GivesTheKnownAnswers) {
  const auto path = std::filesystem::path(LEVIGATE_DATA_DIR) / "reference" / "philox.json";
  const auto file = nlohmann::json::parse(std::ifstream(path));
  ASSERT_EQ(file.at("vectors").size(), 3U);
  for (const auto& vector : file.at("vectors")) {
    EXPECT_EQ(philox4x32(words<4>(vector.at("counter")), words<2>(vector.at("key"))),
              words<4>(vector.at("words")));
  }
}

TEST(Stream, ANumberHangsOnSeedStreamDrawAndPlaceAlone) {
  Stream one(5, 6, 7);
  std::vector<double> taken;
  for (int i = 0; i < 8; ++i) taken.push_back(one.uniform());
  for (std::uint32_t place = 0; place < 4; ++place) {
    const auto [first, second] = Stream(5, 6, 7).pair(place);
    EXPECT_EQ(first, taken[2 * place]);
    EXPECT_EQ(second, taken[2 * place + 1]);
  }
  constexpr std::uint64_t high = std::uint64_t{1} << 32;  // each half of seed and stream counts
  std::set<double> others(taken.begin(), taken.end());
  for (Stream other : {Stream(6, 6, 7), Stream(5 + high, 6, 7), Stream(5, 7, 7),
                       Stream(5, 6 + high, 7), Stream(5, 6, 8)}) {
    others.insert(other.uniform());
  }
  EXPECT_EQ(others.size(), 13U);
}

TEST(Stream, NamesHaveStreamsOfTheirOwn) {
  static_assert(stream_named("") == 0xCBF29CE484222325);
  static_assert(stream_named("a") == 0xAF63DC4C8601EC8C);       // published for FNV-1a
  static_assert(stream_named("foobar") == 0x85944171F73967E8);  // the same
}

int many = 20000;  // no constant: a compiler would work out the whole test

// Chi-square of 100 cells: 99 degrees of freedom; 0.05 and 99.95 % quantiles.
TEST(Stream, UniformsAreUniform) {
  Stream stream(1, 2, 3);
  std::vector<int> counts(100);
  for (int i = 0; i < many; ++i) ++counts[static_cast<std::size_t>(100 * stream.uniform())];
  double squares = 0;
  for (const int count : counts) squares += std::pow(count - many / 100.0, 2) / (many / 100.0);
  EXPECT_GT(squares, 59.128);
  EXPECT_LT(squares, 151.934);
}

// Kolmogorov and Smirnov: the largest distance exceeds 1.95 / sqrt(n) with a chance of 0.001.
TEST(Stream, NormalsAreNormal) {
  Stream stream(1, 2, 4);
  std::vector<double> values;
  for (int i = 0; i < many; ++i) values.push_back(stream.normal());
  std::sort(values.begin(), values.end());
  double largest = 0;
  for (int i = 0; i < many; ++i) {
    const double below = 1.0 - detail::normal_tail(values[static_cast<std::size_t>(i)]);
    largest = std::max({largest, below - i / static_cast<double>(many),
                        (i + 1) / static_cast<double>(many) - below});
  }
  EXPECT_LT(largest, 1.95 / std::sqrt(static_cast<double>(many)));
}

// Correlation of n independent pairs: sqrt(n) r is normal; within 3.29 with a chance of 0.999.
TEST(Stream, NeighboursAreNotCorrelated) {
  const auto correlation = [](auto make_pair) {
    double sum = 0;
    for (std::uint32_t i = 0; i < static_cast<std::uint32_t>(many); ++i) {
      const auto [a, b] = make_pair(i);
      sum += 12.0 * (a - 0.5) * (b - 0.5) / many;
    }
    return sum * std::sqrt(static_cast<double>(many));
  };
  const auto first = [](std::uint64_t seed, std::uint64_t stream, std::uint32_t draw) {
    return Stream(seed, stream, draw).uniform();
  };
  using Pair = std::array<double, 2>;
  EXPECT_LT(std::abs(correlation([&](auto i) {
              return Pair{first(1, 1, i), first(1, 1, i + 1)};
            })),
            3.29);
  EXPECT_LT(std::abs(correlation([&](auto i) {
              return Pair{first(1, i, 1), first(1, i + 1, 1)};
            })),
            3.29);
  EXPECT_LT(std::abs(correlation([&](auto i) {
              return Pair{first(i, 1, 1), first(i + 1, 1, 1)};
            })),
            3.29);
  EXPECT_LT(std::abs(correlation([](auto i) { return Stream(1, 1, 1).pair(i); })), 3.29);
}

}  // namespace
}  // namespace philox_test
