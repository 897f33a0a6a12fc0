// What a shop has learned, as planning takes it.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// What a learned factor is between, nine times in ten.
struct LearnedBand {
  double low = 1;
  double high = 1;

  friend bool operator==(const LearnedBand&, const LearnedBand&) = default;
};

/// Multiples of what is computed for one sheet.
struct SheetFactors {
  double rate = 1;                    ///< how much faster it removes
  double scratch = 1;                 ///< how much deeper and rougher it scratches
  std::optional<LearnedBand> pace{};  ///< of duty times rate; none where no step was learned of
  std::optional<LearnedBand> scratches{};  ///< of scratch; none where none were read
  double hand_rate = 1;                    ///< as rate, of a zone that the hand works for a machine
  double hand_scratch = 1;                 ///< as scratch, of such a zone

  /// Those of a zone that the hand works in place of the sheet's machine.
  SheetFactors by_hand() const { return {hand_rate, hand_scratch}; }

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
