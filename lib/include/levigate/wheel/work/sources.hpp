// The work behind wheel/sources.hpp: defines what it declares.
#pragma once

#include <vector>

#include "levigate/wheel/sources.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/named_number.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/limit_table.hpp"
#include "levigate/wheel/wheel_table.hpp"

namespace levigate::inline v0 {

namespace detail {

inline constexpr TableField<WheelProfile> wheel_fields[] = {
    {"diameter_mm", &WheelProfile::diameter_mm},
    {"rpm", &WheelProfile::rpm},
    {"rated_rpm", &WheelProfile::rated_rpm},
    {"width_mm", &WheelProfile::width_mm},
    {"contact_mm", &WheelProfile::contact_mm},
    {"force_n", &WheelProfile::force_n},
    {"feed_m_s", &WheelProfile::feed_m_s},
    {"modulus_mpa", &WheelProfile::modulus_mpa},
    {"friction", &WheelProfile::friction},
    {"heat_share", &WheelProfile::heat_share},
    {"duty", &WheelProfile::duty},
};

inline constexpr TableField<CompoundProfile> compound_fields[] = {
    {"size_um", &CompoundProfile::size_um},
    {"worn_um", &CompoundProfile::worn_um},
    {"coarsest_paper_um", &CompoundProfile::coarsest_paper_um},
    {"wear_share", &CompoundProfile::wear_share},
    {"tip_spread", &CompoundProfile::tip_spread},
    {"modulus_mpa", &CompoundProfile::modulus_mpa},
    {"life_m", &CompoundProfile::life_m},
    {"clean_every_m", &CompoundProfile::clean_every_m},
    {"fade_m", &CompoundProfile::fade_m},
};

inline constexpr TableField<LimitProfile> limit_fields[] = {
    {"speed_m_s", &LimitProfile::speed_m_s},
    {"effusivity", &LimitProfile::effusivity},
    {"rise_k", &LimitProfile::rise_k},
};

}  // namespace detail

LEVIGATE_WORK std::vector<NamedNumber> wheel_numbers() {
  std::vector<NamedNumber> all;
  detail::add_numbers(all, "wheel", wheel_table, detail::wheel_fields);
  detail::add_numbers(all, "compound", compound_table, detail::compound_fields);
  detail::add_numbers(all, "surface", limit_table, detail::limit_fields);
  return all;
}

}  // namespace levigate
