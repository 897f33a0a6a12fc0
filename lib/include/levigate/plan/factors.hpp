// What a shop has learned, as planning takes it.
#pragma once

#include <cstddef>
#include <vector>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// Multiples of what is computed for one sheet.
struct SheetFactors {
  double rate = 1;     ///< how much faster it removes
  double scratch = 1;  ///< how much deeper and rougher it scratches

  friend bool operator==(const SheetFactors&, const SheetFactors&) = default;
};

/// What a shop has learned of a job and a stack. As it is made: nothing.
struct Factors {
  double duty = 1;                     ///< how much more work a minute holds than is computed
  std::vector<SheetFactors> sheets{};  ///< of each sheet of the stack; empty: nothing learned
  double film_offset_um = 0;           ///< added to films that are not from readings [um]
  double film_se_um = 0;               ///< standard error of that [um]

  SheetFactors of(std::size_t sheet) const {
    return sheets.empty() ? SheetFactors{} : sheets[sheet];
  }
};

}  // namespace levigate
