// The work behind surface/cure.hpp: defines what it declares.
#pragma once

#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/surface/cure.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/strict_math.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/contact.hpp"

namespace levigate::inline v0 {

namespace detail {

LEVIGATE_WORK std::optional<Cure> cure_of(const CoatingProfile& p) {
  if (!p.hard_cure_h || !p.shrink) return std::nullopt;
  return Cure{p.hard_cure_h->value, p.shrink->value, {}};
}

}  // namespace detail

LEVIGATE_WORK Cure cure_named(std::string_view name) {
  std::vector<std::string_view> known;
  for (const CoatingProfile& p : coating_table) {
    const std::optional<Cure> cure = detail::cure_of(p);
    if (!cure) continue;
    if (detail::is_called(p, name)) return *cure;
    known.push_back(p.name);
  }
  throw BadInput(detail::unknown_name_text("cure", name, known));
}

LEVIGATE_WORK void require_hardening(const Cure& cure, std::string_view where) {
  for (std::size_t i = 1; i < cure.points.size(); ++i) {
    const HardnessPoint& point = cure.points[i];
    const HardnessPoint& before = cure.points[i - 1];
    if (point.hours > before.hours && point.hardness_mpa >= before.hardness_mpa) continue;
    throw BadInput::of("points",
                       "points[" + std::to_string(i) + "], " + detail::number_text(point.hours) +
                           " h and " + detail::number_text(point.hardness_mpa) +
                           " MPa, must be older and not softer than the one before, in " +
                           std::string(where),
                       {"hours", "hardness_mpa"});
  }
}

LEVIGATE_WORK AgedHardness hardness_at(const Cure& cure, double age_h) {
  constexpr auto where = "hardness_at";
  validate(cure, where);
  detail::require_range(age_h, 0.0, 1e6, "age_h", "h", where);
  if (cure.points.empty()) {
    throw BadInput(std::string("points is empty: no hardness is known, in ") + where);
  }
  const HardnessPoint& first = cure.points.front();
  const HardnessPoint& last = cure.points.back();
  if (age_h < first.hours) {
    return {.hardness_mpa = first.hardness_mpa, .first_h = first.hours};
  }
  if (age_h > last.hours) {
    return {.hardness_mpa = last.hardness_mpa, .last_h = last.hours};
  }
  std::size_t i = 0;
  while (i + 1 < cure.points.size() && cure.points[i + 1].hours <= age_h) ++i;
  const HardnessPoint& before = cure.points[i];
  if (before.hours == age_h) return {.hardness_mpa = before.hardness_mpa};
  const HardnessPoint& after = cure.points[i + 1];
  const double part = std::log(age_h / before.hours) / std::log(after.hours / before.hours);
  return {.hardness_mpa = std::lerp(before.hardness_mpa, after.hardness_mpa, part)};
}

LEVIGATE_WORK CureState cure_state(const Cure& cure, double age_h, const ContactInput& sheet,
                                   double quantile) {
  constexpr auto where = "cure_state";
  validate(cure, where);
  detail::require_range(age_h, 0.0, 1e6, "age_h", "h", where);
  detail::require_range(quantile, 0.0, 1.0, "quantile", "", where);
  CureState state;
  state.hard = age_h >= cure.hard_cure_h;
  state.age_h = age_h;
  state.hard_cure_h = cure.hard_cure_h;
  if (state.hard) return state;
  state.shrink_left = cure.shrink;
  if (!cure.points.empty()) {
    const AgedHardness now = hardness_at(cure, age_h);
    const double cured_mpa = hardness_at(cure, cure.hard_cure_h).hardness_mpa;
    const auto depth = [&](double hardness_mpa) {
      ContactInput input = sheet;
      input.hardness_mpa = hardness_mpa;
      return contact(input).depth_um(quantile);
    };
    state.hardness_ratio = now.hardness_mpa / cured_mpa;
    state.scratch_ratio = depth(now.hardness_mpa) / depth(cured_mpa);
    state.first_h = now.first_h;
    state.last_h = now.last_h;
    state.shrink_left = cure.shrink * (1.0 - *state.hardness_ratio);
  }
  return state;
}

}  // namespace levigate
