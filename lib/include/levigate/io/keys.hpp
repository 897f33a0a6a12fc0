// The formats and the keys that they know: one place for reader, writer and schema check.
#pragma once

#include <string_view>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

inline constexpr std::string_view stack_format = "levigate.stack/1";
inline constexpr std::string_view job_format = "levigate.job/1";
inline constexpr std::string_view plan_format = "levigate.plan/1";

namespace detail {

inline constexpr std::string_view stack_keys[] = {"format", "bare_number", "sheets"};
inline constexpr std::string_view sheet_keys[] = {"id",        "maker",   "label", "system",
                                                  "size_um",   "backing", "block", "width_mm",
                                                  "height_mm", "on_hand", "price"};
inline constexpr std::string_view backing_keys[] = {
    "name", "tip_spread", "modulus_mpa", "life_m", "clean_every_m", "fade_m", "floor"};
inline constexpr std::string_view block_keys[] = {"name",      "modulus_mpa", "area_cm2", "force_n",
                                                  "speed_m_s", "duty",        "wrap"};
inline constexpr std::string_view job_keys[] = {"format", "name",   "coating", "zones",
                                                "start",  "target", "rules",   "prefer"};
inline constexpr std::string_view coating_keys[] = {
    "name", "kind", "hardness_mpa", "wear_coefficient", "refractive_index", "two_part"};
inline constexpr std::string_view zone_keys[] = {
    "name", "area_cm2", "block", "film", "levelled", "peel_um", "peel_wavelength_mm"};
inline constexpr std::string_view film_keys[] = {"mean_um",  "sd_um",          "mean_se_um",
                                                 "sd_se_um", "readings",       "readings_um",
                                                 "coats",    "dry_um_per_coat"};
inline constexpr std::string_view start_keys[] = {"as", "scratched_by"};
inline constexpr std::string_view target_keys[] = {"grade", "size_um", "gloss_gu"};
inline constexpr std::string_view rules_keys[] = {
    "max_ratio",      "min_ratio",  "overcut",    "scratch_quantile", "residual_peel_um",
    "change_minutes", "reserve_um", "removed_cv", "cut_through_limit"};

/// Stands for an infinite modulus_mpa, which JSON has no number for.
inline constexpr std::string_view rigid_text = "rigid";

inline constexpr std::string_view coating_kinds[] = {"coat", "solid"};

}  // namespace detail

}  // namespace levigate
