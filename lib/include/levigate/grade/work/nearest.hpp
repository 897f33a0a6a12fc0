// The nearest of a system's grades, whether two sizes agree, and a number between two grades.
#pragma once

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <optional>
#include <span>
#include <vector>

#include "levigate/detail/strict_math.hpp"
#include "levigate/grade/grade.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Index of the nearest grade by |ln size|, of two as near the coarser. Grades fall strictly.
/// Compares d^2 with the product of the neighbours, which is the geometric middle between them.
inline std::size_t nearest_index(std::span<const Grade> grades, double size_um) {
  const auto finer =
      std::ranges::find_if(grades, [&](const Grade& grade) { return grade.median_um < size_um; });
  const auto index = static_cast<std::size_t>(finer - grades.begin());
  if (index == 0) return 0;
  if (index == grades.size()) return index - 1;
  const bool nearer_to_finer =
      size_um * size_um < grades[index - 1].median_um * grades[index].median_um;
  return nearer_to_finer ? index : index - 1;
}

/// The leading bits of a size: a 64th of its octave.
constexpr std::uint64_t bucket_of(double size_um) {
  return std::bit_cast<std::uint64_t>(size_um) >> (52 - 6);
}

/// nearest_index() of many sizes, 0.01 to 10 000 um.
///
/// Two grades part at the least size whose square is not below the product of their medians. The leading bits of a size, which are
/// bucket_of(), lead to the grades that it may be of: one, or two and where they part.
class NearestTable {
 public:
  explicit NearestTable(std::span<const Grade> grades) {
    for (std::size_t i = 1; i < grades.size(); ++i)
      partings_.push_back(parting(grades[i - 1].median_um * grades[i].median_um));
    partings_.push_back(0.0);  // nothing is finer than the last
    std::size_t index = 0;
    for (std::uint64_t bucket = last + 1; bucket-- > first;) {
      const double end_um = std::bit_cast<double>((bucket + 1) << (52 - 6));
      while (end_um <= partings_[index]) ++index;
      starts_[bucket - first] = index;
    }
  }

  std::size_t operator()(double size_um) const {
    std::size_t index = starts_[bucket_of(size_um) - first];
    while (size_um < partings_[index]) ++index;
    return index;
  }

 private:
  static constexpr std::uint64_t first = bucket_of(0.01), last = bucket_of(1e4);

  /// The least size whose square, rounded, is not below the product.
  static double parting(double product) {
    double size_um = std::sqrt(product);
    while (size_um * size_um < product) size_um = std::nextafter(size_um, product + size_um);
    for (;;) {
      const double below_um = std::nextafter(size_um, 0.0);
      if (below_um * below_um < product) return size_um;
      size_um = below_um;
    }
  }

  std::vector<double> partings_;
  std::array<std::size_t, last - first + 1> starts_{};
};

/// Whether two medians differ by no more than their tolerances add up to, in whole picometres:
/// sizes and tolerances are printed decimals, and 1.5 - 1.2 is not above 0.3 as it is in binary.
inline bool within(double median_1_um, double median_2_um, double tolerance_1_um,
                   double tolerance_2_um) {
  const auto pm = [](double um) { return std::llround(um * 1e6); };
  return std::llabs(pm(median_1_um) - pm(median_2_um)) <= pm(tolerance_1_um) + pm(tolerance_2_um);
}

/// Log-log interpolation of the grit number between the grades on either side of a size.
inline std::optional<double> continuous_number(std::span<const Grade> grades, double size_um) {
  if (!grades.front().number) return std::nullopt;
  for (std::size_t i = 0; i < grades.size(); ++i) {
    if (size_um == grades[i].median_um) return grades[i].number;
    if (size_um < grades[i].median_um) continue;
    if (i == 0) return std::nullopt;
    const Grade& coarse = grades[i - 1];
    const Grade& fine = grades[i];
    const double share =
        std::log(coarse.median_um / size_um) / std::log(coarse.median_um / fine.median_um);
    return *coarse.number * std::pow(*fine.number / *coarse.number, share);
  }
  return std::nullopt;
}

}  // namespace detail

}  // namespace levigate
