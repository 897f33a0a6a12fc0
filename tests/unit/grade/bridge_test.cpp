// Bridges over gaps, against enumeration of every set of grades.
#include "levigate/grade/bridge.hpp"
#include "levigate/grade/grades.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "levigate/grade/label.hpp"

namespace bridge_test {
namespace {

using namespace levigate;
using Labels = std::vector<std::string>;

std::optional<Labels> labels(const std::optional<std::vector<Grade>>& grades) {
  if (!grades) return std::nullopt;
  Labels result;
  for (const Grade& grade : *grades) result.push_back(grade.label);
  return result;
}

/// All subsets of the grades between the two sizes; first by number of grades, then by the largest
/// ratio, then the coarser ones.
std::optional<Labels> enumerated(double coarse_um, double fine_um, System system, double min_ratio,
                                 double max_ratio) {
  std::vector<Grade> between;
  for (const Grade& grade : grades(system)) {
    if (grade.median_um < coarse_um && grade.median_um > fine_um &&
        grade.basis() != Basis::extrapolated) {
      between.push_back(grade);
    }
  }
  std::optional<Labels> best;
  double best_ratio = 0;
  std::vector<double> best_sizes;
  for (std::size_t set = 0; set < (std::size_t{1} << between.size()); ++set) {
    Labels chosen;
    std::vector<double> sizes{coarse_um};
    for (std::size_t i = 0; i < between.size(); ++i) {
      if ((set >> i & 1) == 0) continue;
      chosen.push_back(between[i].label);
      sizes.push_back(between[i].median_um);
    }
    sizes.push_back(fine_um);
    double largest = 0;
    bool allowed = true;
    for (std::size_t i = 1; i < sizes.size(); ++i) {
      const double ratio = sizes[i - 1] / sizes[i];
      allowed = allowed && ratio >= min_ratio && ratio <= max_ratio;
      largest = std::max(largest, ratio);
    }
    if (!allowed) continue;
    const bool better = !best || chosen.size() < best->size() ||
                        (chosen.size() == best->size() &&
                         (largest < best_ratio || (largest == best_ratio && sizes > best_sizes)));
    if (better) {
      best = chosen;
      best_ratio = largest;
      best_sizes = sizes;
    }
  }
  return best;
}

TEST(GradeBridge, IsTheBestOfAllSets) {
  std::mt19937_64 random(11);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
  };
  int possible = 0;
  int impossible = 0;
  for (int i = 0; i < 600; ++i) {
    const System system = all_systems[random() % all_systems.size()];
    const std::vector<Grade> all = grades(system);
    const std::size_t first = random() % (all.size() - 2);
    const std::size_t last = std::min(all.size() - 1, first + 2 + random() % 9);
    // Ends on grades, and between them.
    const double away = i % 3 == 0 ? uniform(0.95, 1.05) : 1.0;
    const double coarse_um = all[first].median_um * away;
    const double fine_um = all[last].median_um / away;
    const double min_ratio = uniform(1.0, 1.3);
    const double max_ratio = min_ratio + uniform(0.05, 0.9);
    const auto found = labels(bridge(coarse_um, fine_um, system, min_ratio, max_ratio));
    EXPECT_EQ(found, enumerated(coarse_um, fine_um, system, min_ratio, max_ratio))
        << coarse_um << " to " << fine_um << ", " << to_string(system);
    ++(found ? possible : impossible);
  }
  EXPECT_GT(possible, 100);
  EXPECT_GT(impossible, 50);
}

TEST(GradeBridge, EvenStepsAmongTheFewest) {
  EXPECT_EQ(labels(bridge(25.8, 12.6, System::fepa_p, 1.15, 1.75)), Labels{"P1000"});
  // By hand: three steps of at most 1.75 from 58.5 to 12.6 um leave P320, P360 or P400 for the first
  // and P800, P1000 or P1200 for the second; only 35.0 / 21.8 um joins them.
  EXPECT_EQ(labels(bridge(58.5, 12.6, System::fepa_p, 1.15, 1.75)), (Labels{"P400", "P800"}));
}

TEST(GradeBridge, EmptyWhereOneStepWillDo) {
  EXPECT_EQ(labels(bridge(20.0, 15.0, System::fepa_p, 1.15, 1.75)), Labels{});
  EXPECT_EQ(labels(bridge(35.0, 20.0, System::fepa_p, 1.15, 1.75)), Labels{});  // exactly 1.75
}

TEST(GradeBridge, NoneWhereNoGradesWill) {
  EXPECT_EQ(bridge(20.0, 19.0, System::fepa_p, 1.15, 1.75), std::nullopt);
  EXPECT_EQ(bridge(20.0, 2.0, System::fepa_p, 1.15, 1.75), std::nullopt);
  // Between 8.4 and 4.71 lie only grades without a printed size.
  EXPECT_EQ(bridge(8.4, 4.71, System::fepa_p, 1.15, 1.75), std::nullopt);
}

TEST(GradeBridge, RefusesWhatIsNoGap) {
  constexpr System p = System::fepa_p;
  EXPECT_THROW(bridge(15.0, 20.0, p, 1.15, 1.75), BadInput);
  EXPECT_THROW(bridge(20.0, 20.0, p, 1.15, 1.75), BadInput);
  EXPECT_THROW(bridge(20.0, 10.0, p, 1.75, 1.75), BadInput);
  EXPECT_THROW(bridge(20.0, 10.0, p, 0.9, 1.75), OutOfRange);
  EXPECT_THROW(bridge(20.0, 10.0, p, 1.15, 1e4), OutOfRange);
  EXPECT_THROW(bridge(std::nan(""), 10.0, p, 1.15, 1.75), OutOfRange);
  EXPECT_THROW(bridge(20.0, 0.0, p, 1.15, 1.75), OutOfRange);
  EXPECT_THROW(bridge(20.0, 10.0, p, std::nan(""), 1.75), OutOfRange);
}

}  // namespace
}  // namespace bridge_test
