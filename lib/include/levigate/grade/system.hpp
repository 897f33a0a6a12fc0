// The numbering systems that a label on an abrasive sheet can belong to.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "levigate/choices.hpp"
#include "levigate/detail/names.hpp"
#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// A numbering system, or a second series of one where the measuring method changes the numbers.
enum class System {
  fepa_p,  ///< FEPA P = ISO 6344, coated abrasives
  cami,    ///< CAMI = ANSI B74.18, coated abrasives, United States
  jis,     ///< JIS R 6001 micro grits, electrical resistance method (the default of JIS)
  fepa_f,  ///< FEPA F = ISO 8486, bonded and loose grain; micro grits by photosedimentometer
  micron,  ///< film and paper sold by the size itself
  jis_sedimentation,  ///< JIS R 6001 micro grits, sedimentation tube
  fepa_f_tube,        ///< FEPA F micro grits, sedimentation tube
};

inline constexpr std::array all_systems{
    System::fepa_p,      System::cami,   System::jis,
    System::fepa_f,      System::micron, System::jis_sedimentation,
    System::fepa_f_tube,
};

/// Those that coated abrasives are sold by, one of each method.
inline constexpr std::array coated_systems{System::fepa_p, System::cami, System::jis,
                                           System::micron};

template <>
inline constexpr auto choices<System> = all_systems;

/// The system's name as used in files, in Python and on the card.
constexpr std::string_view to_string(System system) noexcept {
  switch (system) {
    case System::fepa_p: return "FEPA P";
    case System::cami: return "CAMI";
    case System::jis: return "JIS";
    case System::fepa_f: return "FEPA F";
    case System::micron: return "micron";
    case System::jis_sedimentation: return "JIS sedimentation";
    case System::fepa_f_tube: return "FEPA F tube";
  }
  return "";
}

/// The system of that name, or nothing. Case, spaces and hyphens are free.
constexpr std::optional<System> system_named(std::string_view name) noexcept {
  for (const System system : all_systems) {
    if (detail::same_name(to_string(system), name)) return system;
  }
  return std::nullopt;
}

}  // namespace levigate
