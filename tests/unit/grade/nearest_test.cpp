#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <vector>

#include "levigate/error.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/grade/grades.hpp"
#include "levigate/grade/work/nearest.hpp"

namespace nearest_test {

using namespace levigate;

/// Sizes where two grades part and the doubles around them, the medians, and a fine ladder between.
std::vector<double> telling_sizes(const std::vector<Grade>& grades) {
  std::vector<double> sizes{0.01, 1e4};
  for (std::size_t i = 0; i < grades.size(); ++i) {
    sizes.push_back(grades[i].median_um);
    if (i == 0) continue;
    const double middle = std::sqrt(grades[i - 1].median_um * grades[i].median_um);
    double up = middle, down = middle;
    for (int step = 0; step < 4; ++step) {
      sizes.insert(sizes.end(), {up, down});
      up = std::nextafter(up, 1e5);
      down = std::nextafter(down, 0.0);
    }
  }
  for (double size = 0.01; size < 1e4; size *= 1.0003) sizes.push_back(size);
  return sizes;
}

TEST(NearestTable, SaysOfManySizesWhatTheSearchSaysOfEach) {
  for (const System system : all_systems) {
    const std::vector<Grade> all = grades(system);
    const std::vector<double> sizes = telling_sizes(all);
    const std::vector<std::size_t> indices = nearest(sizes, system);
    for (std::size_t i = 0; i < sizes.size(); ++i)
      ASSERT_EQ(indices[i], detail::nearest_index(all, sizes[i])) << sizes[i];
  }
}

TEST(NearestTable, FillsTheMemoryOfTheCaller) {
  const std::vector<double> sizes{25.8, 15.3};
  std::vector<std::size_t> indices(2);
  nearest_into(sizes, System::fepa_p, indices);
  EXPECT_EQ(indices, nearest(sizes, System::fepa_p));
  std::vector<std::size_t> few(1);
  EXPECT_THROW(nearest_into(sizes, System::fepa_p, few), BadInput);
}

}  // namespace nearest_test
