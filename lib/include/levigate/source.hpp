// Where a number comes from: the basis it stands on, and the page it was read from.
#pragma once

#include <array>
#include <string_view>

#include "levigate/choices.hpp"
#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// What a value rests on, from firm to soft.
enum class Basis {
  standard,         ///< printed in a standard that was read
  published_table,  ///< printed in a table that was read; the standard behind it was not
  computed,         ///< exact arithmetic or optics, can be computed again
  common_practice,  ///< the trade does so; no source
  from_memory,      ///< remembered and not seen again; never called verified
  extrapolated,     ///< continued beyond the published numbers
  assumption,       ///< chosen here; change it if you know better
  user,             ///< given by the user
};

constexpr std::string_view to_string(Basis basis) noexcept {
  switch (basis) {
    case Basis::standard: return "standard";
    case Basis::published_table: return "published table";
    case Basis::computed: return "computed";
    case Basis::common_practice: return "common practice";
    case Basis::from_memory: return "from memory";
    case Basis::extrapolated: return "extrapolated";
    case Basis::assumption: return "assumption";
    case Basis::user: return "user";
  }
  return "";
}

template <>
inline constexpr auto choices<Basis> = std::to_array({Basis::standard, Basis::published_table,
                                                      Basis::computed, Basis::common_practice,
                                                      Basis::from_memory, Basis::extrapolated,
                                                      Basis::assumption, Basis::user});

/// Basis and citation of one number.
struct Source {
  Basis basis = Basis::user;
  std::string_view citation;  ///< title, edition, table or clause; empty where there is none

  friend constexpr bool operator==(const Source&, const Source&) = default;
};

}  // namespace levigate
