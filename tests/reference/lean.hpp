// To which side the rows of one source miss: a model that lies within a factor of each may still be wrong for all.
#pragma once

#include <array>
#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "reference/functions.hpp"
#include "reference/reference.hpp"

namespace levigate_tests {

struct Lean {
  int above = 0, within = 0, below = 0;
  double logs = 0;           ///< sum of the logarithms of ours over the nearest printed value
  bool explained = true;     ///< each group that misses says why
  bool called_bias = false;  ///< in `bias`, so that it must lean

  void add(double ours, double low, double high) {
    above += ours > high;
    below += ours < low;
    within += ours >= low && ours <= high;
    if (ours > 0 && low > 0)
      logs += std::log(ours > high ? ours / high : ours < low ? ours / low : 1.0);
  }
  /// Ours over the nearest printed value, in the geometric mean of the rows that miss.
  double factor() const { return std::exp(logs / std::max(above + below, 1)); }
  bool one_sided() const {
    return above + below >= 3 && (above == 0 || below == 0) &&
           std::abs(std::log(factor())) > std::log(1.1);
  }
};

/// By function, source and kind. All groups of a source count together, so that none hides a lean by being cut in two.
inline std::map<std::array<std::string, 3>, Lean> leans(const std::vector<Row>& rows) {
  std::map<std::array<std::string, 3>, Lean> result;
  for (const Row& row : rows) {
    if (!row.computed()) continue;
    const Value ours = functions().at(row.group["function"])(row.inputs);
    const auto* value = std::get_if<double>(&ours);
    if (value == nullptr) continue;
    Lean& lean = result[{row.group["function"], row.source["citation"], row.kind()}];
    const bool band = row.printed.is_array(), bias = row.group.contains("bias");
    const int within = lean.within;
    lean.add(*value, number_in(band ? row.printed[0] : row.printed),
             number_in(band ? row.printed[1] : row.printed));
    lean.called_bias = lean.called_bias || bias;
    if (lean.within == within && !bias && !row.must_differ()) lean.explained = false;
  }
  return result;
}

}  // namespace levigate_tests
