// The formats, and the keys that jobs and stacks may have. read_*.hpp reads them, write_parts.hpp writes them: a new member
// of either needs all three and its line in data/schema.
#pragma once

#include <string>
#include <string_view>

#include "levigate/surface/sheen_band_table.hpp"

namespace levigate::inline v0 {

namespace detail {

inline constexpr std::string_view stack_keys[] = {"format", "bare_number", "sheets"};

inline constexpr std::string_view sheet_keys[] = {
    "id",    "maker", "label",    "system",    "size_um", "compound", "backing",
    "block", "wheel", "width_mm", "height_mm", "on_hand", "price"};

inline constexpr std::string_view compound_keys[] = {
    "name", "size_um", "worn_um", "coarsest_scratch_um", "coarsest_paper_um", "wear_share"};

inline constexpr std::string_view wheel_keys[] = {
    "name",    "diameter_mm", "rpm",         "rated_rpm", "width_mm",   "contact_mm",
    "force_n", "feed_m_s",    "modulus_mpa", "friction",  "heat_share", "duty"};

inline constexpr std::string_view backing_keys[] = {
    "name", "tip_spread", "modulus_mpa", "life_m", "clean_every_m", "fade_m", "floor"};

inline constexpr std::string_view block_keys[] = {"name",      "modulus_mpa", "area_cm2", "force_n",
                                                  "speed_m_s", "duty",        "wrap"};

inline constexpr std::string_view job_keys[] = {"format", "name",  "coating", "zones", "start",
                                                "target", "age_h", "cure",    "rules", "prefer"};

inline constexpr std::string_view cure_keys[] = {"hard_cure_h", "shrink", "points"};

inline constexpr std::string_view coating_keys[] = {
    "name",        "kind", "hardness_mpa", "wear_coefficient", "refractive_index", "two_part",
    "redissolves", "cure", "limits"};

inline constexpr std::string_view limits_keys[] = {"speed_low_m_s", "speed_high_m_s", "effusivity",
                                                   "rise_k"};

inline constexpr std::string_view zone_keys[] = {
    "name",    "area_cm2",  "block",    "film",    "below_um",
    "edge_of", "radius_mm", "levelled", "peel_um", "peel_wavelength_mm",
    "defects", "start"};

inline constexpr std::string_view film_keys[] = {
    "mean_um",     "sd_um", "mean_se_um", "sd_se_um",        "readings",
    "readings_um", "gauge", "coats",      "dry_um_per_coat", "recoat_window_h"};

inline constexpr std::string_view gauge_keys[] = {"fixed_um", "share"};

inline constexpr std::string_view coat_keys[] = {"wet_um", "volume_solids", "thinner",
                                                 "dry_um", "shrink",        "applied_h"};

inline constexpr std::string_view defect_keys[] = {"kind",     "height_um", "readings",
                                                   "width_mm", "length_mm", "count"};

inline constexpr std::string_view defect_reading_keys[] = {"over_um", "beside_um", "gauge"};

inline constexpr std::string_view start_keys[] = {"as", "scratched_by"};

inline constexpr std::string_view zone_start_keys[] = {"scratched_by", "size_um", "scratch_um",
                                                       "rq_um", "worn_um"};

inline constexpr std::string_view target_keys[] = {"grade", "size_um", "gloss_gu", "sheen"};

inline constexpr std::string_view sheen_keys[] = {"scheme", "name"};

inline constexpr std::string_view rules_keys[] = {
    "max_ratio",      "min_ratio",  "overcut",    "scratch_quantile", "residual_peel_um",
    "change_minutes", "reserve_um", "removed_cv", "cut_through_limit"};

/// Stands for an infinite modulus_mpa, which JSON has no number for.
inline constexpr std::string_view rigid_text = "rigid";

inline constexpr std::string_view coating_kinds[] = {"coat", "solid"};

/// "satin (institute)": the label of a target that is a band of sheen.
inline std::string sheen_label(const SheenBand& band) {
  return std::string(band.name) + " (" + std::string(band.scheme) + ")";
}

/// A bar or bottle of compound has no area: it stands for so much sheet where its entry gives none.
inline constexpr double compound_side_mm = 1000.0;

}  // namespace detail

}  // namespace levigate
