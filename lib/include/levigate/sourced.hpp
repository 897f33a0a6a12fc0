// A default value together with the band it may lie in and where it comes from.
#pragma once

#include <optional>
#include <string_view>

#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// One number of a profile: the value used, the band within which it is believed, and its source. Low and
/// high stand in the unit of the value.
struct Sourced {
  double value = 0;
  double low = 0;
  double high = 0;
  Source source;
};

/// Something that is so or not so, and its source.
struct SourcedFact {
  bool value = false;
  Source source;
};

/// A column of a table of profiles: the name of the quantity, and where its number stands in a row.
template <typename Profile>
struct TableField {
  std::string_view quantity;
  Sourced Profile::*sourced = nullptr;                  ///< of a number that every row has
  std::optional<Sourced> Profile::*optional = nullptr;  ///< of one that a row may lack

  /// The number in a row; null where the row lacks it.
  constexpr const Sourced* number(const Profile& row) const {
    if (sourced) return &(row.*sourced);
    const std::optional<Sourced>& lacking = row.*optional;
    return lacking ? &*lacking : nullptr;
  }
};

}  // namespace levigate
